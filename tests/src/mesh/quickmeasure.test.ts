import { TorusGeometry } from "three";
import { expect, test } from "vitest";
import { measureStl } from "../../../src/mesh/quickmeasure";
import { binaryStl, boxAt, bytesOf, exactVolume, stlText, TETRAHEDRON } from "../modelfile";
import { expectFault } from "../reference";

test("a box 2 x 3 x 4 measures 24, closed, at its place", () => {
  expect(measureStl(binaryStl(boxAt([2, 3, 4], [100, 0, 0])))).toEqual({
    triangles: 12,
    box: { least: [99, -1.5, -2], most: [101, 1.5, 2] },
    volume: 24,
    closed: true,
  });
});

test("without one triangle, or with one of another's corners, it is not closed", () => {
  const whole = binaryStl(new TorusGeometry(7, 3, 12, 40));
  expect(measureStl(whole)?.closed).toBe(true);
  const less = whole.slice(0, whole.length - 50);
  new DataView(less.buffer).setUint32(80, 12 * 40 * 2 - 1, true);
  expect(measureStl(less)?.closed).toBe(false);
  const moved = whole.slice();
  moved.copyWithin(84 + 12, 84 + 500 + 12, 84 + 500 + 24);
  expect(measureStl(moved)?.closed).toBe(false);
});

test("a triangle turned over is not closed", () => {
  const stl = binaryStl(boxAt([1, 1, 1], [0, 0, 0])).slice();
  const second = stl.slice(84 + 24, 84 + 36);
  stl.copyWithin(84 + 24, 84 + 36, 84 + 48);
  stl.set(second, 84 + 36);
  expect(measureStl(stl)?.closed).toBe(false);
});

test("many triangles a metre away keep the volume of their own numbers", () => {
  const stl = binaryStl(new TorusGeometry(7, 3, 60, 200).translate(1000, -1000, 1000));
  const exact = exactVolume(stl);
  expect(Math.abs((measureStl(stl)?.volume ?? 0) - exact) / exact).toBeLessThan(1e-9);
});

test("texts, and coordinates that reading will refuse, are not measured", () => {
  expect(measureStl(bytesOf(stlText(TETRAHEDRON)))).toBeUndefined();
  const stl = binaryStl(boxAt([1, 1, 1], [0, 0, 0])).slice();
  for (const value of [Number.NaN, Number.POSITIVE_INFINITY, 1e30]) {
    new DataView(stl.buffer).setFloat32(84 + 50 * 7 + 12 + 8, value, true);
    expect(measureStl(stl)).toBeUndefined();
  }
});

test("a file that is no STL gets the sentence that reading gives", () => {
  expectFault(() => measureStl(new Uint8Array(0)), "blank", "STL file", "empty");
});

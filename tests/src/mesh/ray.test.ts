import { TorusGeometry } from "three";
import { expect, test } from "vitest";
import { BoxTree } from "../../../src/mesh/boxtree";
import { Rays } from "../../../src/mesh/ray";
import { readStl } from "../../../src/mesh/stl";
import { surfacesOf } from "../../../src/mesh/surface";
import { binaryStl, boxAt, turned } from "../modelfile";

function windings(stl: Uint8Array, point: readonly [number, number, number]) {
  const mesh = readStl(stl).mesh;
  const { surfaceOf } = surfacesOf(mesh);
  const tree = new BoxTree(
    mesh,
    Uint32Array.from(surfaceOf, (_, triangle) => triangle),
  );
  return Object.fromEntries(new Rays(mesh, tree, surfaceOf).windingsAt(point));
}

const box = boxAt([2, 2, 2], [0, 0, 0]);

test("1 inside, -1 inside what looks inwards, nothing outside", () => {
  expect(windings(binaryStl(box), [0.1, 0.2, 0.3])).toEqual({ 0: 1 });
  expect(windings(binaryStl(turned(box)), [0.1, 0.2, 0.3])).toEqual({ 0: -1 });
  expect(windings(binaryStl(box), [1.1, 0, 0])).toEqual({});
  expect(windings(binaryStl(box), [-5, -5, -5])).toEqual({});
});

test("also from the middle, where a ray may meet edges and corners", () => {
  expect(windings(binaryStl(box), [0, 0, 0])).toEqual({ 0: 1 });
});

test("in the hole of a ring it is outside, in its tube inside", () => {
  const ring = binaryStl(new TorusGeometry(7, 3, 16, 30));
  expect(windings(ring, [0, 0, 0])).toEqual({});
  expect(Object.values(windings(ring, [7, 0, 0]))).toEqual([1]);
});

test("each shell counts for itself", () => {
  expect(windings(binaryStl(boxAt([4, 4, 4], [0, 0, 0]), turned(box)), [0.5, 0.1, 0.2])).toEqual({ 0: 1, 1: -1 });
  expect(windings(binaryStl(boxAt([4, 4, 4], [0, 0, 0]), turned(box)), [1.5, 0.1, 0.2])).toEqual({ 0: 1 });
});

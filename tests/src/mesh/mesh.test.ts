import { expect, test } from "vitest";
import { centreOf, cornersOf, endOf, isFolded } from "../../../src/mesh/mesh";

const mesh = { corners: Float32Array.of(0, 0, 0, 3, 0, 0, 0, 6, 9), index: Uint32Array.of(2, 0, 1, 0, 1, 0) };

test("a triangle's corners, in its own order, and its middle", () => {
  expect(cornersOf(mesh, 0)).toEqual([
    [0, 6, 9],
    [0, 0, 0],
    [3, 0, 0],
  ]);
  expect(centreOf(mesh, 0)).toEqual([1, 2, 3]);
});

test("edges go round a triangle", () => {
  expect([0, 1, 2, 3, 4, 5].map(endOf)).toEqual([1, 2, 0, 4, 5, 3]);
});

test("a triangle with one corner twice is folded", () => {
  expect(isFolded(mesh.index, 0)).toBe(false);
  expect(isFolded(mesh.index, 1)).toBe(true);
});

import { expect, test } from "vitest";
import { boxAround, boxesOverlap, diagonalOf, middleOf, sizeOf } from "../../../src/mesh/box";

const unit = { least: [0, 0, 0], most: [1, 1, 1] } as const;

test("the box around 1,2,3 and 4,-2,3 goes 3, 4 and 0 along the axes, 5 from corner to corner, about 2.5,0,3", () => {
  const box = boxAround(Float64Array.of(1, 2, 3, 4, -2, 3));
  expect(box).toEqual({ least: [1, -2, 3], most: [4, 2, 3] });
  if (!box) return;
  expect(sizeOf(box)).toEqual([3, 4, 0]);
  expect(diagonalOf(box)).toBe(5);
  expect(middleOf(box)).toEqual([2.5, 0, 3]);
});

test("around nothing there is no box", () => {
  expect(boxAround(new Float32Array(0))).toBeUndefined();
});

test("boxes that only share a face do not overlap", () => {
  expect(boxesOverlap(unit, { least: [1, 0, 0], most: [2, 1, 1] })).toBe(false);
  expect(boxesOverlap(unit, { least: [0.9, 0, 0], most: [2, 1, 1] })).toBe(true);
  expect(boxesOverlap(unit, { least: [0.9, 0, 1.5], most: [2, 1, 2] })).toBe(false);
});

import { expect, test } from "vitest";
import { cross, dot, minus, unit } from "../../../src/mesh/vector";

test("x cross y is z; a vector less another; 1,2,3 · 4,5,6 is 32", () => {
  expect(cross([1, 0, 0], [0, 1, 0])).toEqual([0, 0, 1]);
  expect(minus([3, 2, 1], [1, 1, 1])).toEqual([2, 1, 0]);
  expect(dot([1, 2, 3], [4, 5, 6])).toBe(32);
});

test("3,0,4 is 5 long; nothing stays nothing", () => {
  expect(unit([3, 0, 4])).toEqual([0.6, 0, 0.8]);
  expect(unit([0, 0, 0])).toEqual([0, 0, 0]);
});

import { expect, test } from "vitest";
import { ordered } from "../../../src/designs/rowgroups";

const of = (groups: readonly number[], count: number) =>
  [...ordered(Int16Array.from(groups), count)].map(([group, order]) => [group, [...order]]);

test("rows of a group stand together in their order, those of none first; groups without rows are passed over", () => {
  expect(of([2, 0, -1, 2, 0, -1, 2], 4)).toEqual([
    [-1, [2, 5]],
    [0, [1, 4]],
    [2, [0, 3, 6]],
  ]);
});

test("no rows are no groups", () => {
  expect(of([], 0)).toEqual([]);
});

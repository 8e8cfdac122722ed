import { expect, test } from "vitest";
import { grouped } from "../../../src/columns/rowgroups";

const of = (keys: readonly number[]) =>
  [...grouped(Float64Array.from([...keys, 9, 9]), keys.length)].map(([key, rows]) => [key, [...rows]]);

test("rows of a key stand together in their order, keys in the order in which they are met", () => {
  expect(of([2, 0, -1, 2, 0, -1, 2])).toEqual([
    [2, [0, 3, 6]],
    [0, [1, 4]],
    [-1, [2, 5]],
  ]);
  // Keys of choices are as large as a thousand for each argument makes them.
  expect(of([1e15, 5, 1e15])).toEqual([
    [1e15, [0, 2]],
    [5, [1]],
  ]);
});

test("no rows are no groups", () => {
  expect(of([])).toEqual([]);
});

import { expect, test } from "vitest";
import { Block } from "../../../src/columns/block";
import { BLOCK, gathered, lineOf } from "../../../src/columns/lines";

test("a column's values are taken as they are for a whole block, and gathered for some of its rows", () => {
  const values = lineOf();
  values.set([10, 11, 12, 13]);
  expect(gathered(values, false, { at: undefined, count: 4 }, lineOf())).toBe(values);
  const some = gathered(values, false, { at: Uint16Array.of(3, 1), count: 2 }, lineOf());
  expect([...some.slice(0, 2)]).toEqual([13, 11]);
});

test("a single cell goes with every row, whichever they are", () => {
  const values = lineOf(7);
  expect(gathered(values, true, { at: Uint16Array.of(3, 1), count: 2 }, lineOf())).toBe(values);
});

test("a block's rows are told by 16 bits, and go by fours", () => {
  expect(BLOCK).toBeLessThanOrEqual(2 ** 16);
  expect(BLOCK % 4).toBe(0);
  expect(new Block([{ mark: true }, { mark: false }]).columns.map(({ parts }) => parts !== undefined)).toEqual([
    true,
    false,
  ]);
});

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cellOf, columnNumber, columnRule, readColumns } from "../../../src/columns/cells";
import { lineOf } from "../../../src/columns/lines";
import type { NumberRule } from "../../../src/exact/numberrule";
import { readNumber } from "../../../src/reading/number";

const ANY: NumberRule = { right: "a number" };
const RULES: readonly NumberRule[] = [
  ANY,
  { above: "0", right: "above 0" },
  { least: "0", right: "from 0" },
  { least: "0", below: "1", right: "a share" },
  { above: "0", most: "1000", right: "parts per thousand" },
  { least: "0", whole: true, right: "a whole number" },
  { least: "1", most: "1000", whole: true, right: "pieces" },
  { above: "1", most: "1000", right: "above 1" },
];

describe("a cell for columns", () => {
  test.each([
    [12.5, 12.5],
    [0, 0],
    [-3, -3],
    ["12.50", 12.5],
    [" 7 ", 7],
    ["-.5", -0.5],
  ])("%j stands for %d", (cell, expected) => {
    expect(columnNumber(cell, columnRule(ANY), Number.NaN)).toBe(expected);
  });

  test.each([
    1e-9,
    1e15,
    5e-324,
    Number.NaN,
    Number.POSITIVE_INFINITY,
    "1,5",
    "12.5000000000000000",
    "x",
    true,
    {},
    null,
    "",
  ])("%j is left to the exact reading", (cell) => {
    expect(columnNumber(cell, columnRule(ANY), Number.NaN)).toBeNaN();
  });

  test("a blank counts as what it is said to", () => {
    expect(columnNumber(null, columnRule(ANY), 0)).toBe(0);
    expect(columnNumber("  ", columnRule(ANY), 1)).toBe(1);
  });

  test("whatever is taken, the exact rule takes as well, as the decimal that the double stands for", () => {
    const cells = fc.oneof(
      fc.double({ noNaN: true }),
      fc.double({ min: -2, max: 2, noNaN: true }),
      fc.integer({ min: -5, max: 2000 }),
      fc.integer({ min: -50000, max: 5_000_000 }).map((count) => String(count / 1000)),
      fc.constantFrom(1, 1000, 1 - 2 ** -53, 1 + 2 ** -52, 1000.0000000000001, 0.9999999999999999, "1.000"),
    );
    fc.assert(
      fc.property(cells, fc.constantFrom(...RULES), (cell, rule) => {
        const taken = columnNumber(cell, columnRule(rule), Number.NaN);
        if (Number.isNaN(taken)) return;
        const exact = readNumber(cell, "cell", rule).value();
        expect(exact.eq(taken === 0 ? "0" : taken.toPrecision(15))).toBe(true);
      }),
      { numRuns: 5000 },
    );
  });
});

test("a range's rows are read in their order, whatever stops the plain reading", () => {
  const cells = [[1], [2.5], ["3"], [4], [5], [null], [7], [8], [9], [10], [Number.NaN]];
  const values = lineOf();
  const odd = new Uint8Array(values.length);
  const reading = { cells, rule: columnRule(ANY), blank: 0, values };
  const place = { row: 0, column: 0, width: 1, count: 11 };
  readColumns([reading], place, odd);
  expect([...values.slice(0, 10)]).toEqual([1, 2.5, 3, 4, 5, 0, 7, 8, 9, 10]);
  expect([...odd.slice(0, 11)]).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1]);
  // The same beside others, which have their own rules.
  const besides = [1, 2, 3].map(() => lineOf());
  const shares = {
    cells: cells.map((_, at) => [at / 10]),
    rule: columnRule({ least: "0", below: "1", right: "a share" }),
  };
  odd.fill(0);
  values.fill(0);
  const [one = values, two = values, three = values] = besides;
  const plain = { ...shares, blank: Number.NaN };
  readColumns([{ ...plain, values: one }, reading, { ...plain, values: two }, { ...plain, values: three }], place, odd);
  expect([...values.slice(0, 10)]).toEqual([1, 2.5, 3, 4, 5, 0, 7, 8, 9, 10]);
  for (const each of besides) expect([...each.slice(0, 10)]).toEqual([0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9]);
  // Not a number, and a share that is not below 1.
  expect([...odd.slice(0, 11)]).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1]);
});

test("cells of several columns follow row by row, from the middle of a row too", () => {
  const cells = [
    ["a", "b", "c"],
    ["d", "e", "f"],
    ["g", "h", "i"],
  ];
  const place = { row: 0, column: 2, width: 3, count: 5 };
  expect([0, 1, 2, 3, 4].map((i) => cellOf(cells, place, i))).toEqual(["c", "d", "e", "f", "g"]);
});

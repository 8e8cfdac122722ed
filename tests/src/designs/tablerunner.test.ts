import { describe, expect, test } from "vitest";
import type { RateFigure } from "../../../src/designs/rateinputs";
import { type LineColumn, LineColumns } from "../../../src/designs/tablerunner";
import { CostingError } from "../../../src/exact/errors";
import type { NumberRule } from "../../../src/exact/numberrule";
import { Quotient } from "../../../src/exact/quotient";
import { isBlank, readNumber } from "../../../src/reading/number";

const LENGTH: NumberRule = { above: "0", most: "100", right: "a length" };
const COLUMNS: readonly LineColumn[] = [
  { kind: "text", field: "Name" },
  { kind: "word", field: "Size" },
  { kind: "figure", field: "Length" },
];
const rate = (text: string): RateFigure => ({
  field: "Rate",
  value: Quotient.of(text),
  double: Number(text),
  rule: { least: 1e-8, most: 1e12, zero: true, negative: false, whole: false },
});

/** Length x rate, twice that for a large one; nothing where no length is given. */
function run(columns: LineColumns, rows: readonly (readonly unknown[])[], figure: RateFigure) {
  const found: unknown[] = [];
  const exactly: number[] = [];
  const compute = (row: number) => {
    const [, size, length] = rows[row] ?? [];
    if (isBlank(length)) return [""];
    const amount = readNumber(length, "Length", LENGTH).times(figure.value);
    return [size === "large" ? amount.plus(amount) : amount];
  };
  columns.run(rows, [0, 1, 2], [figure], compute, {
    take(first, { at, count }, open, [line]) {
      for (let k = 0; k < count; k += 1)
        if (open[k] === 0) found[first + (at?.[k] ?? k)] = typeof line === "object" ? line[k] : line;
    },
    exact(row, answer) {
      exactly.push(row);
      found[row] =
        answer instanceof CostingError
          ? answer.message
          : answer.map((each) => Number((each as Quotient).toNumber?.() ?? Number.NaN))[0];
    },
  });
  return { found, exactly };
}

describe("rows by a formula and a rate (hand arithmetic)", () => {
  const columns = new LineColumns(COLUMNS, [rate("1")]);
  const rows = [
    ["A", "small", 2],
    ["B", "large", 2],
    ["C", "small", 3],
    ["D", "large", 0.1],
    ["E", "small", "4.5"],
  ];

  test("the first of each kind is computed exactly, the others as it was", () => {
    expect(run(columns, rows, rate("1.5"))).toEqual({ found: [3, 6, 4.5, 0.3, 6.75], exactly: [0, 1] });
  });

  test("at another rate none is", () => {
    expect(run(columns, rows, rate("2"))).toEqual({ found: [4, 8, 6, 0.4, 9], exactly: [] });
  });

  test("what breaks the field's rule, or is no figure, is refused as the field says", () => {
    const bad = [...rows, ["F", "small", 101], ["G", "small", "many"], ["H", "small", -2]];
    const { found, exactly } = run(columns, bad, rate("2"));
    expect(found.slice(0, 5)).toEqual([4, 8, 6, 0.4, 9]);
    expect(found.slice(5)).toEqual([
      "Length: found 101; give a length",
      'Length: found "many", which is not a plain number; give a length',
      "Length: found -2; give a length",
    ]);
    expect([...exactly].sort()).toEqual([5, 6, 7]);
  });
});

test("more rows than are read together keep their places", () => {
  const columns = new LineColumns(COLUMNS, [rate("1")]);
  const rows = Array.from({ length: 20_000 }, (_, n) => ["A", n % 3 === 0 ? "large" : "small", (n % 97) + 1]);
  const { found, exactly } = run(columns, rows, rate("2"));
  expect(exactly).toEqual([0, 1]);
  rows.forEach(([, size, length], n) => {
    expect(found[n]).toBe(Number(length) * (size === "large" ? 4 : 2));
  });
});

import { expect, test } from "vitest";
import type { Value } from "../../../src/columns/answers";
import { Block } from "../../../src/columns/block";
import type { Input } from "../../../src/columns/bounds";
import { computeDoubles } from "../../../src/columns/doubles";
import { planOf } from "../../../src/columns/plan";
import { Scratch } from "../../../src/columns/scratch";
import { traced } from "../../../src/columns/trace";
import { Quotient } from "../../../src/exact/quotient";

const INPUT: Input = { unsigned: true, whole: false };

/** Runs a formula of two cells, learned from one row, over others: its output where doubles decide, undefined elsewhere. */
function over(
  formula: (a: Quotient, b: Quotient) => Value,
  learned: readonly [string, string],
  rows: readonly (readonly [number, number])[],
  input = INPUT,
) {
  const [a, b] = learned.map((text) => Quotient.of(text)) as [Quotient, Quotient];
  const { trace } = traced([a, b], () => formula(a, b));
  const plan = trace && planOf(trace, [input, input]);
  if (!plan) throw new Error("no plan");
  const block = new Block([{ mark: false }, { mark: false }]);
  rows.forEach(([x, y], at) => {
    block.columns[0]?.values.set([x], at);
    block.columns[1]?.values.set([y], at);
  });
  const scratch = new Scratch();
  const { open } = scratch;
  const made = computeDoubles(plan, block, { at: undefined, count: rows.length }, scratch);
  const [output] = plan.outputs;
  return rows.map((_, at) => (open[at] ? undefined : typeof output === "number" ? made[output]?.[at] : output));
}

test("the larger of two is one of them, and a rounded value may be computed with", () => {
  const larger = (a: Quotient, b: Quotient) => a.larger(b).toDecimals(1);
  expect(
    over(
      larger,
      ["3", "4"],
      [
        [1.11, 2.22],
        [5.18, 4],
        [3, 3],
      ],
    ),
  ).toEqual([2.2, 5.2, 3]);
  const twice = (a: Quotient, b: Quotient) => a.toDecimals(1).times(b).toDecimals(0);
  expect(over(twice, ["3.33", "4"], [[3.33, 4.1]])).toEqual([14]);
});

test("a rounding is decided but at its ties", () => {
  const cents = (a: Quotient, b: Quotient) => a.times(b).toDecimals(2);
  expect(
    over(
      cents,
      ["3", "4"],
      [
        [1.11, 2],
        [0.1, 0.25],
        [0, 3],
        [1.005, 1],
        [1.0051, 1],
      ],
    ),
  ).toEqual([2.22, undefined, 0, undefined, 1.01]);
});

test("a count is made whole but beside whole numbers", () => {
  const up = (a: Quotient, b: Quotient) => a.dividedBy(b).ceil();
  expect(
    over(
      up,
      ["3", "4"],
      [
        [7, 2],
        [6, 2],
        [0, 2],
      ],
    ),
  ).toEqual([4, undefined, 0]);
});

test("a row that takes another way than the trace is left open", () => {
  const dearer = (a: Quotient, b: Quotient) => (a.isGreaterThan(b) ? "dearer" : "not");
  expect(
    over(
      dearer,
      ["4", "3"],
      [
        [5, 3],
        [3, 5],
        [3, 3],
      ],
    ),
  ).toEqual(["dearer", undefined, undefined]);
});

test("a difference that is small beside its operands is left open", () => {
  const left = (a: Quotient, b: Quotient) => a.minus(b).toDecimals(0);
  expect(
    over(
      left,
      ["4", "3"],
      [
        [5, 3.1],
        [100, 99.2],
        [3, 5],
      ],
    ),
  ).toEqual([2, undefined, undefined]);
});

test("whole numbers are exact below 2^52 and left open above", () => {
  const product = (a: Quotient, b: Quotient) => a.times(b);
  const whole = { unsigned: true, whole: true };
  expect(
    over(
      product,
      ["4", "3"],
      [
        [12, 12],
        [2 ** 30, 2 ** 30],
      ],
      whole,
    ),
  ).toEqual([144, undefined]);
});

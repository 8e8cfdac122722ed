import { describe, expect, test } from "vitest";
import { Block } from "../../../src/columns/block";
import { computeDoubles } from "../../../src/columns/doubles";
import { computePairs } from "../../../src/columns/pairs";
import { Plans } from "../../../src/columns/plans";
import { Scratch } from "../../../src/columns/scratch";
import { settle } from "../../../src/columns/settle";
import { traced } from "../../../src/columns/trace";
import { Quotient } from "../../../src/exact/quotient";

const INPUT = { unsigned: true, whole: false };

/** a / b x c to cents: learned from one row, computed for others. */
function cents(decimals: number | undefined) {
  const plans = new Plans([INPUT, INPUT, INPUT], 200);
  const values = ["3", "4", "5"].map((text) => Quotient.of(text)) as [Quotient, Quotient, Quotient];
  const { trace } = traced(values, () => {
    const value = values[0].dividedBy(values[1]).times(values[2]);
    return decimals === undefined ? value : value.toDecimals(decimals);
  });
  const plan = trace && plans.learn(0, trace);
  if (!plan || !trace) throw new Error("no plan");
  return { plans, plan, trace };
}

function blockOf(rows: readonly (readonly number[])[]): Block {
  const block = new Block([{ mark: false }, { mark: false }, { mark: false }]);
  rows.forEach((row, at) => {
    row.forEach((value, column) => {
      block.columns[column]?.values.set([value], at);
    });
  });
  return block;
}

// 1 / 8 x 0.44 = 0.055 and 0.3 / 4 x 2.2 = 0.165: true half cents. 2 / 3 x 1 = 0.666… 10 / 4 x 3.1 = 7.75.
const ROWS = [
  [1, 8, 0.44],
  [2, 3, 1],
  [0.3, 4, 2.2],
  [10, 4, 3.1],
];
const CENTS = [0.06, 0.67, 0.17, 7.75];

describe("rows of a block", () => {
  test("are settled by doubles, and half cents by the proof of pairs", () => {
    const { plan } = cents(2);
    const block = blockOf(ROWS);
    const found: number[] = [];
    const passes: number[] = [];
    const rest = settle(plan, block, { at: undefined, count: 4 }, new Scratch(), 0, {
      take(_, { at, count }, open, [line]) {
        passes.push(count);
        for (let k = 0; k < count; k += 1)
          if (open[k] === 0 && typeof line === "object") found[at?.[k] ?? k] = line[k] ?? 0;
      },
    });
    expect(found).toEqual(CENTS);
    expect(rest.count).toBe(0);
    // All four in doubles, then the two half cents.
    expect(passes).toEqual([4, 2]);
  });

  test("that doubles cannot decide are marked", () => {
    const scratch = new Scratch();
    computeDoubles(cents(2).plan, blockOf(ROWS), { at: undefined, count: 4 }, scratch);
    expect([...scratch.open.subarray(0, 4)]).toEqual([1, 0, 1, 0]);
  });

  test("as pairs hold the nearest double where it is owed", () => {
    const { plan } = cents(undefined);
    const scratch = new Scratch();
    const made = computePairs(plan, blockOf(ROWS), { at: undefined, count: 4 }, scratch, false);
    const line = made[plan.outputs[0] as number]?.high;
    expect([...scratch.open.subarray(0, 4)]).toEqual([0, 0, 0, 0]);
    expect([...(line ?? []).slice(0, 4)]).toEqual([0.055, 2 / 3, 0.165, 7.75]);
  });
});

describe("plans", () => {
  test("are kept by the choices of a row, and a way once known is not learned again", () => {
    const { plans, plan, trace } = cents(2);
    expect(plans.of(0)).toEqual([plan]);
    expect(plans.of(1)).toEqual([]);
    expect(plans.learn(0, trace)).toBeUndefined();
    expect(plans.learn(1, trace)).toBeDefined();
  });

  test("that a row went by are tried first for the next", () => {
    const { plans, plan, trace } = cents(2);
    const other = plans.learn(0, { ...trace, path: "another way" });
    expect(plans.of(0)).toEqual([plan, other]);
    if (other) plans.prefer(0, other);
    expect(plans.of(0)).toEqual([other, plan]);
  });
});

import { expect, test } from "vitest";
import { Block } from "../../../src/columns/block";
import { readColumnMark } from "../../../src/columns/markcells";
import { computePairs } from "../../../src/columns/pairs";
import { planOf } from "../../../src/columns/plan";
import { Scratch } from "../../../src/columns/scratch";
import { traced } from "../../../src/columns/trace";
import { Quotient } from "../../../src/exact/quotient";

/** weight x share, learned from one row: for a weight of 1, 2 and 3 g and marks in words and numbers. */
test("marks in words and numbers, and numbers, are one kind of input", () => {
  const [weight, share] = ["10", "0.75"].map((text) => Quotient.of(text)) as [Quotient, Quotient];
  const { trace } = traced([weight, share], () => weight.times(share));
  const input = { unsigned: true, whole: false };
  const plan = trace && planOf(trace, [input, input]);
  if (!plan) throw new Error("no plan");
  const block = new Block([{ mark: false }, { mark: true }]);
  const marks = ["14K", 585, 14, "58.5%", 0.585];
  marks.forEach((mark, at) => {
    const [weights, shares] = block.columns;
    weights?.values.set([at + 1], at);
    if (shares?.parts) expect(readColumnMark(mark, at, shares.values, shares.parts, block.words)).toBe(true);
  });
  const scratch = new Scratch();
  const made = computePairs(plan, block, { at: undefined, count: marks.length }, scratch, true);
  expect([...scratch.open.subarray(0, 5)]).toEqual([0, 0, 0, 0, 0]);
  const out = made[plan.outputs[0] as number];
  // 1 x 7/12, 2 x 0.585, 3 x 7/12 = 1.75, 4 x 0.585, 5 x 0.585
  expect([...(out?.high ?? []).slice(0, 5)]).toEqual([7 / 12, 1.17, 1.75, 2.34, 2.925]);
});

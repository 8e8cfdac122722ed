import { expect, test } from "vitest";
import type { Input } from "../../../src/columns/bounds";
import { planOf } from "../../../src/columns/plan";
import { traced } from "../../../src/columns/trace";
import { Quotient } from "../../../src/exact/quotient";

const ANY: Input = { unsigned: false, whole: false };
const UNSIGNED: Input = { unsigned: true, whole: false };
const WHOLE: Input = { unsigned: true, whole: true };

function plan(inputs: readonly Input[], formula: (...values: Quotient[]) => Quotient, texts = ["5", "3", "2"]) {
  const values = inputs.map((_, at) => Quotient.of(texts[at] ?? "1"));
  const { trace } = traced(values, () => formula(...values));
  if (!trace) throw new Error("no trace");
  return planOf(trace, inputs);
}

test("an input of either sign keeps to the trace's", () => {
  expect(plan([ANY, UNSIGNED], (a, b) => (a as Quotient).plus(b as Quotient))?.signed).toEqual([0]);
  expect(
    plan([ANY, UNSIGNED], (a, b) => (a as Quotient).plus(b as Quotient), ["-1", "3"])?.steps.at(-1)?.bound.differs,
  ).toBe(true);
});

test("whole numbers and roundings are decided in doubles, other values are owed their nearest double", () => {
  expect(plan([WHOLE, WHOLE], (a, b) => (a as Quotient).times(b as Quotient))?.plain).toBe(true);
  expect(plan([UNSIGNED], (a) => (a as Quotient).toDecimals(2))?.plain).toBe(true);
  expect(plan([UNSIGNED], (a) => (a as Quotient).times(Quotient.of("3")))?.plain).toBe(false);
});

test("steps that nothing rests on are left out", () => {
  const made = plan([UNSIGNED, UNSIGNED, UNSIGNED], (a, b, c) => {
    (b as Quotient).dividedBy(c as Quotient).minus(a as Quotient);
    return (a as Quotient).times(Quotient.of("3"));
  });
  expect(made?.steps.map(({ kind }) => kind)).toEqual(["input", "constant", "times"]);
  expect(made?.outputs).toEqual([2]);
});

test("what a comparison rests on stays", () => {
  const made = plan([UNSIGNED, UNSIGNED, UNSIGNED], (a, b, c) =>
    (b as Quotient).times(c as Quotient).isGreaterThan(Quotient.one) ? (a as Quotient) : (b as Quotient),
  );
  expect(made?.steps.map(({ kind }) => kind)).toContain("times");
  expect(made?.comparisons).toHaveLength(1);
});

test("steps over cells that go with every row are shared, and rounded values that are computed with are told", () => {
  const every: Input = { unsigned: true, whole: false, shared: true };
  const made = plan([every, every, UNSIGNED], (a, b, c) =>
    (a as Quotient)
      .times(b as Quotient)
      .toDecimals(2)
      .times(c as Quotient),
  );
  const steps = made?.steps.map(({ kind, shared, used }) => [kind, shared, used]);
  expect(steps).toContainEqual(["decimals", true, true]);
  expect(steps?.at(-1)).toEqual(["times", false, false]);
});

test("a formula that could leave the range of doubles has no plan", () => {
  const power = (times: number) => (a: Quotient | undefined) => {
    let product = a as Quotient;
    for (let n = 1; n < times; n += 1) product = product.times(a as Quotient);
    return product;
  };
  expect(plan([UNSIGNED], power(7))).toBeDefined();
  // 10^15 to the 17th is 10^255.
  expect(plan([UNSIGNED], power(17))).toBeUndefined();
});

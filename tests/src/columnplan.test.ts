import { expect, test } from "vitest";
import { type Input, planOf } from "../../src/columnplan";
import { traced } from "../../src/columntrace";
import { Quotient } from "../../src/quotient";

const U = 2 ** -53;
const ANY: Input = { unsigned: false, whole: false };
const UNSIGNED: Input = { unsigned: true, whole: false };
const WHOLE: Input = { unsigned: true, whole: true };

function plan(inputs: readonly Input[], formula: (...values: Quotient[]) => Quotient, texts = ["5", "3", "2"]) {
  const values = inputs.map((_, at) => Quotient.of(texts[at] ?? "1"));
  const { trace } = traced(values, () => formula(...values));
  if (!trace) throw new Error("no trace");
  return planOf(trace, inputs);
}
const last = (made: ReturnType<typeof plan>) => made?.moves.at(-1)?.place;

test("bounds add up over products, and over sums of one sign the larger counts", () => {
  // Two cells of 48 u each: 96 u and the product's own rounding; the sum 48 u and its own.
  const [product, sum] = [
    last(plan([UNSIGNED, UNSIGNED], (a, b) => (a as Quotient).times(b as Quotient))),
    last(plan([UNSIGNED, UNSIGNED], (a, b) => (a as Quotient).plus(b as Quotient))),
  ];
  expect((product?.double ?? 0) / U).toBeGreaterThanOrEqual(97);
  expect((product?.double ?? 0) / U).toBeLessThan(97.001);
  expect((sum?.double ?? 0) / U).toBeGreaterThanOrEqual(49);
  expect((sum?.double ?? 0) / U).toBeLessThan(49.001);
});

test("a difference is told, and costs what it may lose", () => {
  const place = last(plan([UNSIGNED, UNSIGNED], (a, b) => (a as Quotient).minus(b as Quotient)));
  expect(place?.differs).toBe(true);
  expect((place?.double ?? 0) / U).toBeGreaterThanOrEqual(48 * 32);
});

test("an input of either sign keeps to the trace's", () => {
  expect(plan([ANY, UNSIGNED], (a, b) => (a as Quotient).plus(b as Quotient))?.signed).toEqual([0]);
  expect(last(plan([ANY, UNSIGNED], (a, b) => (a as Quotient).plus(b as Quotient), ["-1", "3"]))?.differs).toBe(true);
});

test("whole numbers and roundings are decided in doubles, other values are owed their nearest double", () => {
  expect(plan([WHOLE, WHOLE], (a, b) => (a as Quotient).times(b as Quotient))?.plain).toBe(true);
  expect(plan([UNSIGNED], (a) => (a as Quotient).toDecimals(2))?.plain).toBe(true);
  expect(plan([UNSIGNED], (a) => (a as Quotient).times(Quotient.of("3")))?.plain).toBe(false);
});

test("a rounded value that is computed with has no plan", () => {
  expect(plan([UNSIGNED], (a) => (a as Quotient).toDecimals(2).times(Quotient.of("3")))).toBeUndefined();
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

import { expect, test } from "vitest";
import { boundOf, type Input, type StepBound } from "../../../src/columns/bounds";
import type { Step } from "../../../src/columns/trace";
import { Quotient } from "../../../src/exact/quotient";

const U = 2 ** -53;
const UNSIGNED: Input = { unsigned: true, whole: false };
const ANY: Input = { unsigned: false, whole: false };
const INPUTS = [UNSIGNED, UNSIGNED, ANY];

/** The places of two inputs, the second below zero where `sign` is -1, and of a step over them. */
function over(step: Step, sign: -1 | 1 = 1): StepBound {
  const places: StepBound[] = [];
  places.push(boundOf({ kind: "input", input: 0 }, 1, places, INPUTS));
  places.push(boundOf({ kind: "input", input: 2 }, sign, places, INPUTS));
  return boundOf(step, 1, places, INPUTS);
}
const of = (kind: "plus" | "minus" | "times" | "larger" | "smaller", sign: -1 | 1 = 1) =>
  over({ kind, a: 0, b: 1 }, sign);

test("bounds add up over products, and over sums of one sign the larger counts", () => {
  // Two cells of 48 u each: 96 u and the product's own rounding; the sum 48 u and its own.
  const [product, sum] = [of("times").double / U, of("plus").double / U];
  expect(product).toBeGreaterThanOrEqual(97);
  expect(product).toBeLessThan(97.001);
  expect(sum).toBeGreaterThanOrEqual(49);
  expect(sum).toBeLessThan(49.001);
});

test("a difference is told, and costs what it may lose", () => {
  expect(of("minus").differs).toBe(true);
  expect(of("minus").double / U).toBeGreaterThanOrEqual(48 * 32);
});

test("the larger of two has the larger bound and no rounding; it is not below zero where one of them is not", () => {
  expect(of("larger").double / U).toBe(48);
  expect([of("larger").sign, of("larger", -1).sign, of("smaller", -1).sign, of("smaller").sign]).toEqual([1, 1, -1, 1]);
});

test("a whole constant has no error, another that of its nearest double", () => {
  const constant = (text: string) => over({ kind: "constant", value: Quotient.of(text) }).double;
  expect([constant("3"), constant("0.1") / U]).toEqual([0, 1]);
});

test("a rounded value that is computed with is the nearest double of its decimal", () => {
  expect(over({ kind: "decimals", a: 0, decimals: 2 }).double / U).toBe(1);
  expect(over({ kind: "decimals", a: 0, decimals: 0 })).toMatchObject({ double: 0, whole: true });
});

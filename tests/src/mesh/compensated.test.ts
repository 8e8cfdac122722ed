import fc from "fast-check";
import { expect, test } from "vitest";
import { CompensatedSum } from "../../../src/mesh/compensated";

function summed(values: readonly number[]): number {
  const sum = new CompensatedSum();
  for (const value of values) sum.add(value);
  return sum.value();
}

test("1, 1e100, 1 and -1e100 sum to 2, which plain addition loses", () => {
  expect(summed([1, 1e100, 1, -1e100])).toBe(2);
});

test("a sum is off by no more than one rounding, whatever cancels", () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: -(2 ** 40), max: 2 ** 40 }), { maxLength: 200 }), (wholes) => {
      // Sizes from 2^-40 to 2^72, summed exactly as whole numbers of 2^-40.
      const power = (i: number) => 12 * (i % 7);
      const values = wholes.map((whole, i) => whole * 2 ** (power(i) - 40));
      const exact = Number(wholes.reduce((sum, whole, i) => sum + (BigInt(whole) << BigInt(power(i))), 0n)) / 2 ** 40;
      const all = values.reduce((sum, value) => sum + Math.abs(value), 0);
      expect(Math.abs(summed(values) - exact)).toBeLessThanOrEqual(Math.abs(exact) * 2 ** -52 + all * 2 ** -95);
    }),
  );
});

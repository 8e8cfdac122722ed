import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import {
  type Grains,
  grainDecimals,
  grainOf,
  grainProduct,
  grainQuotient,
  grainStep,
  grainSum,
} from "../../../src/columns/denominators";
import { lineOf } from "../../../src/columns/lines";
import { Quotient } from "../../../src/exact/quotient";

const fresh = (): Grains => ({ power: lineOf(), count: lineOf() });
const wholeOver = (value: Fraction, { power, count }: Grains) =>
  value.mul(new Fraction(10n ** BigInt(power[0] ?? 0))).mul(new Fraction(BigInt(count[0] ?? 0))).d === 1n;

/** A decimal and its grain, read from 15 digits with zeros behind. */
const decimals = fc
  .tuple(fc.integer({ min: 1, max: 99_999 }), fc.integer({ min: 0, max: 5 }))
  .map(([digits, places]) => {
    const grains = fresh();
    grainDecimals(lineOf(digits * 10 ** 9), lineOf(places + 9), grains, 1);
    return {
      value: new Fraction(BigInt(digits), 10n ** BigInt(places)),
      double: digits / 10 ** places,
      grains,
      places,
    };
  });

describe("grains against exact fractions (fraction.js)", () => {
  test("of a decimal are its shortest digits", () => {
    fc.assert(
      fc.property(decimals, ({ value, grains, places }) => {
        expect(wholeOver(value, grains)).toBe(true);
        expect(grains.power[0]).toBeLessThanOrEqual(places);
      }),
    );
    const grains = fresh();
    grainDecimals(lineOf(123_400_000_000_000), lineOf(12), grains, 1);
    expect([grains.power[0], grains.count[0]]).toEqual([1, 1]);
  });

  test("sums, products and quotients are whole numbers over their grains", () => {
    fc.assert(
      fc.property(decimals, decimals, decimals, (a, b, c) => {
        const [ratio, sum, product] = [fresh(), fresh(), fresh()];
        grainQuotient(a.grains, b.grains, lineOf(b.double), ratio, 1);
        expect(wholeOver(a.value.div(b.value), roundedCounts(ratio))).toBe(true);
        grainSum(ratio, c.grains, sum, 1);
        expect(wholeOver(a.value.div(b.value).add(c.value), roundedCounts(sum))).toBe(true);
        grainProduct(sum, a.grains, product, 1);
        expect(wholeOver(a.value.div(b.value).add(c.value).mul(a.value), roundedCounts(product))).toBe(true);
      }),
    );
  });

  test("sums and products of two ratios are whole numbers over their grains too: 1 / 3 + 1 / 7 over 21", () => {
    fc.assert(
      fc.property(decimals, decimals, decimals, decimals, (a, b, c, d) => {
        const [one, other, sum, product] = [fresh(), fresh(), fresh(), fresh()];
        grainQuotient(a.grains, b.grains, lineOf(b.double), one, 1);
        grainQuotient(c.grains, d.grains, lineOf(d.double), other, 1);
        const [x, y] = [a.value.div(b.value), c.value.div(d.value)];
        grainSum(roundedCounts(one), roundedCounts(other), sum, 1);
        expect(wholeOver(x.add(y), roundedCounts(sum))).toBe(true);
        grainProduct(roundedCounts(one), roundedCounts(other), product, 1);
        expect(wholeOver(x.mul(y), roundedCounts(product))).toBe(true);
      }),
    );
  });

  test("counts too large for a double to tell apart are taken as two", () => {
    const sum = fresh();
    const large = { power: lineOf(), count: lineOf(2 ** 60) };
    grainSum(large, { power: lineOf(), count: lineOf(2 ** 60) }, sum, 1);
    expect(sum.count[0]).toBe(2 ** 120);
    grainSum({ power: lineOf(), count: lineOf(24) }, { power: lineOf(), count: lineOf(24) }, sum, 1);
    expect(sum.count[0]).toBe(24);
  });

  test("of constants: 31.1034768, and 14 / 24", () => {
    expect(grainOf(Quotient.of("31.1034768"))).toEqual({ power: 7, count: 1 });
    expect(grainOf(Quotient.of("14").dividedBy(Quotient.of("24")))).toEqual({ power: 0, count: 24 });
  });
});

/** Counts are kept as sizes: a product of doubles may be a hair off the whole number that it stands for. */
function roundedCounts({ power, count }: Grains): Grains {
  return { power, count: lineOf(Math.round(count[0] ?? 0)) };
}

test("the step of a grain, and none where it is beyond doubles", () => {
  expect(grainStep(2, 4)).toBe(1 / 400);
  expect(grainStep(-3, 4)).toBe(1 / 4);
  expect(grainStep(400, 1)).toBe(0);
});

import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { maximum, Quotient, sum } from "../../../src/exact/quotient";
import { expectExact, type Figure, figures, pointed, positives, rounded } from "../reference";

const any = figures(-10_000, 10_000, 4);
const nonZero = fc
  .tuple(positives(10_000, 4), fc.boolean())
  .map(([value, minus]): Figure => (minus ? negative(value) : value));

function negative(value: Figure): Figure {
  return { text: `-${value.text}`, quotient: Quotient.zero.minus(value.quotient), fraction: value.fraction.neg() };
}

/** Fractions that are no finite decimals: a over b. */
const ratios = fc.tuple(any, nonZero).map(([over, under]) => ({
  quotient: over.quotient.dividedBy(under.quotient),
  fraction: over.fraction.div(under.fraction),
}));

describe("against exact rationals (fraction.js)", () => {
  test("sums, differences, products and quotients of ratios are the rational ones", () => {
    fc.assert(
      fc.property(ratios, ratios, (a, b) => {
        expectExact(a.quotient.plus(b.quotient), a.fraction.add(b.fraction));
        expectExact(a.quotient.minus(b.quotient), a.fraction.sub(b.fraction));
        expectExact(a.quotient.times(b.quotient), a.fraction.mul(b.fraction));
        if (b.fraction.n !== 0n) expectExact(a.quotient.dividedBy(b.quotient), a.fraction.div(b.fraction));
      }),
      { numRuns: 1000 },
    );
  });

  test("order, equality and sign are the rational ones", () => {
    fc.assert(
      fc.property(ratios, ratios, (a, b) => {
        expect(Math.sign(a.quotient.compare(b.quotient))).toBe(a.fraction.compare(b.fraction));
        expect(a.quotient.isGreaterThan(b.quotient)).toBe(a.fraction.gt(b.fraction));
        expect(a.quotient.isLessThan(b.quotient)).toBe(a.fraction.lt(b.fraction));
        expect(a.quotient.equals(b.quotient)).toBe(a.fraction.equals(b.fraction));
        expect(a.quotient.isNegative()).toBe(a.fraction.lt(0));
        expect(a.quotient.isPositive()).toBe(a.fraction.gt(0));
        expect(a.quotient.isZero()).toBe(a.fraction.equals(0));
        expectExact(maximum(a.quotient, b.quotient), a.fraction.gt(b.fraction) ? a.fraction : b.fraction);
      }),
      { numRuns: 1000 },
    );
  });

  test("a sum of many is the rational sum", () => {
    fc.assert(
      fc.property(fc.array(figures(-1000, 1000, 3), { maxLength: 12 }), (values) => {
        let total = new Fraction(0);
        for (const value of values) total = total.add(value.fraction);
        expectExact(sum(values.map((value) => value.quotient)), total);
      }),
    );
  });

  test("a value is rounded once, half away from zero, whatever its denominator", () => {
    fc.assert(
      fc.property(ratios, fc.integer({ min: 0, max: 8 }), (a, places) => {
        expect(
          a.quotient
            .rounded(places)
            .toFixed(places)
            .replace(/^-(0\.?0*)$/, "$1"),
        ).toBe(rounded(a.fraction, places).replace(/^-(0\.?0*)$/, "$1"));
      }),
      { numRuns: 2000 },
    );
  });
});

test("a third is more than any row of threes, however long, and less than one with a four at its end", () => {
  const third = Quotient.one.dividedBy(Quotient.of(3));
  for (const places of [15, 30, 45]) {
    const threes = "3".repeat(places - 1);
    expect(third.isGreaterThan(Quotient.of(`0.${threes}3`))).toBe(true);
    expect(third.isLessThan(Quotient.of(`0.${threes}4`))).toBe(true);
    expect(third.equals(Quotient.of(`0.${threes}3`))).toBe(false);
  }
});

describe("laws", () => {
  test("order of adding and of multiplying is free", () => {
    fc.assert(
      fc.property(ratios, ratios, ratios, ({ quotient: a }, { quotient: b }, { quotient: c }) => {
        expect(a.plus(b).equals(b.plus(a))).toBe(true);
        expect(a.times(b).equals(b.times(a))).toBe(true);
        expect(
          a
            .plus(b)
            .plus(c)
            .equals(a.plus(b.plus(c))),
        ).toBe(true);
        expect(
          a
            .times(b)
            .times(c)
            .equals(a.times(b.times(c))),
        ).toBe(true);
        expect(a.times(b.plus(c)).equals(a.times(b).plus(a.times(c)))).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  test("what is multiplied and divided by the same comes back exactly", () => {
    fc.assert(
      fc.property(ratios, nonZero, ({ quotient: a }, { quotient: b }) => {
        expect(a.dividedBy(b).times(b).equals(a)).toBe(true);
        expect(a.minus(a).isZero()).toBe(true);
        expect(a.plus(Quotient.zero).equals(a)).toBe(true);
        expect(a.times(Quotient.one).equals(a)).toBe(true);
      }),
      { numRuns: 500 },
    );
  });
});

describe("exact ties", () => {
  test("0.33 g at 15.5517384 a troy ounce is 0.165, a true half cent, and goes up", () => {
    // 0.33 x 15.5517384 / 31.1034768 = 0.33 x 1/2 = 0.165.
    const cost = Quotient.of("0.33").times(Quotient.of("15.5517384")).dividedBy(Quotient.of("31.1034768"));
    expect(cost.value().toString()).toBe("0.165");
    expect(cost.rounded(2).toString()).toBe("0.17");
  });

  test("a third of a tie's treble is still a tie", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 10 ** 9 }),
        fc.constantFrom("3", "7", "24", "31.1034768", "0.9775"),
        (n, by) => {
          const tie = Quotient.of(pointed(10n * BigInt(n) + 5n, 3));
          const kept = tie.dividedBy(Quotient.of(by)).times(Quotient.of(by));
          expect(kept.rounded(2).toFixed(2)).toBe(pointed(BigInt(n) + 1n, 2));
        },
      ),
    );
  });
});

test("the number given to a cell is the double nearest to the exact value", () => {
  // 2000 x 0.75 / 31.1034768 = 48.2261198…: both operands whole, so one division of doubles is correctly rounded.
  const rate = Quotient.of("15000000000").dividedBy(Quotient.of("311034768"));
  expect(rate.toNumber()).toBe(15_000_000_000 / 311_034_768);
  expect(Quotient.of("0.1").plus(Quotient.of("0.2")).toNumber()).toBe(0.3);
});

test("dividing by zero is our own mistake, not a person's", () => {
  expect(() => Quotient.one.dividedBy(Quotient.zero)).toThrow("divided by zero");
});

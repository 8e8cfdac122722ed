import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { addRates, costOf, fineGold, meltValue, metalRate, perGram, spotOf } from "../../../src/gold/goldrate";
import { parseMark } from "../../../src/gold/mark";
import type { Currency } from "../../../src/units/currency";
import { money } from "../../../src/units/money";
import { grams, inWeightUnit } from "../../../src/units/weight";
import { published } from "../published";
import { expectExact, expectFault, figures, marks, positives } from "../reference";

const usd = (text: string) => money(Quotient.of(text), "USD");

describe("metal rate", () => {
  test("2000 a troy ounce at 18K is 48.22611985… a gram (hand arithmetic)", () => {
    // 2000 x 0.75 / 31.1034768 = 1500 / 31.1034768 = 48.2261198…
    expect(metalRate(usd("2000"), parseMark("18K")).perGram.rounded(8).toString()).toBe("48.22611985");
  });

  test("a spot of 3110.34768 makes fine gold exactly 100 a gram, and 14K 58.333…, and 585 exactly 58.5", () => {
    const at = (mark: string) => metalRate(usd("3110.34768"), parseMark(mark)).perGram;
    expect(at("24K").value().toString()).toBe("100");
    expect(at("585").value().toString()).toBe("58.5");
    expect(at("14K").rounded(6).toString()).toBe("58.333333");
  });

  test("is spot x share / 31.1034768 for every spot and mark (fraction.js)", () => {
    fc.assert(
      fc.property(figures(0, 10_000, 3), marks, (spot, mark) => {
        const rate = metalRate(money(spot.quotient, "GBP"), parseMark(mark.text));
        expectExact(rate.perGram, spot.fraction.mul(mark.share).div("31.1034768"));
        expect(rate.currency).toBe("GBP");
      }),
      { numRuns: 500 },
    );
  });
});

test("melt value is weight x metal rate, and 0.33 g of fine gold at 15.5517384 is a true half cent (fraction.js)", () => {
  // 0.33 x 15.5517384 / 31.1034768 = 0.165.
  expect(
    meltValue(grams(Quotient.of("0.33")), parseMark("24K"), usd("15.5517384"))
      .amount.value()
      .toString(),
  ).toBe("0.165");
  fc.assert(
    fc.property(figures(0, 1000, 3), figures(0, 10_000, 2), marks, (weight, spot, mark) => {
      const melt = meltValue(grams(weight.quotient), parseMark(mark.text), money(spot.quotient, "USD"));
      expectExact(melt.amount, weight.fraction.mul(spot.fraction).mul(mark.share).div("31.1034768"));
    }),
    { numRuns: 500 },
  );
});

const { source, rows } = published<{
  source: string;
  rows: readonly { grossGrams: string; mark: string; fineOunces: string }[];
}>("coin-content.json");
test.each(rows)(
  `$grossGrams g of $mark hold $fineOunces fine ounces (${source})`,
  ({ grossGrams, mark, fineOunces }) => {
    const fine = fineGold(grams(Quotient.of(grossGrams)), parseMark(mark));
    expect(inWeightUnit(fine, "ozt").rounded(4).toFixed(4)).toBe(fineOunces);
  },
);

test("what a weight costs, and rates added, are exact (fraction.js)", () => {
  fc.assert(
    fc.property(figures(0, 1000, 3), figures(0, 500, 4), positives(500, 4), (weight, a, b) => {
      const both = addRates(perGram(a.quotient, "USD"), perGram(b.quotient, "USD"));
      expectExact(costOf(grams(weight.quotient), both).amount, a.fraction.add(b.fraction).mul(weight.fraction));
    }),
  );
});

test("rates of two currencies are never added, even where the compiler could not see it", () => {
  const dollars = perGram<Currency>(Quotient.one, "USD");
  const euros = perGram<Currency>(Quotient.one, "EUR");
  expectFault(() => addRates(dollars, euros), "currencyMismatch", "found EUR beside USD");
});

test("a rate is frozen", () => {
  expect(Object.isFrozen(perGram(Quotient.one, "USD"))).toBe(true);
});

describe("the spot behind a price per gram", () => {
  test("75 a gram at 750 is 100 a gram fine: 3,110.34768 an ounce (hand arithmetic)", () => {
    const spot = spotOf(perGram(Quotient.of("75"), "USD"), parseMark("750"));
    expect(spot.amount.value().toString()).toBe("3110.34768");
  });

  test("turns the metal rate round, exactly, at any mark", () => {
    fc.assert(
      fc.property(positives(9000, 4), marks, (amount, mark) => {
        const spot = usd(amount.text);
        expect(spotOf(metalRate(spot, parseMark(mark.text)), parseMark(mark.text)).amount.equals(spot.amount)).toBe(
          true,
        );
      }),
    );
  });
});

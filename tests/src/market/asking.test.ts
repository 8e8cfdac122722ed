import { ucum } from "@atomic-ehr/ucum";
import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { type Asking, checkAsking, currencyNamed, parseAsking, readPer } from "../../../src/market/asking";
import { money } from "../../../src/units/money";
import { type Record_, read } from "../orders";
import { expectExact, expectFault, marks, positives } from "../reference";

/** 20 g of 250 ‰ at a spot of 3110.34768 are 25.00 a gram: 3110.34768 x 0.25 / 31.1034768. */
const OFFER = { price: "668", weight: "20", mark: "250" };
const SPOT = money(Quotient.of("3110.34768"), "USD");

const parsed = (changes: Record_ = {}) => parseAsking({ ...OFFER, ...changes }, "USD");
const asking = (changes: Record_ = {}): Asking => read(parsed(changes));
const checked = (changes: Record_ = {}) => checkAsking(asking(changes), SPOT);
const faults = (changes: Record_) => {
  const result = parsed(changes);
  return result.ok ? [] : result.faults.map(({ field, sentence }) => `${field}: ${sentence}`);
};

describe("an asking price against the metal", () => {
  test("668 for 20 g is 33.40 a gram, 8.40 over 25.00, 33.6 % above melt (hand arithmetic)", () => {
    const { asked, melt, premium, aboveMelt, askedForAll, meltForAll } = checked();
    expectExact(asked.perGram, new Fraction("33.4"));
    expectExact(melt.perGram, new Fraction(25));
    expectExact(premium.perGram, new Fraction("8.4"));
    expectExact(aboveMelt, new Fraction("0.336"));
    expectExact(askedForAll?.amount ?? Quotient.zero, new Fraction(668));
    expectExact(meltForAll?.amount ?? Quotient.zero, new Fraction(500));
  });

  test.each([
    ["dwt", "[pwt_tr]"],
    ["ozt", "[oz_tr]"],
    ["oz av", "[oz_av]"],
    ["g", "g"],
  ])("80 for one %s is 80 over its grams (UCUM 1.9, relative 1e-12), with a weight or without", (per, code) => {
    const theirs = 80 / ucum.convert(1, code, "g");
    for (const weight of ["20", ""]) {
      const { asked } = checked({ price: "80", per, weight });
      expect(Math.abs(asked.perGram.toNumber() - theirs) / theirs).toBeLessThan(1e-12);
    }
    expect(checked({ price: "80", per, weight: "" }).askedForAll).toBeUndefined();
  });

  test("below the metal the premium is below zero: 440 for 20 g is 3.00 under (hand arithmetic)", () => {
    expectExact(checked({ price: "440" }).premium.perGram, new Fraction(-3));
  });

  test("another currency is counted at the rate given: EUR 500 at 1.08 is USD 540, 27.00 a gram (hand arithmetic)", () => {
    for (const how of [{ price: "EUR 500" }, { price: "500", currency: "eur" }, { price: "€500" }]) {
      expectExact(checked({ ...how, exchange: "1.08" }).asked.perGram, new Fraction(27));
    }
  });

  test("exactly, for any price, weight, mark and rate of exchange", () => {
    fc.assert(
      fc.property(
        positives(9000, 2),
        positives(400, 3),
        marks,
        positives(5000, 2),
        positives(3, 4),
        (price, weight, mark, spot, rate) => {
          const offer = {
            price: price.text,
            weight: weight.text,
            mark: mark.text,
            currency: "EUR",
            exchange: rate.text,
          };
          const check = checkAsking(asking(offer), money(spot.quotient, "USD"));
          const melt = spot.fraction.mul(mark.share).div("31.1034768");
          expectExact(check.premium.perGram, price.fraction.mul(rate.fraction).div(weight.fraction).sub(melt));
        },
      ),
    );
  });
});

describe("what is asked back", () => {
  test("a piece without a weight, a mark that is missing, a weight of 0", () => {
    expect(faults({ weight: "", mark: "" })).toEqual([
      expect.stringContaining("mark: Mark: found nothing"),
      expect.stringContaining("weight: Weight: found nothing"),
    ]);
    expect(faults({ weight: "0" })).toEqual([expect.stringContaining('Weight: found "0"; give a weight above 0')]);
    expect(faults({ price: "0" })).toEqual([expect.stringContaining("Asked price")]);
  });

  test("a rate for another currency, never assumed", () => {
    expect(faults({ currency: "EUR" })).toEqual([
      expect.stringContaining("exchange: Rate of exchange: found nothing; give how many USD one EUR costs"),
    ]);
    expect(faults({ price: "668 EUR", exchange: "0" })).toEqual([expect.stringContaining("a rate above 0")]);
    expect(faults({ exchange: "1.08" })).toEqual([expect.stringContaining("the workbook's own; empty it")]);
    expect(faults({ exchange: "1" })).toEqual([]);
  });

  test("a sign of several currencies where it is not the workbook's, and two currencies at once", () => {
    expect(faults({ price: "$668" })).toEqual([]);
    expect(faults({ price: "¥668" })).toEqual([expect.stringContaining("JPY")]);
    expect(faults({ price: "668 EUR", currency: "CHF" })).toEqual([
      expect.stringContaining("found CHF beside a price in EUR"),
    ]);
    expect(faults({ price: "€668", currency: "USD" })).toEqual([
      expect.stringContaining("found USD beside a price with €"),
    ]);
  });

  test("an ounce of which kind is not said, in the weight and in what the price is for", () => {
    expect(faults({ weight: "0.6 oz", per: "oz" })).toEqual([
      expect.stringMatching(/^per: .*give ozt or oz av$/),
      expect.stringContaining("give 0.6 ozt or 0.6 oz av"),
    ]);
  });
});

test("what a price is for, in the words of sellers", () => {
  const per = (value: unknown) => readPer(value, "Asked for");
  expect(["", "Piece", "each", "the whole piece", "pcs."].map(per)).toEqual(Array(5).fill("piece"));
  expect(["gram", "per gram", "a g", "Pennyweight", "troy ounce"].map(per)).toEqual(["g", "g", "g", "dwt", "ozt"]);
  expectFault(() => per("kg"), "unknownWord", '"kg"', '"oz av"');
  expectFault(() => per("dozen"), "unknownWord", '"dozen"');
});

test("the currency a price names, for knowing whether a rate must be asked", () => {
  expect(currencyNamed("EUR 5", "", "USD")).toBe("EUR");
  expect(currencyNamed("5", "chf", "USD")).toBe("CHF");
  expect(currencyNamed("5", "gold", "USD")).toBe("USD");
});

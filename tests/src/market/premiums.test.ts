import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { perGram } from "../../../src/gold/goldrate";
import { parseMark } from "../../../src/gold/mark";
import { medianNear, medianPremiums, type SeenPremium, seenPremium, weightClass } from "../../../src/market/premiums";
import { parseSeenAsking } from "../../../src/market/seenasking";
import { money } from "../../../src/units/money";
import { grams } from "../../../src/units/weight";
import { read } from "../orders";
import { expectExact } from "../reference";

const seen = (month: string, weight: string, mark: string, premium: string, hollow = false): SeenPremium => ({
  month,
  hollow,
  weight: grams(Quotient.of(weight)),
  mark: parseMark(mark),
  premium: perGram(Quotient.of(premium), "USD"),
});

test("a class of weights holds its least and not its most", () => {
  const classes = ["0.01", "4.999", "5", "19.99", "20", "99.9", "100", "5000"];
  expect(classes.map((weight) => weightClass(grams(Quotient.of(weight))))).toEqual([0, 0, 1, 2, 3, 4, 5, 5]);
});

describe("the median premium", () => {
  test("of each class, mark and month is the middle one, or halfway between the two in the middle", () => {
    const medians = medianPremiums([
      seen("2026-05", "12", "14K", "9"),
      seen("2026-04", "12", "14K", "8"),
      seen("2026-05", "15", "14K", "7.5"),
      seen("2026-05", "19", "14K", "30"),
      seen("2026-04", "11", "14K", "8.5"),
      seen("2026-04", "11", "18K", "10"),
      seen("2026-04", "3", "14K", "20"),
    ]);
    expect(
      medians.map((row) => [row.weightClass, row.mark, row.month, row.median.perGram.value().toString(), row.count]),
    ).toEqual([
      [0, "14K", "2026-04", "20", 1],
      [2, "18K", "2026-04", "10", 1],
      [2, "14K", "2026-04", "8.25", 2],
      [2, "14K", "2026-05", "9", 3],
    ]);
  });

  test("is of solid pieces or of hollow ones, never of both", () => {
    const both = [
      seen("2026-04", "12", "14K", "8"),
      seen("2026-04", "12", "14K", "10"),
      seen("2026-04", "12", "14K", "40", true),
    ];
    expect(medianPremiums(both).map((row) => [row.hollow, row.median.perGram.value().toString(), row.count])).toEqual([
      [false, "9", 2],
      [true, "40", 1],
    ]);
    const near = (hollow: boolean, of = both) =>
      medianNear(of, { mark: parseMark("14K"), hollow, weight: grams(Quotient.of("12")) })?.median.perGram.toNumber();
    expect([near(false), near(true)]).toEqual([9, 40]);
    expect(near(true, both.slice(0, 2))).toBeUndefined();
  });

  test("has as many below it as above it, whatever the order they come in", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -500, max: 5000 }), { minLength: 1, maxLength: 30 }), (cents) => {
        const [row] = medianPremiums(cents.map((each) => seen("2026-04", "12", "14K", String(each))));
        const median = row?.median.perGram.toNumber() ?? Number.NaN;
        const below = cents.filter((each) => each < median).length;
        const above = cents.filter((each) => each > median).length;
        expect(Math.max(below, above)).toBeLessThanOrEqual(cents.length / 2);
        expect(row?.count).toBe(cents.length);
      }),
    );
  });
});

test("a price is held against the spot of its own day, else today's: 3.00 under at 25.00, 2.00 over at 20.00 (hand arithmetic)", () => {
  const today = money(Quotient.of("3110.34768"), "USD");
  const of = (spot: string) =>
    read(parseSeenAsking({ price: "440", weight: "20", mark: "250", date: "2026-04-03", spot }, "USD", "2026-05-01"));
  expectExact(seenPremium(of(""), today)?.premium.perGram ?? Quotient.zero, new Fraction(-3));
  // 2488.278144 x 0.25 / 31.1034768 = 20.
  expectExact(seenPremium(of("2488.278144"), today)?.premium.perGram ?? Quotient.zero, new Fraction(2));
  const weightless = read(parseSeenAsking({ price: "33", per: "g", mark: "250" }, "USD", "2026-05-01"));
  expect(seenPremium(weightless, today)).toBeUndefined();
});

describe("the median nearest to a piece", () => {
  const SEEN = [
    seen("2026-05", "12", "14K", "9"),
    seen("2026-03", "19", "14K", "8.5"),
    seen("", "15", "14K", "7"),
    seen("2026-04", "60", "14K", "5"),
    seen("2026-01", "15", "18K", "30"),
  ];
  const near = (mark: string, weight: string) => {
    const found = medianNear(SEEN, { mark: parseMark(mark), hollow: false, weight: grams(Quotient.of(weight)) });
    return found && [found.weightClass, found.median.perGram.value().toString(), found.count, found.from, found.to];
  };

  test("is of its own mark and class, over all months (hand-picked: 7, 8.5 and 9)", () => {
    expect(near("14K", "10")).toEqual([2, "8.5", 3, "2026-03", "2026-05"]);
    expect(near("14K", "99")).toEqual([4, "5", 1, "2026-04", "2026-04"]);
    expect(near("18K", "11")).toEqual([2, "30", 1, "2026-01", "2026-01"]);
  });

  test("where its class has none, that of the nearest weight: 39 g are 20 from 19 and 21 from 60, 40 g the other way round", () => {
    expect(near("14K", "39")?.[0]).toBe(2);
    expect(near("14K", "40")?.[0]).toBe(4);
    expect(near("14K", "300")?.[0]).toBe(4);
    expect(near("14K", "1")?.[0]).toBe(2);
  });

  test("there is none for a mark nobody asked for, and no month where nobody wrote one down", () => {
    expect(near("9K", "12")).toBeUndefined();
    const undated = medianNear([seen("", "3", "9K", "1")], {
      mark: parseMark("375"),
      hollow: false,
      weight: grams(Quotient.of("3")),
    });
    expect([undated?.from, undated?.to, undated?.count]).toEqual(["", "", 1]);
  });
});

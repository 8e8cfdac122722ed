import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { compareSources, lineOfWeight, sellersFor } from "../../../src/makeorbuy/chainchoice";
import type { MakerOffer } from "../../../src/makeorbuy/makeroffer";
import { readPriceLists } from "../../../src/makeorbuy/makers";
import { makingRanges, type WinningRange, winningRanges } from "../../../src/makeorbuy/winningranges";
import { money } from "../../../src/units/money";
import { grams } from "../../../src/units/weight";
import { AT_25, costed, HUNDRED_GRAMS, madeChain, priced } from "../chains";
import { type Record_, randomOrder, randomRates } from "../orders";
import { type Cells, randomSellers, rowsOf, sellersOfRandom } from "../pricelists";
import { expectExact, positives } from "../reference";

const shown = (value: Quotient | undefined) => (value ? value.rounded(2).toString() : "");
const said = (ranges: readonly WinningRange[]) =>
  ranges.map(
    ({ from, to, winner }) =>
      `${shown(from.grams)}-${shown(to?.grams)} ${winner.kind === "buy" ? winner.seller.maker : winner.kind}`,
  );

/** 50 flat, 1.50 a gram cast, nothing lost. */
const PLAIN = { ...AT_25, loss: "0" };
function choiceOf(rows: readonly Cells[], rates: Record_ = PLAIN) {
  const { line, spot, rates: workshop } = costed(HUNDRED_GRAMS, rates);
  return {
    line,
    spot,
    rates: workshop,
    sellers: sellersFor(readPriceLists(rowsOf(...rows), "USD"), line, workshop).sellers,
  };
}

describe("who is cheapest at which weights", () => {
  test("one maker at 3.50 for all: bought to 50 / (3.50 - 1.50) = 25 g, made above (hand arithmetic)", () => {
    const ranges = winningRanges(choiceOf([["Fennick", 250, 0, 3.5]]), "more links");
    expect(said(ranges)).toEqual(["0-25 Fennick", "25- make"]);
    expect(ranges[0]?.to?.grams.value().toString()).toBe("25");
  });

  test("6.00 from 0 g and 3.00 from 20 g: made from 50 / 4.50 to 20 g, and again above 50 / 1.50 (hand arithmetic)", () => {
    const ranges = winningRanges(
      choiceOf([
        ["Fennick", 250, 0, 6],
        ["Fennick", 250, 20, 3],
      ]),
      "more links",
    );
    expect(said(ranges)).toEqual(["0-11.11 Fennick", "11.11-20 make", "20-33.33 Fennick", "33.33- make"]);
    expectExact(ranges[1]?.from.grams as Quotient, new Fraction(100, 9));
    expectExact(ranges[3]?.from.grams as Quotient, new Fraction(100, 3));
    expect(makingRanges(ranges).map(({ from, to }) => [shown(from.grams), shown(to?.grams)])).toEqual([
      ["11.11", "20"],
      ["33.33", ""],
    ]);
  });

  test("of two makers the one with the least surcharge for the weight; nobody sells below 5 g (hand arithmetic)", () => {
    const ranges = winningRanges(
      choiceOf([
        ["Fennick", 250, 5, 4],
        ["Orrin", 250, 10, 3.5],
        ["Fennick", 250, 20, 3],
        ["Orrin", 250, 30, 1],
      ]),
      "more links",
    );
    // 50 / 2.50 = 20 g is not below 20; 50 / 2 = 25 is not below 20; 50 / 1.50 = 33.3 is not below 30; 1.00 is below the 1.50 cast.
    expect(said(ranges)).toEqual(["0-5 only make", "5-10 Fennick", "10-20 Orrin", "20-30 Fennick", "30- Orrin"]);
    expect(makingRanges(ranges).map(({ to }) => shown(to?.grams))).toEqual(["5"]);
  });

  test("a range of making that goes on over the start of a class is one", () => {
    const ranges = winningRanges(
      choiceOf([
        ["Fennick", 250, 5, 11.5],
        ["Fennick", 250, 20, 6.5],
        ["Fennick", 250, 50, 1.5],
      ]),
      "more links",
    );
    // 50 / 10 = 5 g, where the class begins; 50 / 5 = 10 g, below 20; never.
    expect(said(ranges)).toEqual(["0-5 only make", "5-50 make", "50- Fennick"]);
    expect(makingRanges(ranges).map(({ from, to }) => [shown(from.grams), shown(to?.grams)])).toEqual([["0", "50"]]);
  });

  test("with nothing flat making wins from the first gram; without a surcharge never", () => {
    expect(said(winningRanges(choiceOf([["F", 250, 0, 3]], { ...PLAIN, labourFlat: "0" }), "more links"))).toEqual([
      "0- make",
    ]);
    expect(said(winningRanges(choiceOf([["F", 250, 0, 0]]), "more links"))).toEqual(["0- F"]);
  });

  test("at any weight the range says who is cheapest in exact rationals (fraction.js)", () => {
    fc.assert(
      fc.property(
        randomRates,
        randomOrder,
        randomSellers,
        fc.array(positives(260, 2), { minLength: 6, maxLength: 6 }),
        fc.constantFrom("more links", "heavier links"),
        (rates, order, random, weights, heavier) => {
          const { line, spot, rates: workshop } = priced(rates, order);
          const links = new Fraction(line.links.value().toString());
          const sellers = sellersOfRandom(random, workshop.currency as "USD");
          const ranges = winningRanges({ line, spot, rates: workshop, sellers }, heavier as "more links");
          expect(ranges[0]?.from.grams.isZero()).toBe(true);
          expect(ranges.at(-1)?.to).toBeUndefined();
          for (const weight of weights) {
            const range = ranges.findLast(({ from }) => !from.grams.isGreaterThan(weight.quotient));
            // Where a range begins at a crossing both cost the same: told elsewhere.
            if (range?.from.grams.equals(weight.quotient)) continue;
            const metal = rates.figures.spot.fraction.mul(order.share).div("31.1034768");
            const made = madeChain(rates, order, weight.fraction, heavier === "heavier links" ? { links } : {});
            const asked = random.flatMap(({ maker, classes }) => {
              const own = classes.filter(({ from }) => from.fraction.lte(weight.fraction)).at(-1);
              return own ? [{ maker, cost: metal.add(own.surcharge.fraction).mul(weight.fraction) }] : [];
            });
            const best = asked.reduce<(typeof asked)[number] | undefined>(
              (low, bid) => (low?.cost.lte(bid.cost) ? low : bid),
              undefined,
            );
            const { winner } = range ?? {};
            const name = winner?.kind === "buy" ? winner.seller.maker : winner?.kind;
            expect(name).toBe(!best ? "only make" : made.lt(best.cost) ? "make" : best.maker);
          }
        },
      ),
      { numRuns: 250 },
    );
  });

  test("a minimum that these pieces do not reach is no offer: from 3.00 at 60 g or 600 in money at once (hand arithmetic)", () => {
    const rows: readonly Cells[] = [
      ["Fennick", 250, 0, 2, 60, "g"],
      ["Orrin", 250, 0, 5, 600, "money"],
    ];
    // One piece: below 600 / 30 = 20 g nobody, then Orrin at 5.00 until 50 / 3.50; from 60 g Fennick at 2.00 until 50 / 0.50.
    expect(said(winningRanges(choiceOf(rows), "heavier links"))).toEqual([
      "0-20 only make",
      "20-60 make",
      "60-100 Fennick",
      "100- make",
    ]);
    // Of five pieces of 12 g on they reach 60 g.
    const five = choiceOf(rows);
    const line = { ...five.line, quantity: Quotient.of(5) };
    expect(said(winningRanges({ ...five, line }, "more links"))).toEqual([
      "0-4 only make",
      "4-12 Orrin",
      "12-100 Fennick",
      "100- make",
    ]);
  });

  test("with minimums, too, at any weight the range says what these pieces can have (fraction.js)", () => {
    const minimum = fc.option(fc.record({ least: positives(400, 1), inMoney: fc.boolean() }), { nil: undefined });
    fc.assert(
      fc.property(
        randomRates,
        randomOrder,
        randomSellers,
        fc.array(minimum, { minLength: 9, maxLength: 9 }),
        fc.array(positives(260, 2), { minLength: 5, maxLength: 5 }),
        (rates, order, random, minimums, weights) => {
          const { line, spot, rates: workshop } = priced(rates, order);
          const currency = workshop.currency as "USD";
          const pieces = order.figures.quantity.fraction;
          const metal = rates.figures.spot.fraction.mul(order.share).div("31.1034768");
          const least = (maker: number, at: number) => minimums[3 * maker + at];
          const sellers = sellersOfRandom(random, currency).map((seller, maker) => ({
            ...seller,
            classes: seller.classes.map((each, at): MakerOffer => {
              const given = least(maker, at);
              if (!given) return each;
              const { least: amount, inMoney } = given;
              const weight = { kind: "weight", weight: grams(amount.quotient) } as const;
              return {
                ...each,
                minimum: inMoney ? { kind: "money", money: money(amount.quotient, currency) } : weight,
              };
            }),
          }));
          const choice = { line, spot, rates: workshop, sellers };
          const ranges = winningRanges(choice, "more links");
          for (const weight of weights) {
            const range = ranges.findLast(({ from }) => !from.grams.isGreaterThan(weight.quotient));
            if (range?.from.grams.equals(weight.quotient)) continue;
            const made = madeChain(rates, order, weight.fraction);
            const asked = random.flatMap(({ maker, classes }, at) => {
              const place = classes.findLastIndex(({ from }) => from.fraction.lte(weight.fraction));
              const own = classes[place];
              if (!own) return [];
              const cost = metal.add(own.surcharge.fraction).mul(weight.fraction);
              const given = least(at, place);
              const all = (given?.inMoney ? cost : weight.fraction).mul(pieces);
              return given && all.lt(given.least.fraction) ? [] : [{ maker, cost }];
            });
            const best = asked.reduce<(typeof asked)[number] | undefined>(
              (low, bid) => (low?.cost.lte(bid.cost) ? low : bid),
              undefined,
            );
            const { winner } = range ?? {};
            const name = winner?.kind === "buy" ? winner.seller.maker : winner?.kind;
            expect(name).toBe(!best ? "only make" : made.lt(best.cost) ? "make" : best.maker);
            // The answer at that weight is the same.
            const there = compareSources({ ...choice, line: lineOfWeight(line, grams(weight.quotient), "more links") });
            expect([there.verdict, there.best?.seller.maker]).toEqual([
              !best || made.lt(best.cost) ? "make" : "buy",
              best?.maker,
            ]);
          }
        },
      ),
      { numRuns: 200 },
    );
  });

  test("ranges follow each other without a gap, and neighbours have different winners", () => {
    fc.assert(
      fc.property(randomRates, randomOrder, randomSellers, (rates, order, random) => {
        const { line, spot, rates: workshop } = priced(rates, order);
        const ranges = winningRanges(
          {
            line,
            spot,
            rates: workshop,
            sellers: sellersOfRandom(random, workshop.currency as "USD"),
          },
          "more links",
        );
        const names = said(ranges).map((each) => each.replace(/^\S+ /, ""));
        ranges.slice(1).forEach(({ from }, at) => {
          expect(ranges[at]?.to?.grams.equals(from.grams)).toBe(true);
          expect(names[at]).not.toBe(names[at + 1]);
        });
      }),
      { numRuns: 150 },
    );
  });
});

import fc from "fast-check";
import type Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import {
  compareSources,
  lineOfWeight,
  MAKER_OF_RATES,
  savedByChoice,
  sellersFor,
} from "../../../src/makeorbuy/chainchoice";
import { chainWeightOf } from "../../../src/makeorbuy/crossover";
import { readPriceLists } from "../../../src/makeorbuy/makers";
import { costPiece } from "../../../src/quote/piececosts";
import type { Currency } from "../../../src/units/currency";
import { grams } from "../../../src/units/weight";
import { AT_25, costed, HUNDRED_GRAMS, madeChain, priced } from "../chains";
import { type Record_, randomOrder, randomRates } from "../orders";
import { type Cells, randomSellers, rowsOf, sellersOfRandom } from "../pricelists";
import { published } from "../published";
import { expectExact, positives } from "../reference";

const q = (text: string) => Quotient.of(text);
const text = (value: Quotient | undefined) => value?.value().toString();

/** 100 g at a metal rate of 25.00, 1.50 cast, 50 labour, 2 g lost on the quick basis: 27.50 a gram made (common practice). */
function hundredGrams(rows: readonly Cells[], order: Record_ = {}, rates: Record_ = {}) {
  const { line, spot, rates: workshop, sheet } = costed({ ...HUNDRED_GRAMS, ...order }, { ...AT_25, ...rates });
  const lists = readPriceLists(rowsOf(...rows), workshop.currency);
  const { sellers, from } = sellersFor(lists, line, workshop);
  const choice = { line, sellers, spot, rates: workshop };
  return { choice, from, sheet, said: compareSources(choice) };
}

describe("the plain chain made, against every maker", () => {
  test("27.50 made against 28.25 and 28.00 bought: made, and 50 saved against the cheapest (hand arithmetic)", () => {
    const { said } = hundredGrams([
      ["Fennick", 250, 0, 3.25],
      ["Orrin", "all", 50, 3],
    ]);
    expect(text(said.makePerGram.perGram)).toBe("27.5");
    expect(text(said.makeCost.amount)).toBe("2750");
    expect(
      said.bids.map(({ seller, perGram, cost, saving }) => [
        seller.maker,
        text(perGram.perGram),
        text(cost.amount),
        text(saving.amount),
      ]),
    ).toEqual([
      ["Orrin", "28", "2800", "50"],
      ["Fennick", "28.25", "2825", "75"],
    ]);
    expect(said.verdict).toBe("make");
    expect(text(savedByChoice(said)?.amount)).toBe("50");
  });

  test("a hollow piece is compared with no price of solid chain, of lists or of Rates", () => {
    for (const rows of [[["Fennick", 250, 0, 3.25] as Cells], []]) {
      const { said, from } = hundredGrams(rows, { solidity: "hollow" });
      expect(from).toBe("nowhere: the piece is hollow");
      expect([said.bids.length, said.larger.length, said.best, said.verdict]).toEqual([0, 0, undefined, "make"]);
    }
  });

  test("of stepped surcharges the weight's own class counts; 2.50 from 100 g on wins by 0 and says buy", () => {
    const { said } = hundredGrams([
      ["Fennick", 250, 0, 6],
      ["Fennick", 250, 100, 2.5],
      ["Fennick", 250, 100.01, 1],
    ]);
    // 25 + 2.50 is 27.50, what making costs: at equal cost it says buy.
    expect(said.bids.map(({ offer }) => text(offer.surcharge.perGram))).toEqual(["2.5"]);
    expect(said.best?.saving.amount.isZero()).toBe(true);
    expect(said.verdict).toBe("buy");
  });

  test("a weight that nobody sells is made, and saves nothing that could be told", () => {
    const { said } = hundredGrams([["Fennick", 250, 100.5, 0]]);
    expect([said.best, said.verdict, savedByChoice(said)]).toEqual([undefined, "make", undefined]);
  });

  test("the model and mould are part of making: 40 for this piece turn 50 saved into 10 (hand arithmetic)", () => {
    const { said, sheet } = hundredGrams([["Orrin", "all", 0, 3]], { setup: "40" });
    expect(text(said.best?.saving.amount)).toBe("10");
    // 25 + 3.25 on Rates: 75 - 40.
    expect(text(sheet.sourcing.saving.amount)).toBe("35");
  });

  test("what is saved in all is for all pieces, whichever way is the cheaper", () => {
    // Two pieces, 0.50 a gram cheaper bought.
    const { said } = hundredGrams([["Orrin", "all", 0, 2]], { quantity: "2" });
    expect([said.verdict, text(savedByChoice(said)?.amount)]).toEqual(["buy", "100"]);
  });

  const { rows, source } = published<{
    source: string;
    rows: readonly {
      make: [string, string, string];
      buy: string;
      units: string;
      makeTotal: string;
      buyTotal: string;
      decision: string;
    }[];
  }>("make-or-buy.json");
  test.each(rows)(`$units units at $make against $buy: $decision (${source})`, (row) => {
    const [material, fee, work] = row.make;
    const each = Number(row.units) / 120;
    // A gram for a unit: 120 links of 1,000 g, all fine gold at 0.87 a gram (0.87 x 31.1034768 an ounce).
    const { line, spot, rates } = costed(
      { mark: "1000", length: "120", lengthUnit: "in", linksPer: "1", linkWeight: String(each) },
      { spot: "27.060024816", castingFee: fee, labourFlat: "0", labourPerGram: work, loss: "0", surcharge: "0" },
    );
    expect(material).toBe("0.87");
    const surcharge = q(row.buy).minus(q(material)).toNumber();
    const lists = readPriceLists(rowsOf(["Maker", "all", 0, surcharge]), "USD");
    const said = compareSources({ line, spot, rates, sellers: sellersFor(lists, line, rates).sellers });
    expect(text(said.makeCost.amount)).toBe(row.makeTotal);
    expect(text(said.best?.cost.amount)).toBe(row.buyTotal);
    expect(text(said.best?.saving.amount)).toBe(text(q(row.buyTotal).minus(q(row.makeTotal))));
    expect(said.verdict).toBe(row.decision);
  });

  test("no maker is cheaper than the one chosen, and every figure is the rational one (fraction.js)", () => {
    fc.assert(
      fc.property(randomRates, randomOrder, randomSellers, positives(300, 2), (rates, order, random, weight) => {
        const { line, spot, rates: workshop } = priced(rates, order);
        const sellers = sellersOfRandom(random, workshop.currency as "USD");
        const said = compareSources({
          line: lineOfWeight(line, grams(weight.quotient), "more links"),
          sellers,
          spot,
          rates: workshop,
        });
        const metal = rates.figures.spot.fraction.mul(order.share).div("31.1034768");
        const asked = random.flatMap(({ maker, classes }) => {
          const own = classes.filter(({ from }) => from.fraction.lte(weight.fraction)).at(-1);
          return own ? [{ maker, perGram: metal.add(own.surcharge.fraction) }] : [];
        });
        const made = madeChain(rates, order, weight.fraction);
        expectExact(said.makeCost.amount, made);
        expect(said.bids).toHaveLength(asked.length);
        const least = asked.reduce<Fraction | undefined>(
          (low, { perGram }) => (low?.lte(perGram) ? low : perGram),
          undefined,
        );
        if (!least) {
          expect([said.best, said.verdict]).toEqual([undefined, "make"]);
          return;
        }
        if (!said.best) throw new Error("somebody sells it");
        expectExact(said.best.perGram.perGram, least);
        expectExact(said.best.cost.amount, least.mul(weight.fraction));
        expectExact(said.best.saving.amount, least.mul(weight.fraction).sub(made));
        expect(said.best.seller.maker).toBe(asked.find(({ perGram }) => perGram.equals(least))?.maker);
        expect(said.verdict).toBe(made.lt(least.mul(weight.fraction)) ? "make" : "buy");
      }),
      { numRuns: 300 },
    );
  });
});

describe("who sells the chain of a line", () => {
  const of = (rows: readonly Cells[]) => {
    const { from, choice } = hundredGrams(rows);
    return [from, ...choice.sellers.map(({ maker }) => maker)];
  };

  test("the price lists' makers of its mark; else the surcharge on Rates, and why", () => {
    expect(of([["Orrin", 250, 0, 3]])).toEqual(["price lists", "Orrin"]);
    expect(of([])).toEqual(["no price list", MAKER_OF_RATES]);
    expect(of([["Orrin", "18K", 0, 3]])).toEqual(["no row for the mark", MAKER_OF_RATES]);
    expect(of([["Orrin", 250, 0, ""]])).toEqual(["no row for the mark", MAKER_OF_RATES]);
  });

  test("at the surcharge on Rates it is what the cost sheet says", () => {
    fc.assert(
      fc.property(randomRates, randomOrder, (rates, order) => {
        const { line, spot, rates: workshop, sheet } = priced(rates, order);
        const { sellers } = sellersFor(undefined, line, workshop);
        const said = compareSources({ line, sellers, spot, rates: workshop });
        expect(said.makePerGram.perGram.equals(sheet.sourcing.makePerGram.perGram)).toBe(true);
        expect(said.best?.perGram.perGram.equals(sheet.sourcing.buyPerGram.perGram)).toBe(true);
        expect(said.best?.saving.amount.equals(sheet.sourcing.saving.amount)).toBe(true);
        expect(said.verdict).toBe(sheet.sourcing.verdict);
      }),
      { numRuns: 200 },
    );
  });
});

describe("a line of another weight", () => {
  test("has links in proportion, each as heavy as before, and everything else as it was", () => {
    const { line, spot, rates } = costed({ ...HUNDRED_GRAMS, setup: "5" }, AT_25);
    const half = lineOfWeight(line, grams(q("12.5")), "more links");
    expect(text(chainWeightOf(half).grams)).toBe("12.5");
    expect(text(half.links)).toBe("12.5");
    expect(text(costPiece(half, spot, rates).chainWeight.grams)).toBe("12.5");
    expect(half.setup).toBe(line.setup);
    expect(half.linkGroups[0]?.linkWeight).toBe(line.linkGroups[0]?.linkWeight);
  });

  test("a chain in two currencies is refused, even where the compiler could not see it", () => {
    const { choice } = hundredGrams([["Orrin", 250, 0, 3]]);
    const euro = { ...choice, spot: { ...choice.spot, currency: "EUR" as Currency } };
    expect(() => compareSources(euro)).toThrow("give every amount in one currency");
  });
});

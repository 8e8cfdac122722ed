import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { parseMark } from "../../../src/gold/mark";
import { parseAsking } from "../../../src/market/asking";
import { compareAsking, ownLine } from "../../../src/market/comparison";
import { costOrder } from "../../../src/quote/costsheet";
import { grams } from "../../../src/units/weight";
import { readOwnLinks } from "../../../src/weights/ownlink";
import { orderOf, type RandomRates, type Record_, randomRates, ratesOf, read } from "../orders";
import { published } from "../published";
import { expectExact } from "../reference";

/** 25.00 a gram at 250 ‰; 1.50 cast, 50 labour, 2 g lost, quick basis, markup 30 %, price step 5 (tests/src/orders.ts). */
const linkOf = (changes: Record_ = {}) => {
  const cells = {
    model: "Ada",
    width: "",
    mark: "250",
    colour: "yellow",
    linksPer: "4",
    linksPerUnit: "in",
    weight: "2",
    basis: "",
  };
  const [link] = readOwnLinks([{ ...cells, ...changes }]);
  if (!link) throw new Error("no link");
  return link;
};

function compared(price: string, weight: string, rates = ratesOf(), link = linkOf(), hollow = false) {
  const asking = read(parseAsking({ price, weight, mark: "250" }, rates.currency));
  const piece = { mark: asking.mark, hollow, colour: undefined, kind: "chain" } as const;
  return compareAsking(asking, grams(Quotient.of(weight)), read(ownLine(link, piece, rates)), rates);
}

describe("an asking price against a piece of one's own", () => {
  test("100 g asked at 3,340: we land at 2.50 over (common practice: 2,750.00), matching it leaves 590 (hand arithmetic)", () => {
    const it = compared("3340", "100");
    expectExact(it.sheet.landed.amount, new Fraction(2750));
    expectExact(it.landedPremium.perGram, new Fraction("2.5"));
    // 2,750 x 1.3 = 3,575, on the step of 5.
    expectExact(it.sheet.price.amount, new Fraction(3575));
    expectExact(it.abovePrice.amount, new Fraction(-235));
    expectExact(it.left.amount, new Fraction(590));
    expectExact(it.marginLeft, new Fraction(590, 3340));
    expect(it.keepsLeastMargin).toBe(true);
  });

  test("20 g with 1 g lost: 605.00 and 30.25 a gram (common practice); asked 580 it would be a loss of 25", () => {
    const it = compared("580", "20", ratesOf({ loss: "1" }));
    expectExact(it.sheet.landedPerGram.perGram, new Fraction("30.25"));
    expectExact(it.left.amount, new Fraction(-25));
    expect(it.keepsLeastMargin).toBe(false);
  });

  test("links are counted by weight, in fractions too: 15 g of 2 g links are 7.5, at 2.00 a link 15 (hand arithmetic)", () => {
    const it = compared("900", "15", ratesOf({ labourFlat: "0", labourPerLink: "2" }));
    expectExact(it.sheet.line.links, new Fraction("7.5"));
    expectExact(it.sheet.costs.labour.amount, new Fraction(15));
  });

  test("the margin left is what the course notes say of 100 sold at 125: 20 %, 25 % of cost", () => {
    const [row] = published<{ rows: readonly Record<"cost" | "price" | "margin", string>[] }>(
      "markup-margin.json",
    ).rows;
    if (!row) throw new Error("the table is empty");
    const free = { castingFee: "0", labourFlat: "0", loss: "0" };
    // 4 g at 25.00 land at 100.
    const it = compared(row.price, "4", ratesOf(free), linkOf({ weight: "1" }));
    expectExact(it.sheet.landed.amount, new Fraction(row.cost));
    expectExact(it.marginLeft, new Fraction(row.margin));
  });

  test("a tax in the price is no profit: 3,720 with 20 % in it leaves 3,100 and 350 (hand arithmetic)", () => {
    const it = compared("3720", "100", ratesOf({ tax: "0.2", taxIs: "in the price" }));
    expectExact(it.netAsked.amount, new Fraction(3100));
    expectExact(it.left.amount, new Fraction(350));
    // 3,575 x 1.2 = 4,290 as the customer reads it.
    expectExact(it.sheet.price.amount, new Fraction(4290));
  });

  test("a white piece is plated as an order's is, and Rates must say what that costs", () => {
    const white = { mark: parseMark("250"), hollow: false, colour: "white", kind: "chain" } as const;
    const none = ownLine(linkOf(), white, ratesOf());
    expect(none.ok ? "" : none.faults[0]?.sentence).toContain("found no plating cost on Rates");
    const line = read(ownLine(linkOf(), white, ratesOf({ plating: "30" })));
    expect(line.plated).toBe(true);
  });

  test("what it costs and is priced at is what an order of the same links says, for any rates", () => {
    const same = (random: RandomRates, count: number) => {
      const rates = ratesOf(random.record);
      const order = orderOf(
        {
          mark: "250",
          clasp: "none",
          length: String(count),
          linksPer: "1",
          linksPerUnit: "in",
          lengthUnit: "in",
          linkWeight: "2",
        },
        rates,
      );
      const [sheet] = costOrder(order, rates);
      const it = compared("100", String(2 * count), rates);
      expect(it.sheet.landed.amount.equals(sheet?.landed.amount ?? Quotient.zero)).toBe(true);
      expect(it.sheet.price.amount.equals(sheet?.price.amount ?? Quotient.zero)).toBe(true);
    };
    fc.assert(fc.property(randomRates, fc.integer({ min: 1, max: 400 }), same), { numRuns: 60 });
  });
});

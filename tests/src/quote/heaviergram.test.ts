import fc from "fast-check";
import Fraction from "fraction.js";
import { test } from "vitest";
import { costOrder } from "../../../src/quote/costsheet";
import { heavierGram } from "../../../src/quote/heaviergram";
import { ORDER, orderOf, type Record_, ratesOf } from "../orders";
import { expectExact, figures } from "../reference";

/** At this spot a mark of 250 has the metal rate of 25.00; 100 links of 1 g. */
const AT_25 = { spot: "3110.34768", castingFee: "1.5", costBasis: "finished" };
const HUNDRED_GRAMS = { mark: "250", length: "25", linkWeight: "1", settled: "by final weight", tolerance: "0.05" };

function gram(order: Record_, rates: Record_) {
  const workshop = ratesOf({ ...AT_25, ...rates });
  const read = orderOf({ ...ORDER, ...HUNDRED_GRAMS, ...order }, workshop);
  const [sheet] = costOrder(read, workshop);
  if (!sheet) throw new Error("no line");
  return heavierGram(sheet, read, workshop);
}

test("a gram more brings the metal rate, and costs what is cast of it with fee and overhead (hand arithmetic)", () => {
  const { brings, costs } = gram(
    {},
    { loss: "0.06", lossBasis: "cast", overhead: "0.1", tax: "0.25", taxIs: "on top" },
  );
  expectExact(brings.amount, new Fraction(25));
  // 1/0.94 g cast at 26.50, and a tenth on it.
  expectExact(costs.amount, new Fraction("26.5").div("0.94").mul("1.1"));
});

test("it brings what is left of that after the discount and the tax that prices hold (hand arithmetic)", () => {
  const { brings } = gram({ discount: "0.1" }, { loss: "0", lossBasis: "cast", tax: "0.25", taxIs: "in the price" });
  // 25 x 1.25 = 31.25 is printed; 10 % off, 28.125, and without the tax 22.50.
  expectExact(brings.amount, new Fraction("22.5"));
});

test("where the price goes by premium, the premium comes with it, whatever it is", () => {
  fc.assert(
    fc.property(figures(0, 90, 2), (premium) => {
      const rates = { loss: "0", lossBasis: "cast", priceBy: "premium", premium: premium.text };
      expectExact(gram({}, rates).brings.amount, premium.fraction.add(25));
    }),
    { numRuns: 30 },
  );
});

test("labour by the gram is a cost of it; under the minimum it is none (hand arithmetic)", () => {
  const loss = { loss: "0", lossBasis: "cast", labourFlat: "0", labourPerGram: "0.5" };
  expectExact(gram({}, loss).costs.amount, new Fraction(27));
  expectExact(gram({}, { ...loss, labourMinimum: "500" }).costs.amount, new Fraction("26.5"));
});

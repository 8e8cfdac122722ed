import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { breakEven } from "../../../src/makeorbuy/breakeven";
import { compareSources, lineOfWeight, sellersFor } from "../../../src/makeorbuy/chainchoice";
import { crossingWeight } from "../../../src/makeorbuy/crossover";
import { sourcingCurve } from "../../../src/makeorbuy/curve";
import { readPriceLists } from "../../../src/makeorbuy/makers";
import { tornado } from "../../../src/makeorbuy/tornado";
import { winningRanges } from "../../../src/makeorbuy/winningranges";
import { broughtAt, marginAt, premiumFor } from "../../../src/margins/earning";
import { parseAsking } from "../../../src/market/asking";
import { compareAsking } from "../../../src/market/comparison";
import { costPiece } from "../../../src/quote/piececosts";
import { crossoverWeight } from "../../../src/trade/makeorbuy";
import { grams } from "../../../src/units/weight";
import { costed, HUNDRED_GRAMS, madeChain, priced } from "../chains";
import { type RandomOrder, randomOrder, randomRates, read } from "../orders";
import { rowsOf } from "../pricelists";
import { expectExact, figures, positives } from "../reference";

const q = (text: string) => Quotient.of(text);
/** Stamped 585, and cast of 600 parts of gold in a thousand. */
const OWN_ALLOY = { mark: "585", colour: "own", colourName: "champagne", composition: "Au 600 Ag 250 Cu 150" };

describe("an alloy of 600 stamped 585, at 100.00 a gram of fine gold: cast at 60.00, bought and sold beside others at 58.50", () => {
  const { line, spot, rates, sheet } = costed({ ...HUNDRED_GRAMS, ...OWN_ALLOY }, { spot: "3110.34768" });
  const lists = readPriceLists(rowsOf(["Orrin", 585, 0, 3.25]), rates.currency);
  const choice = { line, sellers: sellersFor(lists, line, rates).sellers, spot, rates };
  const piece = costPiece(line, spot, rates);
  const asking = read(parseAsking({ price: "60", per: "g", mark: "585", weight: "100" }, rates.currency));
  const moved = tornado([choice], rates).swings.find(({ lever }) => lever === "spot");

  // Made, quick: 60 + 1.50 + (50 + 2 x 60)/100 = 63.20. Bought: 58.50 + 3.25 = 61.75. At 60.00 it would say that making saves 5.
  test.each<readonly [string, Quotient | undefined, Fraction]>([
    ["the cost sheet, bought", sheet.sourcing.buyPerGram.perGram, new Fraction("61.75")],
    ["the cost sheet, saved by making", sheet.sourcing.saving.amount, new Fraction(-145)],
    ["a maker's offer", compareSources(choice).best?.perGram.perGram, new Fraction("61.75")],
    ["against that maker", compareSources(choice).best?.saving.amount, new Fraction(-145)],
    // At 680 g: 61.50 + 170/680 = 61.75.
    [
      "another weight of the chain",
      compareSources({ ...choice, line: lineOfWeight(line, grams(q("680")), "more links") }).best?.saving.amount,
      new Fraction(0),
    ],
    // (50 + 120) / (3.25 - 1.50 - 1.50).
    ["the crossing by more links", crossingWeight(line, spot, rates, "more links")?.grams, new Fraction(680)],
    ["the crossing by heavier links", crossingWeight(line, spot, rates, "heavier links")?.grams, new Fraction(680)],
    ["the formula of the crossing", crossoverWeight(q("170"), q("1.5"), q("3.25"), q("1.5")).grams, new Fraction(680)],
    ["who is cheapest at which weight", winningRanges(choice, "more links")[1]?.from.grams, new Fraction(680)],
    // 63.20 - 58.50.
    ["the surcharge at which both cost the same", breakEven(choice, "surcharge")?.value, new Fraction("4.7")],
    // 0.612 x + 2.00 = 0.585 x + 3.25.
    [
      "the spot at which both cost the same",
      breakEven(choice, "spot")?.value,
      new Fraction("31.1034768").mul(new Fraction("1.25").div("0.027")),
    ],
    // At 90.00: 52.65 + 3.25 - 55.08 - 2; at 110.00: 64.35 + 3.25 - 67.32 - 2.
    ["spot a tenth lower", moved?.less.amount, new Fraction(-118)],
    ["spot a tenth higher", moved?.more.amount, new Fraction(-172)],
    [
      "the plot, bought",
      sourcingCurve(line, spot, rates, [grams(q("100"))], "more links")[0]?.buy.perGram,
      new Fraction("61.75"),
    ],
    [
      "an asking price, our cost over the metal",
      compareAsking(asking, grams(q("100")), line, rates).landedPremium.perGram,
      new Fraction("4.7"),
    ],
    // 6,320 / 0.8 / 100 - 58.50.
    ["the premium for a margin of 20 %", premiumFor(piece, q("0.2"), rates).perGram, new Fraction("20.5")],
    [
      "what a market's premium brings",
      broughtAt(piece, { kind: "rate", perGram: q("20.5"), currency: rates.currency }, rates).amount,
      new Fraction(7900),
    ],
    [
      "the margin it leaves",
      marginAt(piece, { kind: "rate", perGram: q("20.5"), currency: rates.currency }, rates),
      new Fraction("0.2"),
    ],
  ])("%s (hand arithmetic)", (_, found, expected) => {
    expectExact(found ?? q("999999"), expected);
  });

  test("the answer turns with it: bought, and made where 585 is in the pot too", () => {
    expect(compareSources(choice).verdict).toBe("buy");
    // 58.50 + 2.00 + 2 x 58.50/100 = 61.67, against 61.75.
    const plain = costed({ ...HUNDRED_GRAMS, mark: "585" }, { spot: "3110.34768" });
    expect(compareSources({ ...choice, line: plain.line }).verdict).toBe("make");
    expectExact(plain.sheet.sourcing.saving.amount, new Fraction(8));
  });
});

test("whatever is in the pot: cast at its own gold, bought at that of the mark, on the cost sheet and from a maker (fraction.js)", () => {
  const inPot = fc.integer({ min: 25, max: 999 }).chain((mark) => fc.tuple(fc.constant(mark), figures(mark, 1000, 1)));
  fc.assert(
    fc.property(randomRates, randomOrder, inPot, positives(300, 2), (rates, random, [mark, gold], weight) => {
      const order: RandomOrder = { ...random, share: gold.fraction.div(1000) };
      const copper = new Fraction(1000).sub(gold.fraction);
      const composition = `Au ${gold.text}${copper.equals(0) ? "" : ` Cu ${copper.toString()}`}`;
      const given = { ...random.record, ...OWN_ALLOY, mark: String(mark), composition };
      const { line, spot, rates: workshop, sheet } = priced(rates, { ...order, record: given });
      const bought = rates.figures.spot.fraction
        .mul(mark)
        .div(1000)
        .div("31.1034768")
        .add(rates.figures.surcharge.fraction);
      const chain = order.figures.linkWeight.fraction.mul(line.links.value().toString());
      const made = madeChain(rates, order, chain);
      expectExact(sheet.sourcing.saving.amount, bought.mul(chain).sub(made));
      const { sellers } = sellersFor(undefined, line, workshop);
      const said = compareSources({
        line: lineOfWeight(line, grams(weight.quotient), "more links"),
        sellers,
        spot,
        rates: workshop,
      });
      const madeThere = madeChain(rates, order, weight.fraction);
      expectExact(said.best?.saving.amount ?? q("999999"), bought.mul(weight.fraction).sub(madeThere));
    }),
    { numRuns: 200 },
  );
});

import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { compareSources, lineOfWeight, sellersFor } from "../../../src/makeorbuy/chainchoice";
import { readPriceLists } from "../../../src/makeorbuy/makers";
import { totalOf } from "../../../src/makeorbuy/totals";
import { grams } from "../../../src/units/weight";
import { AT_25, costed, HUNDRED_GRAMS } from "../chains";
import { type Cells, rowsOf } from "../pricelists";
import { type Figure, positives, rounded } from "../reference";

const q = (text: string) => Quotient.of(text);
const text = (value: Quotient) => value.rounded(20).toString();

/** Chains of these weights, 1.50 cast and 50 labour over 25.00 a gram, nothing lost, so many of each. */
function comparisons(weights: readonly string[], rows: readonly Cells[], quantity = "1") {
  const { line, spot, rates } = costed({ ...HUNDRED_GRAMS, quantity }, { ...AT_25, loss: "0" });
  const { sellers } = sellersFor(readPriceLists(rowsOf(...rows), "USD"), line, rates);
  const all = weights.map((weight) =>
    compareSources({ line: lineOfWeight(line, grams(q(weight)), "more links"), sellers, spot, rates }),
  );
  return { all, rates };
}

const THREE: readonly Cells[] = [
  ["Fennick", 250, 5, 6, 100, "g"],
  ["Orrin", 250, 10, 4, 2000, "money"],
];

describe("many chains, each the cheaper way", () => {
  const { all, rates } = comparisons(["4", "8", "12", "16", "40"], THREE, "2");
  const total = totalOf(all, rates);

  test("two pieces reach neither 100 g nor 2,000 but at 40 g, so lighter chains are made (hand arithmetic)", () => {
    // Making adds 50 / g + 1.50: 14.00 at 4 g, 7.75 at 8, 5.67 at 12, 4.625 at 16, 2.75 at 40. Two of 40 g at 29.00 are 2,320.
    expect(all.map(({ verdict, best }) => `${verdict} ${best?.seller.maker ?? ""}`)).toEqual([
      "make ",
      "make ",
      "make ",
      "make ",
      "make Orrin",
    ]);
    expect([total.made, total.bought, total.onlyMade]).toEqual([5, 0, 4]);
    expect(all.map(({ larger }) => larger.map(({ seller }) => seller.maker))).toEqual([
      [],
      ["Fennick"],
      ["Orrin", "Fennick"],
      ["Orrin", "Fennick"],
      ["Fennick"],
    ]);
  });

  test("cost and savings are for all pieces (hand arithmetic)", () => {
    // Two of each: 2 x (80 x 26.5 + 5 x 50).
    expect(text(total.cost.amount)).toBe("4740");
    expect(text(total.underMaking.amount)).toBe("0");
    // 40 g: 160 - 110, twice.
    expect(text(total.underBuying.amount)).toBe("100");
  });

  test("what larger orders would save is said apart, with what they lack to the minimum (hand arithmetic)", () => {
    const said = total.larger.map(({ maker, chains, pieces, weight, cost, saving, short }) => [
      maker,
      chains,
      ...[pieces, weight.grams, cost.amount, saving.amount].map(text),
      short && [
        short.missing.kind === "weight" ? text(short.missing.weight.grams) : text(short.missing.money.amount),
        text(short.cash.amount),
      ],
    ]);
    expect(said).toEqual([
      // 12 g: 68 - 48; 16 g: 74 - 64; twice. 376 short of 2,000; 2 x 28 x 29.
      ["Orrin", 2, "4", "56", "1624", "60", ["376", "376"]],
      // 8 g: 62 - 48, twice. 84 g short of 100 at 31.00.
      ["Fennick", 1, "2", "16", "496", "28", ["84", "2604"]],
    ]);
    expect(total.orders).toEqual([]);
  });

  test("chains that reach a minimum together, or with what is bought anyway, lack nothing (hand arithmetic)", () => {
    const together = totalOf(comparisons(["20", "22"], [["Fennick", 250, 0, 3, 40, "g"]]).all, rates);
    // Making adds 4 and 3.77 to 3.00: 20 x 1 + 22 x 1.50 - 22 x (50/22 … ): 580 - 560 and 633 - 616.
    expect(together.larger.map(({ chains, saving, short }) => [chains, text(saving.amount), short])).toEqual([
      [2, "37", undefined],
    ]);
    const beside = totalOf(comparisons(["8", "25"], [["Fennick", 250, 0, 3, 25, "g"]]).all, rates);
    expect(beside.orders.map(({ chains, weight }) => [chains, text(weight.grams)])).toEqual([[1, "25"]]);
    expect(beside.larger.map(({ chains, short }) => [chains, short])).toEqual([[1, undefined]]);
  });

  test("many of each reach every minimum, and nothing is left for a larger order", () => {
    expect(totalOf(comparisons(["50", "60"], THREE).all, rates).larger).toEqual([]);
    const many = totalOf(comparisons(["8", "9", "12"], THREE, "40").all, rates);
    expect([many.bought, many.larger]).toEqual([3, []]);
  });

  test("the total is the sum of the cheaper costs, and with each saving that of making or buying all (fraction.js)", () => {
    fc.assert(
      fc.property(fc.array(positives(90, 1), { minLength: 1, maxLength: 8 }), (weights: readonly Figure[]) => {
        const { all, rates } = comparisons(
          weights.map((weight) => weight.text),
          [["Fennick", 250, 0, 5]],
        );
        const said = totalOf(all, rates);
        const made = weights.map(({ fraction }) => fraction.mul("26.5").add(50));
        const bought = weights.map(({ fraction }) => fraction.mul(30));
        const sum = (all: readonly Fraction[]) => all.reduce((total, each) => total.add(each), new Fraction(0));
        const least = sum(made.map((cost, at) => (bought[at]?.lte(cost) ? (bought[at] ?? cost) : cost)));
        expect(said.cost.amount.rounded(30).toFixed(30)).toBe(rounded(least, 30));
        expect(said.underMaking.amount.rounded(30).toFixed(30)).toBe(rounded(sum(made).sub(least), 30));
        expect(said.underBuying.amount.rounded(30).toFixed(30)).toBe(rounded(sum(bought).sub(least), 30));
      }),
      { numRuns: 200 },
    );
  });
});

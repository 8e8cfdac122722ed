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
    compareSources({ line: lineOfWeight(line, grams(q(weight))), sellers, spot, rates }),
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

  test("4 g nobody sells, 8 g from Fennick, 12 and 16 g from Orrin, 40 g made (hand arithmetic)", () => {
    // Making adds 50 / g + 1.50: 14.00 at 4 g, 7.75 at 8, 5.67 at 12, 4.625 at 16, 2.75 at 40.
    expect(all.map(({ verdict, best }) => `${verdict} ${best?.seller.maker ?? ""}`)).toEqual([
      "make ",
      "buy Fennick",
      "buy Orrin",
      "buy Orrin",
      "make Orrin",
    ]);
    expect([total.made, total.bought, total.onlyMade]).toEqual([2, 3, 1]);
  });

  test("cost and savings are for all pieces (hand arithmetic)", () => {
    // Two of each: 2 x (4 x 26.5 + 50 + 8 x 31 + 12 x 29 + 16 x 29 + 40 x 26.5 + 50).
    expect(text(total.cost.amount)).toBe("4652");
    // 8 g: 62 - 48; 12 g: 68 - 48; 16 g: 74 - 64; twice.
    expect(text(total.underMaking.amount)).toBe("88");
    // 40 g: 160 - 110, twice.
    expect(text(total.underBuying.amount)).toBe("100");
  });

  test("each maker's order is held against its minimum (hand arithmetic)", () => {
    const said = total.orders.map(({ maker, chains, pieces, weight, cost, short }) => [
      maker,
      chains,
      ...[pieces, weight.grams, cost.amount].map(text),
      short && [
        short.missing.kind === "weight" ? text(short.missing.weight.grams) : text(short.missing.money.amount),
        text(short.cash.amount),
      ],
    ]);
    expect(said).toEqual([
      // 376 short of 2,000; 2 x 28 x 29.
      ["Orrin", 2, "4", "56", "1624", ["376", "376"]],
      // 84 g short of 100 at 31.00.
      ["Fennick", 1, "2", "16", "496", ["84", "2604"]],
    ]);
  });

  test("a minimum that is reached is not told; nothing bought is no order", () => {
    expect(totalOf(comparisons(["50", "60"], THREE).all, rates).orders).toEqual([]);
    const many = totalOf(comparisons(["8", "9", "12"], THREE, "40").all, rates);
    expect(many.orders.map(({ short }) => short)).toEqual([undefined, undefined]);
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

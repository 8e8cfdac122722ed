import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { meltValue, perGram } from "../../../src/gold/goldrate";
import { parseMark } from "../../../src/gold/mark";
import {
  askingCheck,
  margin,
  markup,
  premium,
  priceAtMargin,
  priceAtMarkup,
  priceAtPremium,
  spotLimit,
} from "../../../src/trade/price";
import type { Currency } from "../../../src/units/currency";
import { addMoney, money } from "../../../src/units/money";
import { grams } from "../../../src/units/weight";
import { published, publishedText } from "../published";
import { expectExact, expectFault, figure, figures, marks, positives } from "../reference";

const q = (text: string) => Quotient.of(text);
const usd = (text: string) => money(q(text), "USD");
const rate = (text: string) => perGram(q(text), "USD");

describe("markup and margin", () => {
  const { source, rows } = published<{
    source: string;
    rows: readonly { cost: string; price: string; markup: string; margin?: string }[];
  }>("markup-margin.json");

  test.each(rows)(`cost $cost and price $price are a markup of $markup (${source})`, (row) => {
    const places = (row.markup.split(".")[1] ?? "").length;
    expect(markup(q(row.cost), q(row.price)).rounded(places).toFixed(places)).toBe(row.markup);
    if (row.margin === undefined) return;
    expect(margin(q(row.cost), q(row.price)).value().eq(row.margin)).toBe(true);
    expect(priceAtMarkup(usd(row.cost), q(row.markup)).amount.value().toString()).toBe(row.price);
    expect(priceAtMargin(usd(row.cost), q(row.margin)).amount.value().toString()).toBe(row.price);
  });

  test("a price made at a markup shows that markup, and at a margin that margin (fraction.js)", () => {
    fc.assert(
      fc.property(positives(100_000, 4), figures(0, 5, 4), figures(0, 0.9999, 4), (cost, over, share) => {
        const atMarkup = priceAtMarkup(money(cost.quotient, "USD"), over.quotient);
        expectExact(atMarkup.amount, cost.fraction.mul(over.fraction.add(1)));
        expectExact(markup(cost.quotient, atMarkup.amount), over.fraction);
        const atMargin = priceAtMargin(money(cost.quotient, "USD"), share.quotient);
        expectExact(atMargin.amount, cost.fraction.div(figure("1").fraction.sub(share.fraction)));
        expectExact(margin(cost.quotient, atMargin.amount), share.fraction);
      }),
      { numRuns: 1000 },
    );
  });

  test("markup and margin of one price are each other's: margin = markup / (1 + markup), and below cost both are negative", () => {
    fc.assert(
      fc.property(positives(10_000, 2), positives(10_000, 2), (cost, price) => {
        const over = markup(cost.quotient, price.quotient);
        const share = margin(cost.quotient, price.quotient);
        expect(over.equals(share.times(Quotient.one.plus(over)))).toBe(true);
        expect(over.isNegative()).toBe(price.fraction.lt(cost.fraction));
        expect(share.isNegative()).toBe(price.fraction.lt(cost.fraction));
      }),
    );
  });
});

describe("premium", () => {
  test("ready chain sells for at least 7 above the metal rate: 100 g at 25 + 7 is 3,200 (common practice)", () => {
    expect(
      priceAtPremium(grams(q("100")), rate("25"), rate("7"))
        .amount.value()
        .toString(),
    ).toBe("3200");
  });

  test("a price made at a premium shows that premium (fraction.js)", () => {
    fc.assert(
      fc.property(positives(500, 3), figures(0, 200, 4), figures(0, 50, 4), (weight, metal, over) => {
        const price = priceAtPremium(
          grams(weight.quotient),
          perGram(metal.quotient, "USD"),
          perGram(over.quotient, "USD"),
        );
        expectExact(price.amount, weight.fraction.mul(metal.fraction.add(over.fraction)));
        const each = perGram(price.amount.dividedBy(weight.quotient), "USD");
        expectExact(premium(each, perGram(metal.quotient, "USD")).perGram, over.fraction);
      }),
    );
  });

  test("a premium in another currency is refused, even where the compiler could not see it", () => {
    const dollars = perGram<Currency>(q("25"), "USD");
    const euros = perGram<Currency>(q("7"), "EUR");
    expectFault(() => priceAtPremium(grams(q("100")), dollars, euros), "currencyMismatch");
    expectFault(() => premium(dollars, euros), "currencyMismatch");
  });
});

describe("someone else's asking price", () => {
  test("1,000 for 10 g of 750 at a spot of 3110.34768, landed 80 a gram (hand arithmetic)", () => {
    // Metal rate 3110.34768 x 0.75 / 31.1034768 = 75. Asked 1000 / 10 = 100; premium 25; above melt 25 / 75; less landed 20.
    const check = askingCheck(usd("1000"), grams(q("10")), parseMark("750"), usd("3110.34768"), rate("80"));
    expect(check.asked.perGram.value().toString()).toBe("100");
    expect(check.melt.perGram.value().toString()).toBe("75");
    expect(check.premium.perGram.value().toString()).toBe("25");
    expectExact(check.aboveMelt, figure("1").fraction.div(3));
    expect(check.aboveLanded?.perGram.value().toString()).toBe("20");
    expect(Object.isFrozen(check)).toBe(true);
  });

  test("asked below melt shows a negative premium, and without a landed cost nothing is compared", () => {
    const check = askingCheck(usd("700"), grams(q("10")), parseMark("750"), usd("3110.34768"));
    expect(check.premium.perGram.value().toString()).toBe("-5");
    expect(check.aboveMelt.isNegative()).toBe(true);
    expect(check.aboveLanded).toBeUndefined();
  });

  test("melt per gram x weight is the melt value, and asked = melt + premium", () => {
    fc.assert(
      fc.property(positives(10_000, 2), positives(500, 3), positives(5000, 2), marks, (price, weight, spot, mark) => {
        const check = askingCheck(
          money(price.quotient, "USD"),
          grams(weight.quotient),
          parseMark(mark.text),
          money(spot.quotient, "USD"),
        );
        const melt = meltValue(grams(weight.quotient), parseMark(mark.text), money(spot.quotient, "USD"));
        expect(check.melt.perGram.times(weight.quotient).equals(melt.amount)).toBe(true);
        expect(check.melt.perGram.plus(check.premium.perGram).equals(check.asked.perGram)).toBe(true);
        expectExact(check.asked.perGram, price.fraction.div(weight.fraction));
        const rateOfMetal = spot.fraction.mul(mark.share).div("31.1034768");
        expectExact(check.aboveMelt, price.fraction.div(weight.fraction).sub(rateOfMetal).div(rateOfMetal));
      }),
    );
  });

  test("amounts of two currencies are never set against each other", () => {
    const price = money<Currency>(q("700"), "USD");
    const euros = money<Currency>(q("2000"), "EUR");
    expectFault(() => askingCheck(price, grams(q("10")), parseMark("750"), euros), "currencyMismatch");
    const dollars = money<Currency>(q("2000"), "USD");
    const landed = perGram<Currency>(q("80"), "EUR");
    expectFault(() => askingCheck(price, grams(q("10")), parseMark("750"), dollars, landed), "currencyMismatch");
  });
});

describe("the spot a price stands up to", () => {
  test("3,000 with 40 g of 750 cast, 400 of other costs, least margin 0.20: 2000 / 30 g x 31.1034768 (hand arithmetic)", () => {
    // 3000 x 0.80 - 400 = 2000 for 40 x 0.75 = 30 g of fine gold: 66.666… a gram, 2073.56512 a troy ounce.
    const limit = spotLimit(usd("3000"), grams(q("40")), parseMark("750"), usd("400"), q("0.2"));
    expect(limit.amount.value().toString()).toBe("2073.56512");
  });

  test("at the limit the margin is the least margin exactly; a cent above it is less, a cent below more", () => {
    fc.assert(
      fc.property(
        positives(10_000, 2),
        positives(200, 3),
        marks,
        figures(0, 500, 2),
        figures(0, 0.5, 3),
        (price, cast, mark, other, least) => {
          fc.pre(price.fraction.mul(figure("1").fraction.sub(least.fraction)).gt(other.fraction.add(1)));
          const others = money(other.quotient, "USD");
          const limit = spotLimit(
            money(price.quotient, "USD"),
            grams(cast.quotient),
            parseMark(mark.text),
            others,
            least.quotient,
          );
          const marginAt = (spot: Quotient) => {
            const cost = addMoney(meltValue(grams(cast.quotient), parseMark(mark.text), money(spot, "USD")), others);
            return margin(cost.amount, price.quotient);
          };
          expectExact(marginAt(limit.amount), least.fraction);
          expect(marginAt(limit.amount.plus(q("0.01"))).isLessThan(least.quotient)).toBe(true);
          expect(marginAt(limit.amount.minus(q("0.01"))).isGreaterThan(least.quotient)).toBe(true);
        },
      ),
      { numRuns: 1000 },
    );
  });

  test("of the monthly gold prices since 1833 a price keeps its margin in exactly those at or below its limit (datasets/gold-prices)", () => {
    const spots = publishedText("gold-monthly.csv")
      .trim()
      .split("\n")
      .slice(1)
      .map((line) => line.split(",")[1] ?? "");
    const cast = grams(q("40"));
    const limit = spotLimit(usd("3000"), cast, parseMark("14K"), usd("400"), q("0.2")).amount;
    const kept = spots.filter((spot) => {
      const cost = addMoney(meltValue(cast, parseMark("14K"), usd(spot)), usd("400"));
      return !margin(cost.amount, q("3000")).isLessThan(q("0.2"));
    });
    expect(kept).toEqual(spots.filter((spot) => !q(spot).isGreaterThan(limit)));
    expect(kept.length).toBeGreaterThan(0);
    expect(kept.length).toBeLessThan(spots.length);
  });

  test("costs that alone eat the price are refused: no spot is low enough", () => {
    expectFault(
      () => spotLimit(usd("100"), grams(q("10")), parseMark("750"), usd("100.01"), Quotient.zero),
      "neverReached",
      "otherCosts",
      "no spot is low enough",
    );
    expect(spotLimit(usd("100"), grams(q("10")), parseMark("750"), usd("100"), Quotient.zero).amount.isZero()).toBe(
      true,
    );
  });

  test("other costs in another currency are refused", () => {
    const price = money<Currency>(q("700"), "USD");
    const euros = money<Currency>(q("2"), "EUR");
    expectFault(() => spotLimit(price, grams(q("10")), parseMark("750"), euros, Quotient.zero), "currencyMismatch");
  });
});

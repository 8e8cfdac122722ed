import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { floorSpot, marginCurve, priceCurve, sourcingCurve } from "../../../src/makeorbuy/curve";
import { money } from "../../../src/units/money";
import { grams } from "../../../src/units/weight";
import { AT_25, costed, HUNDRED_GRAMS, madeChain, priced } from "../chains";
import { type RandomOrder, type RandomRates, type Record_, randomOrder, randomRates } from "../orders";
import { expectExact, positives, rounded } from "../reference";

const q = (text: string) => Quotient.of(text);
const text = (value: Quotient) => value.value().toString();

describe("cost per gram made and bought", () => {
  test("1 g lost, quick basis: 20 g is 30.25 made, bought at 28.25; 100 g is made (common practice)", () => {
    const { line, spot, rates } = costed(HUNDRED_GRAMS, { ...AT_25, loss: "1" });
    const points = sourcingCurve(line, spot, rates, [grams(q("20")), grams(q("100"))], "more links");
    // 20 x 26.50 + 50 + 25 = 605; 100 x 26.50 + 50 + 25 = 2725.
    expect(points.map(({ make }) => text(make.perGram))).toEqual(["30.25", "27.25"]);
    expect(points.map(({ buy }) => text(buy.perGram))).toEqual(["28.25", "28.25"]);
  });

  test("at this order's weight both are what its cost sheet says", () => {
    fc.assert(
      fc.property(randomRates, randomOrder, (rates, order) => {
        const { sheet, line, spot, rates: workshop } = priced(rates, order);
        const point = sourcingCurve(line, spot, workshop, [sheet.chainWeight], "more links")[0];
        expect(point?.make.perGram.equals(sheet.sourcing.makePerGram.perGram)).toBe(true);
        expect(point?.buy.perGram.equals(sheet.sourcing.buyPerGram.perGram)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  test("at any weight both are the rational ones, on every basis, with every minimum (fraction.js)", () => {
    fc.assert(
      fc.property(randomRates, randomOrder, positives(500, 3), (rates, order, weight) => {
        const { line, spot, rates: workshop } = priced(rates, order);
        const point = sourcingCurve(line, spot, workshop, [grams(weight.quotient)], "more links")[0];
        const metalRate = rates.figures.spot.fraction.mul(order.share).div("31.1034768");
        expectExact(
          point?.make.perGram ?? Quotient.zero,
          madeChain(rates, order, weight.fraction).div(weight.fraction),
        );
        expectExact(point?.buy.perGram ?? Quotient.zero, metalRate.add(rates.figures.surcharge.fraction));
      }),
      { numRuns: 500 },
    );
  });
});

describe("margin against spot", () => {
  const at = (spot: string, changes: Record_ = {}) => costed(HUNDRED_GRAMS, { ...AT_25, ...changes, spot });

  test("a price of 3575 leaves 825 of it at 25 a gram, 1575 / 6 less at 30 (hand arithmetic)", () => {
    const { line, rates, usd } = at(AT_25.spot);
    // 102 g paid for: 102 x 25 + 150 + 50 = 2750; 102 x 30 + 200 = 3260.
    const points = marginCurve(line, usd("3575"), rates, [usd(AT_25.spot), usd("3732.417216")]);
    expectExact(points[0]?.margin ?? Quotient.zero, new Fraction(825, 3575));
    expectExact(points[1]?.margin ?? Quotient.zero, new Fraction(315, 3575));
  });

  test("the floor of 10 % is reached where 102 g cost 3217.5 - 200 (hand arithmetic)", () => {
    const { sheet, rates, usd } = at(AT_25.spot);
    const limit = new Fraction("3017.5").mul("31.1034768").div(102).mul(4);
    expectExact(floorSpot(sheet, usd("3575"), rates)?.amount ?? Quotient.zero, limit);
  });

  test("overhead is a share of the gold too, and moves its floor (hand arithmetic)", () => {
    // (102 g of gold + 200) x 1.1 = 3217.5: the gold may cost 2725.
    const { sheet, rates, usd } = costed(HUNDRED_GRAMS, { ...AT_25, overhead: "0.1" });
    const limit = new Fraction("2725").mul("31.1034768").div(102).mul(4);
    expectExact(floorSpot(sheet, usd("3575"), rates)?.amount ?? Quotient.zero, limit);
  });

  test("costs besides the gold that leave no room for it: the floor is above any spot", () => {
    const { sheet, rates, usd } = at(AT_25.spot);
    expect(floorSpot(sheet, usd("200"), rates)).toBeUndefined();
  });

  test("at this order's spot it is the margin of the cost sheet, and it falls as spot rises", () => {
    fc.assert(
      fc.property(randomRates, randomOrder, positives(500, 2), (rates, order, rise) => {
        const { sheet, line, spot, rates: workshop } = priced(rates, order);
        const dearer = money(spot.amount.plus(rise.quotient), spot.currency);
        const [now, then] = marginCurve(line, sheet.price, workshop, [spot, dearer]);
        expect(sheet.margin && now?.margin.equals(sheet.margin)).toBe(true);
        expect(sheet.margin && then?.margin.isLessThan(sheet.margin)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  test("at the spot of the floor the margin is the least margin, on every basis of loss and cost", () => {
    fc.assert(
      fc.property(randomRates, randomOrder, (rates, order) => {
        const { sheet, line, rates: workshop } = priced(rates, order);
        const limit = floorSpot(sheet, sheet.price, workshop);
        if (!limit) {
          const free = [money(Quotient.zero, workshop.currency)];
          const most = marginCurve(line, sheet.price, workshop, free)[0]?.margin;
          expect(most?.isLessThan(workshop.leastMargin)).toBe(true);
          return;
        }
        const margin = marginCurve(line, sheet.price, workshop, [limit])[0]?.margin ?? Quotient.zero;
        expect(margin.rounded(30).toFixed(30)).toBe(rounded(rates.figures.leastMargin.fraction, 30));
      }),
      { numRuns: 300 },
    );
  });
});

/** Without all that has no weight of a link. */
const BARE = { clasp: "none", claspLength: "", claspWeight: "", claspCost: "", stoneCount: "", stonePrice: "" };

describe("cost and price of links alone against weight", () => {
  test("2 g lost, quick basis: 100 g land at 27.50 and 20 g at 31.50, and are priced at 3,575 and 820 (hand arithmetic)", () => {
    const { line, spot, rates } = costed({ ...HUNDRED_GRAMS, ...BARE }, AT_25);
    const points = priceCurve(line, { spot, pricing: rates.pricing }, rates, [grams(q("100")), grams(q("20"))]);
    // 100 x 26.50 + 50 + 50 = 2750; 20 x 26.50 + 50 + 50 = 630; x 1.3, up to the step of 5.
    expect(points.map(({ sheet }) => text(sheet.landedPerGram.perGram))).toEqual(["27.5", "31.5"]);
    expect(points.map(({ sheet }) => text(sheet.price.amount))).toEqual(["3575", "820"]);
    expect(points.map(({ sheet }) => text(sheet.line.links))).toEqual(["100", "20"]);
  });

  test("a price that stands on its step stays there, whatever a link weighs: 100 g of links of 1.23457 g are 3,575", () => {
    const { line, spot, rates } = costed({ ...HUNDRED_GRAMS, ...BARE, linkWeight: "1.23457" }, AT_25);
    const [point] = priceCurve(line, { spot, pricing: rates.pricing }, rates, [grams(q("100"))]);
    expect(point && text(point.sheet.price.amount)).toBe("3575");
    expectExact(point?.sheet.line.links ?? Quotient.zero, new Fraction(100).div("1.23457"));
  });

  test("at the line's own weight both are what its cost sheet says", () => {
    fc.assert(
      fc.property(randomOrder, randomRates, (order: RandomOrder, random: RandomRates) => {
        const { line, spot, rates, sheet } = costed({ ...order.record, ...BARE }, random.record);
        const [point] = priceCurve(line, { spot, pricing: sheet.pricing }, rates, [sheet.chainWeight]);
        if (!point) throw new Error("no point came back");
        expectExact(point.sheet.landed.amount.minus(sheet.landed.amount), new Fraction(0));
        expect(text(point.sheet.price.amount)).toBe(text(sheet.price.amount));
      }),
      { numRuns: 50 },
    );
  });
});

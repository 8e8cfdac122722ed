import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { costOrder } from "../../src/costsheet";
import { crossingWeight, floorSpot, marginCurve, priceCurve, sourcingCurve } from "../../src/curve";
import { money } from "../../src/money";
import { Quotient } from "../../src/quotient";
import { crossoverWeight } from "../../src/sourcing";
import { grams } from "../../src/weight";
import { orderOf, type RandomOrder, type RandomRates, type Record_, randomOrder, randomRates, ratesOf } from "./orders";
import { expectExact, positives, rounded } from "./reference";

const q = (text: string) => Quotient.of(text);
const text = (value: Quotient) => value.value().toString();

function costed(order: Record_, rates: Record_) {
  const workshop = ratesOf(rates);
  const read = orderOf(order, workshop);
  const sheet = costOrder(read, workshop)[0];
  if (!sheet) throw new Error("no line was costed");
  const usd = (amount: string) => money(q(amount), workshop.currency);
  return { sheet, line: sheet.line, spot: read.spot, rates: workshop, usd };
}

/** At this spot a mark of 250 has the metal rate of 25.00 of the common figures. */
const AT_25 = { spot: "3110.34768" };
/** 25 in at 4 links an inch: 100 links of 1 g. */
const HUNDRED_GRAMS = { mark: "250", length: "25", linkWeight: "1" };

describe("cost per gram made and bought", () => {
  test("1 g lost, quick basis: 20 g is 30.25 made, bought at 28.25; 100 g is made (common practice)", () => {
    const { line, spot, rates } = costed(HUNDRED_GRAMS, { ...AT_25, loss: "1" });
    const points = sourcingCurve(line, spot, rates, [grams(q("20")), grams(q("100"))]);
    // 20 x 26.50 + 50 + 25 = 605; 100 x 26.50 + 50 + 25 = 2725.
    expect(points.map(({ make }) => text(make.perGram))).toEqual(["30.25", "27.25"]);
    expect(points.map(({ buy }) => text(buy.perGram))).toEqual(["28.25", "28.25"]);
  });

  test("2 g lost: they cross at 100 / 1.75 g, between the 20 g bought and the 100 g made (hand arithmetic)", () => {
    // 50 labour and 2 x 25 lost make no difference by weight; 3.25 - 1.50 is gained a gram.
    const { line, spot, rates } = costed(HUNDRED_GRAMS, AT_25);
    const crossing = crossingWeight(line, spot, rates)?.grams ?? Quotient.zero;
    expectExact(crossing, new Fraction(400, 7));
    expect(crossing.isGreaterThan(q("20")) && crossing.isLessThan(q("100"))).toBe(true);
  });

  test("a labour minimum moves the crossing: 200 for 1.75 gained a gram (hand arithmetic)", () => {
    const { line, spot, rates } = costed(HUNDRED_GRAMS, { ...AT_25, labourMinimum: "150" });
    expectExact(crossingWeight(line, spot, rates)?.grams ?? Quotient.zero, new Fraction(800, 7));
  });

  test("so does a casting minimum: 300 + 100 for 3.25 gained a gram (hand arithmetic)", () => {
    // At 400 / 3.25 = 123.1 g casting by weight is 184.6, below the minimum of 300.
    const { line, spot, rates } = costed(HUNDRED_GRAMS, { ...AT_25, castingMinimum: "300" });
    expectExact(crossingWeight(line, spot, rates)?.grams ?? Quotient.zero, new Fraction(1600, 13));
  });

  test("on the finished basis with 2 % of the cast weight lost it is the library's own crossover weight", () => {
    // Added a gram: 26.50 / 0.98 - 25.
    const { line, spot, rates } = costed(HUNDRED_GRAMS, {
      ...AT_25,
      costBasis: "finished",
      loss: "0.02",
      lossBasis: "cast",
    });
    const added = q("26.5").dividedBy(q("0.98")).minus(q("25"));
    const crossing = crossingWeight(line, spot, rates)?.grams ?? Quotient.zero;
    expectExact(crossing, new Fraction(50).div(new Fraction("3.25").add(25).sub(new Fraction("26.5").div("0.98"))));
    expectExact(crossoverWeight(q("50"), added, q("3.25")).grams.minus(crossing), new Fraction(0));
  });

  test("without flat costs making wins at any weight above zero; without a surcharge at none", () => {
    const free = costed(HUNDRED_GRAMS, { ...AT_25, loss: "0", labourFlat: "0" });
    expect(crossingWeight(free.line, free.spot, free.rates)?.grams.isZero()).toBe(true);
    const dear = costed(HUNDRED_GRAMS, { ...AT_25, surcharge: "1.5" });
    expect(crossingWeight(dear.line, dear.spot, dear.rates)).toBeUndefined();
  });

  test("at this order's weight both are what its cost sheet says", () => {
    fc.assert(
      fc.property(randomRates, randomOrder, (rates, order) => {
        const { sheet, line, spot, rates: workshop } = priced(rates, order);
        const point = sourcingCurve(line, spot, workshop, [sheet.chainWeight])[0];
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
        const point = sourcingCurve(line, spot, workshop, [grams(weight.quotient)])[0];
        const metalRate = rates.figures.spot.fraction.mul(order.share).div("31.1034768");
        expectExact(point?.make.perGram ?? Quotient.zero, made(rates, order, weight.fraction).div(weight.fraction));
        expectExact(point?.buy.perGram ?? Quotient.zero, metalRate.add(rates.figures.surcharge.fraction));
      }),
      { numRuns: 500 },
    );
  });

  test("with the loss a share and no minimum the crossing is flat cost / (surcharge - added a gram)", () => {
    fc.assert(
      fc.property(randomRates, randomOrder, (rates, order) => {
        fc.pre(rates.lossBasis !== "grams");
        const none = { labourMinimum: "0", castingMinimum: "0" };
        const { line, spot, rates: workshop } = priced({ ...rates, record: { ...rates.record, ...none } }, order);
        const rate = (key: keyof RandomRates["figures"]) => rates.figures[key].fraction;
        const share = rates.loss.fraction;
        const quick = workshop.costBasis === "quick";
        const cast = rates.lossBasis === "cast" ? new Fraction(1).div(new Fraction(1).sub(share)) : share.add(1);
        const metalRate = rate("spot").mul(order.share).div("31.1034768");
        const added = (quick ? share : cast.sub(1))
          .mul(metalRate)
          .add(rate("castingFee").mul(quick ? 1 : cast))
          .add(rate("labourPerLink").div(order.figures.linkWeight.fraction))
          .add(rate("labourPerGram"));
        const crossing = crossingWeight(line, spot, workshop);
        if (rate("surcharge").lte(added)) {
          expect(crossing).toBeUndefined();
          return;
        }
        const expected = rate("labourFlat").div(rate("surcharge").sub(added));
        expect(crossing?.grams.rounded(25).toFixed(25)).toBe(rounded(expected, 25));
      }),
      { numRuns: 500 },
    );
  });

  test("below the crossing buying is cheaper, at it they are level, above it making is; with every minimum", () => {
    fc.assert(
      fc.property(randomRates, randomOrder, (rates, order) => {
        const { line, spot, rates: workshop } = priced(rates, order);
        const gain = (weight: Quotient) => {
          const point = sourcingCurve(line, spot, workshop, [grams(weight)])[0];
          return point?.buy.perGram.minus(point.make.perGram) ?? Quotient.zero;
        };
        const crossing = crossingWeight(line, spot, workshop)?.grams;
        if (!crossing) {
          expect(gain(q("1e12")).isPositive()).toBe(false);
          return;
        }
        if (!crossing.isZero()) {
          expectExact(gain(crossing), new Fraction(0));
          expect(gain(crossing.times(q("0.999"))).isNegative()).toBe(true);
        }
        expect(gain(crossing.times(q("1.001")).plus(q("0.001"))).isPositive()).toBe(true);
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

function priced(rates: RandomRates, order: RandomOrder) {
  const { length, claspLength, linksPer } = order.figures;
  const all = { length: "1000", claspLength: "0", lengthUnit: "mm" };
  fc.pre(length.fraction.gt(claspLength.fraction) && linksPer.fraction.gt(0));
  return costed({ ...order.record, ...all }, rates.record);
}

/** What a plain chain of a weight costs made, in exact rationals, by the notes of the Rates sheet. */
function made(rates: RandomRates, order: RandomOrder, chain: Fraction): Fraction {
  const rate = (key: keyof RandomRates["figures"]) => rates.figures[key].fraction;
  const larger = (a: Fraction, b: Fraction) => (a.lt(b) ? b : a);
  const lost = rates.loss.fraction;
  const cast =
    rates.lossBasis === "grams"
      ? chain.add(lost)
      : rates.lossBasis === "finished"
        ? chain.mul(lost.add(1))
        : chain.div(new Fraction(1).sub(lost));
  const quick = rates.words.costBasis === "quick";
  const paid = quick ? chain.add(rates.lossBasis === "grams" ? lost : chain.mul(lost)) : cast;
  const pieces = order.figures.quantity.fraction;
  const casting = larger((quick ? chain : cast).mul(rate("castingFee")).mul(pieces), rate("castingMinimum")).div(
    pieces,
  );
  const links = chain.div(order.figures.linkWeight.fraction);
  const worked = rate("labourFlat").add(rate("labourPerLink").mul(links)).add(rate("labourPerGram").mul(chain));
  const metal = paid.mul(rate("spot")).mul(order.share).div("31.1034768");
  return metal.add(casting).add(larger(worked, rate("labourMinimum")));
}

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

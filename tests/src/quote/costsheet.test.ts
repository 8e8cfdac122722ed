import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { fineGold, metalRateOf, perGram } from "../../../src/gold/goldrate";
import { parseMark } from "../../../src/gold/mark";
import { type CostSheet, costOrder, forAll } from "../../../src/quote/costsheet";
import { COST_LINES, type CostLine } from "../../../src/quote/piececosts";
import { landedCost } from "../../../src/trade/landedcost";
import { money } from "../../../src/units/money";
import { grams } from "../../../src/units/weight";
import { orderOf, type Record_, randomOrder, randomRates, ratesOf, reckon } from "../orders";
import { expectExact } from "../reference";

const LINES = Object.keys(COST_LINES) as readonly CostLine[];

function sheetOf(order: Record_, rates: Record_): CostSheet {
  const workshop = ratesOf(rates);
  const sheet = costOrder(orderOf(order, workshop), workshop)[0];
  if (!sheet) throw new Error("no line was costed");
  return sheet;
}

const text = (value: Quotient) => value.value().toString();

/** At this spot fine gold is exactly 100 a gram, and a mark of 250 has the metal rate of 25.00 of the common figures. */
const AT_25 = { spot: "3110.34768" };
/** 25 in at 4 links an inch: 100 links of 1 g. */
const HUNDRED_GRAMS = { mark: "250", length: "25", linkWeight: "1" };

describe("a piece of 100 g at a metal rate of 25.00, casting fee 1.50, labour 50, 2 g lost", () => {
  test("quick basis: 2,750 landed, 27.50 a gram, made rather than bought at 3.25 (common practice)", () => {
    const sheet = sheetOf(HUNDRED_GRAMS, AT_25);
    expect(text(sheet.finishedWeight.grams)).toBe("100");
    expect(text(sheet.metalRate.perGram)).toBe("25");
    expect(text(sheet.landed.amount)).toBe("2750");
    expect(text(sheet.landedPerGram.perGram)).toBe("27.5");
    expect(sheet.sourcing.verdict).toBe("make");
    expect(text(sheet.sourcing.buyPerGram.perGram)).toBe("28.25");
  });

  test("finished basis: 2,753 landed, 27.53 a gram (common practice)", () => {
    const sheet = sheetOf(HUNDRED_GRAMS, { ...AT_25, costBasis: "finished" });
    expect(text(sheet.castWeight.grams)).toBe("102");
    expect(text(sheet.landed.amount)).toBe("2753");
    expect(text(sheet.landedPerGram.perGram)).toBe("27.53");
  });

  test("every cost line can be read: 2500 metal, 50 lost, 150 casting, 50 labour (hand arithmetic)", () => {
    const { costs } = sheetOf(HUNDRED_GRAMS, AT_25);
    const amounts = Object.fromEntries(LINES.map((line) => [line, text(costs[line].amount)]));
    const none = Object.fromEntries(LINES.map((line) => [line, "0"]));
    expect(amounts).toEqual({ ...none, metal: "2500", lost: "50", casting: "150", labour: "50" });
  });

  test("at a markup of 30 % in steps of 5 the price is 3,575; the margin is 825 of it, the floor 2750 / 0.9 (hand arithmetic)", () => {
    const sheet = sheetOf(HUNDRED_GRAMS, AT_25);
    expect(text(sheet.price.amount)).toBe("3575");
    expectExact(sheet.margin ?? Quotient.zero, new Fraction(825, 3575));
    expectExact(sheet.floor.amount, new Fraction(27500, 9));
    expect(text(sheet.premium.perGram)).toBe("10.75");
  });
});

test("20 g with 1 g lost, quick basis: 605 landed, 30.25 a gram, bought rather than made at 3.25 (common practice)", () => {
  const sheet = sheetOf({ mark: "250", length: "5", linkWeight: "1" }, { ...AT_25, loss: "1" });
  expect(text(sheet.landed.amount)).toBe("605");
  expect(text(sheet.landedPerGram.perGram)).toBe("30.25");
  expect(sheet.sourcing.verdict).toBe("buy");
});

test("24 in at 4 links an inch and 2 g a link: 96 links, 192 g (common practice)", () => {
  const sheet = sheetOf({}, {});
  expect(text(sheet.line.links)).toBe("96");
  expect(text(sheet.chainWeight.grams)).toBe("192");
});

test("ten stones at 9 with a setting fee of 1: 90 for stones and 10 for setting (common practice)", () => {
  const { costs } = sheetOf({ stoneCount: "10", stonePrice: "9" }, {});
  expect([text(costs.stones.amount), text(costs.setting.amount)]).toEqual(["90", "10"]);
});

test("the cash that goes out holds whole stones for all pieces, the cost of a piece its share of those that break (hand arithmetic)", () => {
  const broken = { stoneCount: "10", stonePrice: "9", breakage: "0.03", quantity: "3" };
  const { costs, cashOut } = sheetOf(broken, {});
  const plain = sheetOf({ quantity: "3" }, {}).cashOut;
  // 10 x 9 x 1.03 a piece; for three 30 x 1.03 = 30.9, so 31 stones at 9, and 30 of them set at 1.
  expect(text(costs.stones.amount)).toBe("92.7");
  expect(text(cashOut.amount.minus(plain.amount))).toBe("309");
});

test("a setting fee in the order goes before the workshop's, though it be 0", () => {
  expect(text(sheetOf({ stoneCount: "10", settingFee: "2.5" }, {}).costs.setting.amount)).toBe("25");
  expect(text(sheetOf({ stoneCount: "10", settingFee: "0" }, {}).costs.setting.amount)).toBe("0");
});

test("a spot in the order goes before the workshop's", () => {
  expect(text(sheetOf({ mark: "1000", spot: "311.034768" }, AT_25).metalRate.perGram)).toBe("10");
});

describe("plating", () => {
  const PLATING = { plating: "35" };
  test.each([
    ["white", "", "35"],
    ["yellow", "", "0"],
    ["yellow", "plated", "35"],
    ["white", "not plated", "0"],
    ["rose", "as usual", "0"],
  ])("%s gold, said %j: %s", (colour, plated, expected) => {
    expect(text(sheetOf({ colour, plated }, PLATING).costs.plating.amount)).toBe(expected);
  });
});

test("the caster's minimum is shared by the pieces of the order: 300 over 4 pieces is 75 each (hand arithmetic)", () => {
  // 4 x 20 g x 1.50 = 120, below the minimum of 300; 4 x 100 g x 1.50 = 600 is above it, 150 each.
  const minimum = { ...AT_25, castingMinimum: "300" };
  expect(
    text(sheetOf({ mark: "250", length: "5", linkWeight: "1", quantity: "4" }, minimum).costs.casting.amount),
  ).toBe("75");
  expect(text(sheetOf({ ...HUNDRED_GRAMS, quantity: "4" }, minimum).costs.casting.amount)).toBe("150");
});

test("every weight, cost line, landed cost and price is the rational one, on every basis (fraction.js)", () => {
  fc.assert(
    fc.property(randomRates, randomOrder, (rates, order) => {
      const expected = reckon(rates, order);
      fc.pre(
        expected.links.gt(0) && expected.links.lte(5000) && expected.length.gt(expected.clasp) && expected.price.gt(0),
      );
      const sheet = sheetOf(order.record, rates.record);
      expectExact(sheet.line.links, expected.links);
      expectExact(sheet.chainWeight.grams, expected.chain);
      expectExact(sheet.finishedWeight.grams, expected.finished);
      expectExact(sheet.castWeight.grams, expected.cast);
      expectExact(sheet.fineGold.grams, expected.finished.mul(order.share));
      expectExact(sheet.fineGoldCast.grams, expected.cast.mul(order.share));
      expectExact(sheet.metalRate.perGram, expected.metalRate);
      for (const line of LINES) expectExact(sheet.costs[line].amount, expected.costs[line]);
      expectExact(sheet.landed.amount, expected.landed);
      expectExact(sheet.landedPerGram.perGram, expected.landed.div(expected.finished));
      expectExact(sheet.price.amount, expected.price);
      expectExact(sheet.margin ?? Quotient.zero, expected.price.sub(expected.landed).div(expected.price));
      if (sheet.markup) expectExact(sheet.markup, expected.price.sub(expected.landed).div(expected.landed));
      expectExact(sheet.premium.perGram, expected.price.div(expected.finished).sub(expected.metalRate));
      expectExact(sheet.floor.amount, expected.floor);
      expectExact(sheet.cashOut.amount, expected.cashOut.mul(order.figures.quantity.fraction));
      const reached = expected.links.mul(expected.pitch).add(expected.clasp);
      expectExact(sheet.reached.millimetres, reached);
      expectExact(sheet.difference.millimetres, reached.sub(expected.length));
    }),
    { numRuns: 1000 },
  );
});

test("make or buy sets the plain chain against ready chain: clasp, stones and plating weigh on neither side (fraction.js)", () => {
  fc.assert(
    fc.property(randomRates, randomOrder, (rates, order) => {
      const expected = reckon(rates, order);
      fc.pre(expected.links.gt(0) && expected.length.gt(expected.clasp) && expected.price.gt(0));
      const { sourcing } = sheetOf(order.record, rates.record);
      const { metal, lost, casting, labour } = expected.costs;
      const make = metal.add(lost).add(casting).add(labour).div(expected.chain);
      const buy = expected.metalRate.add(rates.figures.surcharge.fraction);
      expectExact(sourcing.makePerGram.perGram, make);
      expectExact(sourcing.buyPerGram.perGram, buy);
      expect(sourcing.verdict).toBe(make.lt(buy) ? "make" : "buy");
    }),
    { numRuns: 300 },
  );
});

test("a plain chain without minimums lands at what LANDEDCOST says of it", () => {
  fc.assert(
    fc.property(randomRates, randomOrder, (rates, order) => {
      const expected = reckon(rates, order);
      fc.pre(expected.links.gt(0) && expected.length.gt(expected.clasp));
      const plain = { claspCost: "0", stoneCount: "0", plated: "not plated", claspWeight: "0" };
      const workshop = ratesOf({
        ...rates.record,
        castingMinimum: "0",
        markup: "1",
        priceBy: "markup",
        priceStep: "5",
      });
      const sheet = costOrder(orderOf({ ...order.record, ...plain }, workshop), workshop)[0];
      const landed = landedCost({
        weight: sheet?.chainWeight ?? grams(Quotient.zero),
        metalRate: sheet?.metalRate ?? metalRateOf("the pot", perGram(Quotient.zero, workshop.currency)),
        castingFee: workshop.castingFee,
        labour: sheet?.costs.labour ?? money(Quotient.zero, workshop.currency),
        loss: workshop.loss,
        other: money(Quotient.zero, workshop.currency),
        basis: workshop.costBasis,
      });
      expect(sheet?.landed.amount.equals(landed.amount)).toBe(true);
    }),
    { numRuns: 200 },
  );
});

test("fine gold of 14K is 14/24 of the weight, not 585 thousandths of it", () => {
  expectExact(fineGold(grams(Quotient.of("24")), parseMark("14K")).grams, new Fraction(14));
});

test("an amount for so many pieces is that many times one", () => {
  const { line, price } = sheetOf({ quantity: "7" }, {});
  expect(forAll(price, line).amount.equals(price.amount.times(Quotient.of("7")))).toBe(true);
});

test("a cost sheet, its costs and the list of them are frozen", () => {
  const workshop = ratesOf();
  const sheets = costOrder(orderOf({}, workshop), workshop);
  expect(Object.isFrozen(sheets)).toBe(true);
  expect(Object.isFrozen(sheets[0])).toBe(true);
  expect(Object.isFrozen(sheets[0]?.costs)).toBe(true);
});

import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { type AddedStonesKey, parseAddedStones, stonesPay } from "../../../src/margins/addedstones";
import { costOrder } from "../../../src/quote/costsheet";
import { margin } from "../../../src/trade/price";
import { minorDigits } from "../../../src/units/currency";
import { ORDER, orderOf, type Record_, randomOrder, randomRates, ratesOf } from "../orders";
import { expectExact, figures } from "../reference";

const TYPED: Record<AddedStonesKey, string> = {
  where: "on the clasp",
  count: "12",
  price: "4",
  settingFee: "2",
  breakage: "25 %",
  riseBy: "as the order is priced",
  rise: "",
};
/** 100 g that cost 2750 to have (see curve.test.ts), at a markup of 30 %: 3575. */
const HUNDRED_GRAMS = { mark: "250", length: "25", linkWeight: "1" };

function paid(typed: Partial<typeof TYPED>, order: Record_ = {}, rates: Record_ = {}) {
  const workshop = ratesOf({ ...rates });
  const read = orderOf({ ...ORDER, ...HUNDRED_GRAMS, ...order }, workshop);
  const [sheet] = costOrder(read, workshop);
  const added = parseAddedStones({ ...TYPED, ...typed }, workshop);
  if (!sheet || !added.ok) throw new Error("nothing to add stones to");
  return stonesPay(sheet, added.value, read, workshop);
}

describe("12 stones of 4.00, a quarter broken, set at 2.00", () => {
  test("cost 12 x (4 x 1.25 + 2) = 84; at a markup of 30 % the price rises with them (hand arithmetic)", () => {
    const pays = paid({});
    expectExact(pays.cost.amount, new Fraction(84));
    // 2834 x 1.3 = 3684.2, up to the step of 5.
    expect(pays.priceBefore.amount.toNumber()).toBe(3575);
    expect(pays.priceAfter.amount.toNumber()).toBe(3685);
    expect(pays.rise.amount.toNumber()).toBe(110);
    expectExact(pays.marginBefore ?? Quotient.zero, new Fraction(825, 3575));
    expectExact(pays.marginAfter ?? Quotient.zero, new Fraction(851, 3685));
  });

  test("need 3575 x 84 / 2750 = 109.20 more to keep the margin (hand arithmetic)", () => {
    expect(paid({}).leastRise?.amount.toNumber()).toBe(109.2);
  });

  test("at a rise of 60 the margin falls to 801 / 3635 (hand arithmetic)", () => {
    const pays = paid({ riseBy: "by an amount of mine", rise: "60" });
    expect(pays.priceAfter.amount.toNumber()).toBe(3635);
    expectExact(pays.marginAfter ?? Quotient.zero, new Fraction(801, 3635));
    expect(pays.leastRise?.amount.toNumber()).toBe(109.2);
  });

  test("on every link they are as many times 100 (hand arithmetic)", () => {
    const pays = paid({ where: "on every link", count: "2" });
    expect(pays.stones.toNumber()).toBe(200);
    expectExact(pays.cost.amount, new Fraction(1400));
  });

  test("an overhead of 10 % is on them too; Rates' fee and breakage where none are typed (hand arithmetic)", () => {
    expectExact(paid({}, {}, { overhead: "0.1" }).cost.amount, new Fraction("92.4"));
    const usual = paid({ settingFee: "", breakage: "" }, {}, { settingFee: "3", breakage: "0.5" });
    expectExact(usual.cost.amount, new Fraction(12 * (4 * 1.5 + 3)));
  });

  test("a price by premium passes them on at cost: the margin falls; a price set by hand does not rise at all", () => {
    // 100 g x (25 + 9) = 3400 and stones at cost.
    const premium = paid({}, {}, { priceBy: "premium", premium: "9", priceStep: "0" });
    expect([premium.rise.amount.toNumber(), premium.leastRise?.amount.toNumber()]).toEqual([84, 103.86]);
    expect(paid({}, { linePriceBy: "own price", linePriceFigure: "3500" }).rise.amount.isZero()).toBe(true);
  });
});

test("the least rise keeps the margin, and one coin less does not; under discount, tax and every way of pricing", () => {
  const stones = fc.record({ count: figures(1, 40, 0), price: figures(0, 80, 2), settingFee: figures(0, 6, 2) });
  const terms = fc.record({ discount: figures(0, 0.4, 2), tax: figures(0, 0.2, 2), held: fc.boolean() });
  fc.assert(
    fc.property(randomRates, randomOrder, stones, terms, (given, ordered, { count, price, settingFee }, term) => {
      const rates = ratesOf({ ...given.record, tax: term.tax.text, taxIs: term.held ? "in the price" : "on top" });
      const order = orderOf({ ...ordered.record, discount: term.discount.text }, rates);
      const [sheet] = costOrder(order, rates);
      const typed = { ...TYPED, count: count.text, price: price.text, settingFee: settingFee.text };
      const added = parseAddedStones(typed, rates);
      if (!sheet || !added.ok) throw new Error("nothing to add stones to");
      const { cost, leastRise, marginBefore } = stonesPay(sheet, added.value, order, rates);
      if (!leastRise || !marginBefore || sheet.landed.amount.isZero()) return;
      const share = Quotient.one
        .minus(order.discount)
        .dividedBy(term.held ? Quotient.one.plus(rates.tax) : Quotient.one);
      const marginAt = (rise: Quotient) =>
        margin(sheet.landed.amount.plus(cost.amount), sheet.price.amount.plus(rise).times(share));
      const gained = (rise: Quotient) => Quotient.of(marginAt(rise).minus(marginBefore).rounded(40));
      expect(gained(leastRise.amount).isNegative()).toBe(false);
      const less = leastRise.amount.minus(Quotient.one.dividedBy(Quotient.of(10 ** minorDigits(rates.currency))));
      if (!cost.amount.isZero()) expect(gained(less).isNegative()).toBe(true);
    }),
    { numRuns: 80 },
  );
});

test("each field's fault names it, what was found and what would be right", () => {
  const faults = (changes: Partial<typeof TYPED>) => {
    const read = parseAddedStones({ ...TYPED, ...changes }, ratesOf());
    return read.ok ? [] : read.faults.map(({ sentence }) => sentence);
  };
  expect(faults({ count: "2.5" })).toEqual(['How many stones: found "2.5"; give a whole number from 1, such as 12']);
  expect(faults({ count: "0" })[0]).toContain('How many stones: found "0"');
  expect(faults({ price: "" })[0]).toContain("Price of one stone: found nothing; give an amount of money from 0");
  expect(faults({ settingFee: "-1" })[0]).toContain('Setting fee: found "-1"');
  expect(faults({ breakage: "3" })[0]).toContain('Stone breakage: found "3"; give a share');
  expect(faults({ riseBy: "by an amount of mine" })[0]).toContain("Rise of the price: found nothing; give an amount");
  expect(faults({ riseBy: "as usual" })[0]).toContain('The price rises: found "as usual"; give one of');
  expect(faults({ where: "in the box" })[0]).toContain('Stones go: found "in the box"; give one of');
  // A rise left over from before is not read where the price follows the order.
  expect(faults({ rise: "many" })).toEqual([]);
});

import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Decimal } from "../../../src/exact/decimal";
import { Quotient } from "../../../src/exact/quotient";
import type { Order } from "../../../src/order/order";
import { type CostSheet, costOrder } from "../../../src/quote/costsheet";
import { makeQuote, type Quote } from "../../../src/quote/quote";
import type { Rates } from "../../../src/rates/rates";
import { TAX_DUE } from "../../../src/trade/deposit";
import {
  exactly,
  orderOf,
  type RandomOrder,
  type RandomRates,
  type Record_,
  randomOrder,
  randomRates,
  ratesOf,
  reckon,
  together,
} from "../orders";
import { expectExact, figures, upToStep } from "../reference";

const DATE = "2026-03-02";
const text = (value: Quotient) => value.value().toString();

function quoteOf(order: Order, rates: Rates, date = DATE) {
  return makeQuote(order, costOrder(order, rates), rates, date);
}

function quoteFor(order: Record_, rates: Record_) {
  const workshop = ratesOf(rates);
  return quoteOf(orderOf(order, workshop), workshop);
}

/** 25 in at 4 links an inch of 1 g at a metal rate of 25: 2,750 landed, 3,575 asked at 30 %, by hand in costsheet.test.ts. */
const HUNDRED_GRAMS = { mark: "250", length: "25", linkWeight: "1" };

describe("a quote of 2 pieces at 3,575, 5 % off, 8.25 % tax, half as deposit (hand arithmetic)", () => {
  const { quote, watch } = quoteFor({ ...HUNDRED_GRAMS, quantity: "2", discount: "0.05" }, { tax: "0.0825" });

  test.each<[keyof Quote, string]>([
    ["subtotal", "7150"],
    ["discount", "357.5"], // 7150 x 0.05
    ["tax", "560.38"], // 6792.5 x 0.0825 = 560.38125
    ["total", "7352.88"],
    // Half is 3,676.44; metal, loss, casting and labour of both are 2 x 2,750 = 5,500, 74.8 % of the total: 75 % is 5,514.66, up to 5.
    ["deposit", "5515"],
    ["balance", "1837.88"],
  ])("%s is %s", (key, expected) => {
    expect(quote[key]).toMatchObject({ kind: "money", currency: "USD" });
    const amount = quote[key] as Quote["total"];
    expect(text(amount.amount)).toBe(expected);
  });

  test("after the discount it stays above the floor, and the deposit covers the cash", () => {
    expect(watch).toMatchObject({ belowFloor: false, depositShort: false });
  });

  test("margin and markup are of what it brings after the discount: 6,792.50 on 5,500 landed (hand arithmetic)", () => {
    // (6,792.50 - 5,500) / 6,792.50 and / 5,500.
    expect(watch.margin?.value().toFixed(4)).toBe("0.1903");
    expect(watch.markup?.value().toFixed(4)).toBe("0.2350");
  });

  test("its line says what is sold and nothing of its making", () => {
    expect(quote.lines).toHaveLength(1);
    expect(quote.lines[0]).toMatchObject({
      design: "Curb 8 mm",
      mark: "250",
      colours: ["yellow"],
      length: "25",
      unit: "in",
      plating: undefined,
    });
    expect(text(quote.lines[0]?.weight ?? Quotient.zero)).toBe("100");
    expect(text(quote.lines[0]?.links ?? Quotient.zero)).toBe("100");
  });
});

test("a deposit of 0 asks for none, and one of everything asks for the total", () => {
  expect(text(quoteFor(HUNDRED_GRAMS, { deposit: "0" }).quote.deposit.amount)).toBe("0");
  const all = quoteFor(HUNDRED_GRAMS, { deposit: "1", tax: "0.0825" }).quote;
  expect(all.deposit.amount.equals(all.total.amount)).toBe(true);
  expect(all.balance.amount.isZero()).toBe(true);
});

test("no deposit, or a discount below the floor, is told to the bench", () => {
  expect(quoteFor(HUNDRED_GRAMS, { deposit: "0" }).watch).toMatchObject({ belowFloor: false, depositShort: true });
  // Floor 2750 / 0.9 = 3055.56; 3575 x 0.86 = 3074.50 is above it, 3575 x 0.85 = 3038.75 below.
  expect(quoteFor({ ...HUNDRED_GRAMS, discount: "0.14" }, {}).watch.belowFloor).toBe(false);
  expect(quoteFor({ ...HUNDRED_GRAMS, discount: "0.15" }, {}).watch.belowFloor).toBe(true);
});

test("a line below its own floor is told by its place, though the order is above its (hand arithmetic)", () => {
  const workshop = ratesOf();
  // Landed 2,750 each, floor 3,055.56: priced at 3,000 and at 9,000 by hand, together well above.
  const cheap = orderOf({ ...HUNDRED_GRAMS, linePriceBy: "own price", linePriceFigure: "3000" }, workshop);
  const dear = orderOf({ ...HUNDRED_GRAMS, linePriceBy: "own price", linePriceFigure: "9000" }, workshop);
  const { watch } = quoteOf(together([dear, cheap]), workshop);
  expect(watch).toMatchObject({ belowFloor: false, linesBelowFloor: [1] });
});

test("a rate by the gram stands before the discount, which the quote names where there is one", () => {
  const settled = (terms: Record_) =>
    quoteFor({ ...HUNDRED_GRAMS, tolerance: "0.05", ...terms }, {}).quote.settledDiscount;
  expect(settled({ settled: "by final weight", discount: "0.1" })?.toNumber()).toBe(0.1);
  expect(settled({ settled: "by final weight" })).toBeUndefined();
  expect(settled({ discount: "0.1" })).toBeUndefined();
});

describe("a deposit", () => {
  const terms = { ...HUNDRED_GRAMS, engraving: "For Ada", engravingCost: "40", setup: "60" };

  test("is raised for all that goes out, and says from what share to what (hand arithmetic)", () => {
    const { quote, watch } = quoteFor(terms, { deposit: "0.3", overhead: "0.1" });
    // 2,750 with engraving and model 2,850; overhead is paid anyway. 3,135 x 1.3 = 4,075.50, up to 4,080: 69.9 %, so 70 % is 2,856.
    expect(text(watch.cashOut.amount)).toBe("2850");
    expect(text(quote.total.amount)).toBe("4080");
    expect(text(quote.deposit.amount)).toBe("2860");
    expect([watch.depositRaised?.from.toNumber(), watch.depositRaised?.to.toNumber()]).toEqual([0.3, 0.7]);
    expect(watch.depositShort).toBe(false);
  });

  test("that was typed for the order stays, and is told where it does not do (hand arithmetic)", () => {
    const { quote, watch } = quoteFor({ ...terms, deposit: "0.3" }, { deposit: "0.9" });
    // 2,850 x 1.3 = 3,705: 30 % of it is 1,111.50, up to 1,115.
    expect(text(quote.deposit.amount)).toBe("1115");
    expect(watch).toMatchObject({ depositShort: true, depositRaised: undefined });
  });

  test("covers less where the tax in it is due with it (hand arithmetic)", () => {
    const at = (taxDue: string) => quoteFor({ ...terms, deposit: "0.7" }, { tax: "0.25", taxDue });
    // 3,705 and a quarter are 4,631.25; 70 % of it 3,241.875, up to 3,245, a fifth of which is tax.
    expect(text(at("with the deposit").quote.deposit.amount)).toBe("3245");
    expect(text(at("with the deposit").watch.depositCovers.amount)).toBe("2596");
    expect(text(at("with the deposit").quote.depositTax.amount)).toBe("649");
    expect(at("with the deposit").watch.depositShort).toBe(true);
    expect(text(at("").watch.depositCovers.amount)).toBe("3245");
    expect(at("").watch.depositShort).toBe(false);
  });
});

describe("dates", () => {
  test.each([
    ["2026-03-02", "7", "2026-03-09"],
    ["2024-02-25", "7", "2024-03-03"], // leap year
    ["2025-02-25", "7", "2025-03-04"],
    ["2026-12-28", "7", "2027-01-04"],
    ["2026-03-28", "1", "2026-03-29"], // clocks change in Europe that night
    ["2024-01-01", "366", "2025-01-01"],
  ])("a quote of %s for %s days ends on %s (calendar)", (date, validity, expected) => {
    const workshop = ratesOf({ validity });
    expect(quoteOf(orderOf({}, workshop), workshop, date).quote).toMatchObject({ date, validUntil: expected });
  });
});

/** An order of several random lines under the same rates, which share a discount. */
const randomQuotes = fc
  .tuple(randomRates, fc.array(randomOrder, { minLength: 1, maxLength: 4 }), figures(0, 0.4, 3))
  .map(([rates, orders, discount]) => ({ rates, orders, discount }));

function sellable(rates: RandomRates, order: RandomOrder): boolean {
  const { links, length, clasp, price } = reckon(rates, order);
  return links.gt(0) && links.lte(5000) && length.gt(clasp) && price.gt(0);
}

function orderOfAll(rates: Rates, orders: readonly RandomOrder[], discount: string): Order {
  return together(orders.map((order) => orderOf({ ...order.record, discount }, rates)));
}

test("every line is rounded once; subtotal, discount, tax, total, deposit and balance are those of the lines shown (fraction.js)", () => {
  fc.assert(
    fc.property(randomQuotes, fc.constantFrom(...TAX_DUE), ({ rates, orders, discount }, taxDue) => {
      fc.pre(orders.every((order) => sellable(rates, order)));
      const workshop = ratesOf({ ...rates.record, taxDue });
      const { quote, watch } = quoteOf(orderOfAll(workshop, orders, discount.text), workshop);
      const reckoned = orders.map((order) => ({ ...reckon(rates, order), quantity: order.figures.quantity.fraction }));
      const amounts = reckoned.map(({ price, quantity }) => exactly(price.mul(quantity), rates.digits));
      for (const [index, line] of quote.lines.entries())
        expectExact(line.amount.amount, amounts[index] ?? new Fraction(-1));
      const add = (total: Fraction, amount: Fraction) => total.add(amount);
      const subtotal = amounts.reduce(add, new Fraction(0));
      const off = exactly(subtotal.mul(discount.fraction), rates.digits);
      const tax = exactly(subtotal.sub(off).mul(rates.figures.tax.fraction), rates.digits);
      const total = subtotal.sub(off).add(tax);
      const cash = reckoned.map(({ cashOut, quantity }) => cashOut.mul(quantity)).reduce(add, new Fraction(0));
      const floor = reckoned.map((line) => line.floor.mul(line.quantity)).reduce(add, new Fraction(0));
      const share = total.mul(rates.figures.deposit.fraction);
      // The tax in a deposit pays for nothing where it is due with it.
      const left = workshop.taxDue === "with the deposit" ? total.sub(tax).div(total) : new Fraction(1);
      const twentieths = cash.div(total.mul(left)).mul(20).ceil().div(20).mul(total);
      const stepped = upToStep(
        share.lt(twentieths) ? twentieths : share,
        rates.step.lt(1) ? new Fraction(1) : rates.step,
      );
      const deposit = rates.figures.deposit.fraction.equals(0) ? new Fraction(0) : stepped.gt(total) ? total : stepped;
      expectExact(quote.subtotal.amount, subtotal);
      expectExact(quote.discount.amount, off);
      expectExact(quote.tax.amount, tax);
      expectExact(quote.total.amount, total);
      expectExact(quote.deposit.amount, deposit);
      expectExact(quote.balance.amount, total.sub(deposit));
      expect(watch).toMatchObject({
        belowFloor: subtotal.sub(off).lt(floor),
        depositShort: deposit.mul(left).lt(cash),
      });
      expectExact(watch.depositCovers.amount, deposit.mul(left));
    }),
    { numRuns: 500 },
  );
});

test("every amount of a quote is whole in the currency's minor unit (ISO 4217)", () => {
  fc.assert(
    fc.property(randomQuotes, ({ rates, orders, discount }) => {
      fc.pre(orders.every((order) => sellable(rates, order)));
      const workshop = ratesOf(rates.record);
      const { quote } = quoteOf(orderOfAll(workshop, orders, discount.text), workshop);
      for (const { amount, currency } of moneyIn(quote)) {
        expect(currency).toBe(rates.words.currency);
        expect(amount.value().decimalPlaces()).toBeLessThanOrEqual(rates.digits);
      }
    }),
    { numRuns: 200 },
  );
});

describe("a quote shows no cost", () => {
  const KEYS = [
    "balance",
    "customer",
    "date",
    "deposit",
    "depositTax",
    "discount",
    "extras",
    "lines",
    "number",
    "ownGold",
    "settledByWeight",
    "settledDiscount",
    "settledWithoutStones",
    "shipping",
    "spot",
    "subtotal",
    "tax",
    "taxIncluded",
    "taxName",
    "toPay",
    "tolerance",
    "total",
    "validUntil",
    "workshop",
    "workshopContact",
  ];
  const LINE_KEYS = [
    "amount",
    "carats",
    "caratsAbout",
    "clasp",
    "colours",
    "design",
    "engraving",
    "findings",
    "hollow",
    "kind",
    "length",
    "links",
    "mark",
    "perGram",
    "plating",
    "price",
    "quantity",
    "reached",
    "stoneSets",
    "stoneSizes",
    "stones",
    "unit",
    "weight",
  ];

  test("it has the fields a customer reads and no others", () => {
    const { quote } = quoteFor({}, {});
    expect(Object.keys(quote).sort()).toEqual(KEYS);
    expect(quote.lines.map((line) => Object.keys(line).sort())).toEqual([LINE_KEYS]);
  });

  test("no value in it equals a cost line, the landed cost, the floor or the metal rate, exact or to the cent", () => {
    fc.assert(
      fc.property(randomRates, fc.array(randomOrder, { minLength: 1, maxLength: 3 }), (rates, orders) => {
        fc.pre(orders.every((order) => sellable(rates, order)));
        // In steps of 5, without discount and tax, whatever a customer may read as money is a whole 5.
        const workshop = ratesOf({ ...rates.record, priceStep: "5", tax: "0", currency: "USD" });
        // The customer's own length may be any number; here it is a whole one.
        const whole = orders.map(({ record, ...rest }) => ({
          ...rest,
          record: { ...record, length: "40", lengthUnit: "in" },
        }));
        const order = orderOfAll(workshop, whole, "0");
        const sheets = costOrder(order, workshop);
        const secret = new Set(sheets.flatMap(costFigures));
        fc.pre(secret.size > 0);
        const shown = valuesIn(makeQuote(order, sheets, workshop, DATE).quote);
        expect(shown.filter((value) => secret.has(value))).toEqual([]);
      }),
      { numRuns: 500 },
    );
  });

  test("the walk finds a cost where there is one", () => {
    const workshop = ratesOf({ spot: "3333.33" });
    const order = orderOf({}, workshop);
    const [sheet] = costOrder(order, workshop);
    const { quote } = quoteOf(order, workshop);
    const landed = sheet?.landed;
    const secret = new Set(sheet ? costFigures(sheet) : []);
    expect(valuesIn({ ...quote, lines: [{ ...quote.lines[0], landed }] }).some((value) => secret.has(value))).toBe(
      true,
    );
    // 3333.33 x 0.75 / 31.1034768 = 80.3768…: the metal rate to the cent.
    expect(valuesIn({ ...quote, taxName: "Sales tax (80.38)" }).some((value) => secret.has(value))).toBe(true);
  });

  /** Costs that no count, weight to one decimal or price in steps of 5 can equal by chance: those with odd cents. */
  function costFigures(sheet: CostSheet): readonly string[] {
    const each = [...Object.values(sheet.costs), sheet.landed, sheet.cashOut, sheet.floor].map((cost) => cost.amount);
    const all = each.map((amount) => amount.times(sheet.line.quantity));
    return [...each, ...all, sheet.landedPerGram.perGram, sheet.metalRate.perGram]
      .flatMap((amount) => [amount.value(), amount.rounded(2)])
      .filter((amount) => !amount.times(10).isInteger())
      .map((amount) => amount.toFixed());
  }

  function valuesIn(value: unknown): readonly string[] {
    if (value instanceof Quotient) return [value.value().toFixed()];
    if (Array.isArray(value)) return value.flatMap(valuesIn);
    if (typeof value === "object" && value !== null) return Object.values(value).flatMap(valuesIn);
    return (
      String(value)
        .match(/\d+(?:\.\d+)?/g)
        ?.map((number) => new Decimal(number).toFixed()) ?? []
    );
  }
});

function moneyIn(quote: Quote) {
  const { subtotal, discount, tax, total, deposit, balance } = quote;
  return [
    subtotal,
    discount,
    tax,
    total,
    deposit,
    balance,
    ...quote.lines.flatMap((line) => [line.price, line.amount]),
  ];
}

test("a customer's name and a design are quoted letter for letter", () => {
  const customer = '=HYPERLINK("x")<b>{{total}}</b>';
  const { quote } = quoteFor({ customer, design: "+Curb" }, {});
  expect(quote.customer).toBe(customer);
  expect(quote.lines[0]?.design).toBe("+Curb");
});

test("a quote, its lines and its watch are frozen", () => {
  const made = quoteFor({}, {});
  expect(Object.isFrozen(made)).toBe(true);
  expect(Object.isFrozen(made.quote)).toBe(true);
  expect(Object.isFrozen(made.quote.lines)).toBe(true);
  expect(Object.isFrozen(made.quote.lines[0])).toBe(true);
  expect(Object.isFrozen(made.watch)).toBe(true);
});

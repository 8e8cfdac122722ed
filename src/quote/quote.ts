import { Quotient, sum } from "../exact/quotient";
import type { Order } from "../order/order";
import { type GoldBalance, goldBalance, type OwnGold } from "../order/owngold";
import type { QuoteNumber } from "../order/quotenumber";
import type { Rates } from "../rates/rates";
import { discountOn } from "../trade/amounts";
import { cashBeforeSale } from "../trade/deposit";
import { margin, markup, priceAtMargin } from "../trade/price";
import { taxOf, withoutTax } from "../trade/salestax";
import { addMoney, type Money, money, roundToCurrency, subtractMoney, timesMoney } from "../units/money";
import { grams, type Weight } from "../units/weight";
import { type CostSheet, forAll, salesTax } from "./costsheet";
import { type OrderDeposit, orderDeposit, sparedMetal } from "./deposit";
import { type QuoteLine, quoteLine } from "./quoteline";

/** What a customer reads. Holds no cost: nothing in it can reveal one. */
export interface Quote {
  readonly number: QuoteNumber;
  /** ISO 8601 dates. */
  readonly date: string;
  readonly validUntil: string;
  readonly customer: string;
  readonly workshop: string;
  readonly workshopContact: string;
  readonly lines: readonly QuoteLine[];
  readonly extras: readonly QuoteExtra[];
  /** Of all lines and free lines shown. */
  readonly subtotal: Money;
  /** Off the pieces; free lines and shipping are not discounted. */
  readonly discount: Money;
  readonly shipping: Money;
  readonly taxName: string;
  readonly tax: Money;
  /** The tax is in the amounts shown, not on top of them. */
  readonly taxIncluded: boolean;
  readonly total: Money;
  /** The customer's own gold; undefined where none is brought. */
  readonly ownGold: { readonly given: OwnGold; readonly returned: Weight; readonly credit: Money } | undefined;
  /** The total less the credit for the customer's gold; below zero where that is worth more. */
  readonly toPay: Money;
  readonly deposit: Money;
  readonly depositTax: Money;
  readonly balance: Money;
  /** Share by which a finished weight may differ from the one stated. */
  readonly tolerance: Quotient;
  readonly settledByWeight: boolean;
  /** The share of the discount that the rate of a gram more or less stands before; undefined where the price is fixed or there is none. */
  readonly settledDiscount: Quotient | undefined;
  /** The final weight settles the price of pieces with stones, which are not gold: their weight is taken off the scale's. */
  readonly settledWithoutStones: boolean;
  /** Money per troy ounce of fine gold; undefined where the customer is not to read it. */
  readonly spot: Money | undefined;
}

export interface QuoteExtra {
  readonly text: string;
  readonly amount: Money;
}

/** What the person at the bench should know before sending it. */
export interface QuoteWatch {
  /** After the discount the work brings less than landed cost at the least margin. */
  readonly belowFloor: boolean;
  /** What the work brings after the discount, before tax and shipping, and its floor. */
  readonly net: Money;
  readonly floor: Money;
  /** Lines, counted from 0, that the discount leaves below their own floor, though the whole order may be above its. */
  readonly linesBelowFloor: readonly number[];
  /** Lines, counted from 0, whose stones nobody has weighed, nor said what they are: the final weight cannot settle their price. */
  readonly stonesUnweighed: readonly number[];
  /** What the deposit covers is less than the cash that goes out. */
  readonly depositShort: boolean;
  readonly depositCovers: Money;
  /** The share that was wanted, and the one it was raised to so that it covers that cash. */
  readonly depositRaised: OrderDeposit["raised"];
  /** Cash out before the work is sold: of the pieces all but overhead, without metal that is the customer's own; free lines. */
  readonly cashOut: Money;
  /** Free lines take off more than the rest comes to. */
  readonly belowZero: boolean;
  /** Of what the work brings; undefined where that is nothing. */
  readonly margin: Quotient | undefined;
  /** Of what it brings over its landed cost; undefined where that is nothing. */
  readonly markup: Quotient | undefined;
  readonly goldBalance: GoldBalance | undefined;
}

/**
 * A quote from a costed order. Each amount is rounded once; subtotal, tax, total and balance are sums of what is shown.
 * @param date ISO 8601 date of the quote
 */
export function makeQuote(
  order: Order,
  sheets: readonly CostSheet[],
  rates: Rates,
  date: string,
): { readonly quote: Quote; readonly watch: QuoteWatch } {
  const cash = (amount: Quotient) => money(amount, rates.currency);
  const lines = Object.freeze(sheets.map((sheet) => quoteLine(sheet, order, rates)));
  const extras = Object.freeze(
    order.extras.map(({ text, amount }) => Object.freeze({ text, amount: roundToCurrency(amount) })),
  );
  const pieces = cash(sum(lines.map(({ amount }) => amount.amount)));
  const besides = cash(sum(extras.map(({ amount }) => amount.amount)));
  const discount = roundToCurrency(discountOn(pieces, order.discount));
  const shipping = roundToCurrency(order.shipping);
  const work = addMoney(subtractMoney(pieces, discount), besides);
  const tax = taxOn(work, shipping, rates);
  const total = rates.taxIncluded ? addMoney(work, shipping) : addMoney(work, shipping, tax);
  const needed = grams(sum(sheets.map(({ fineGoldCast, line }) => fineGoldCast.grams.times(line.quantity))));
  const balance = order.ownGold && goldBalance(order.ownGold, needed, order.spot);
  const toPay = balance ? subtractMoney(total, balance.credit) : total;
  const cashOut = cashOutOf(order, sheets, balance);
  const { deposit, depositTax, ...deposited } = orderDeposit(order, { total, tax, toPay }, cashOut, rates);
  const net = withoutTax(work, salesTax(rates));
  const landed = addMoney(
    totalOf(sheets, (sheet) => sheet.landed, rates),
    ...order.extras.map(({ cost }) => cost),
  );
  const floor = priceAtMargin(landed, rates.leastMargin);
  const quote: Quote = {
    number: Object.freeze({ number: rates.nextNumber, revision: "" }),
    date,
    validUntil: daysAfter(date, rates.validity),
    customer: order.customer,
    workshop: rates.workshop,
    workshopContact: rates.workshopContact,
    lines,
    extras,
    subtotal: addMoney(pieces, besides),
    discount,
    shipping,
    taxName: rates.taxName,
    tax,
    taxIncluded: rates.taxIncluded,
    total,
    ownGold:
      order.ownGold && balance
        ? Object.freeze({ given: order.ownGold, returned: balance.returned, credit: balance.credit })
        : undefined,
    toPay,
    deposit,
    depositTax,
    balance: subtractMoney(toPay, deposit),
    tolerance: order.tolerance,
    settledByWeight: order.settledByWeight,
    settledDiscount: order.settledByWeight && !order.discount.isZero() ? order.discount : undefined,
    settledWithoutStones: order.settledByWeight && sheets.some(({ line }) => line.stones.length > 0),
    spot: order.spotShown ? order.spot : undefined,
  };
  return Object.freeze({
    quote: Object.freeze(quote),
    watch: Object.freeze({
      belowFloor: net.amount.isLessThan(floor.amount),
      net,
      floor,
      linesBelowFloor: Object.freeze(
        sheets.flatMap(({ netPrice, floor: least }, index) =>
          timesMoney(netPrice, Quotient.one.minus(order.discount)).amount.isLessThan(least.amount) ? [index] : [],
        ),
      ),
      stonesUnweighed: Object.freeze(order.settledByWeight ? unweighed(sheets) : []),
      depositShort: deposited.isShort,
      depositCovers: deposited.covers,
      depositRaised: deposited.raised,
      cashOut,
      belowZero: total.amount.isNegative(),
      margin: net.amount.isPositive() ? margin(landed.amount, net.amount) : undefined,
      markup: landed.amount.isPositive() ? markup(landed.amount, net.amount) : undefined,
      goldBalance: balance,
    }),
  });
}

/** A size tells carats where it is known what stone it is. */
function unweighed(sheets: readonly CostSheet[]): readonly number[] {
  return sheets.flatMap(({ line }, index) =>
    line.stones.some(({ carat, caratFrom }) => !carat || caratFrom === "a diamond's size") ? [index] : [],
  );
}

/** Tax on the work, and on shipping where that is taxed. Rounded once. */
function taxOn(work: Money, shipping: Money, rates: Rates): Money {
  const taxed = rates.shippingTaxed ? addMoney(work, shipping) : work;
  return roundToCurrency(taxOf(taxed, salesTax(rates)));
}

/** A customer's gold that goes into the work spares metal, never more of it than is charged, and nothing else. */
function cashOutOf(order: Order, sheets: readonly CostSheet[], balance: GoldBalance | undefined): Money {
  const none = money(Quotient.zero, order.spot.currency);
  const all = addMoney(none, ...sheets.map(({ cashOut }) => cashOut), ...order.extras.map(({ cost }) => cost));
  const metal = addMoney(none, ...sheets.map(({ costs, line }) => forAll(addMoney(costs.metal, costs.lost), line)));
  return cashBeforeSale(subtractMoney(all, metal), metal, sparedMetal(balance, order.spot));
}

function totalOf(sheets: readonly CostSheet[], amount: (sheet: CostSheet) => Money, rates: Rates): Money {
  return money(sum(sheets.map((sheet) => forAll(amount(sheet), sheet.line).amount)), rates.currency);
}

function daysAfter(date: string, days: number): string {
  const day = new Date(`${date}T00:00:00Z`);
  day.setUTCDate(day.getUTCDate() + days);
  return day.toISOString().slice(0, 10);
}

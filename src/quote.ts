import { type CostSheet, forAll } from "./costsheet";
import { addMoney, type Money, money, roundToCurrency, roundUpToStep, subtractMoney, timesMoney } from "./money";
import type { Order } from "./order";
import { margin, markup } from "./price";
import type { QuoteNumber } from "./quotenumber";
import { maximum, Quotient, sum } from "./quotient";
import type { Rates } from "./rates";

/** What a customer reads of one line. Holds no cost. */
export interface QuoteLine {
  readonly design: string;
  readonly mark: string;
  readonly colour: string;
  readonly length: string;
  readonly unit: string;
  readonly links: Quotient;
  /** About, finished, in grams to one decimal. */
  readonly weight: Quotient;
  readonly stones: Quotient;
  readonly plated: boolean;
  readonly quantity: Quotient;
  readonly price: Money;
  readonly amount: Money;
}

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
  readonly subtotal: Money;
  readonly discount: Money;
  readonly taxName: string;
  readonly tax: Money;
  readonly total: Money;
  readonly deposit: Money;
  readonly balance: Money;
}

/** What the person at the bench should know before sending it. */
export interface QuoteWatch {
  /** After the discount the pieces bring less than landed cost at the least margin. */
  readonly belowFloor: boolean;
  /** The deposit does not cover the cash that goes out. */
  readonly depositShort: boolean;
  /** Of what the pieces bring after the discount, before tax; undefined where that is nothing. */
  readonly margin: Quotient | undefined;
  /** Of what they bring over their landed cost. */
  readonly markup: Quotient;
}

/**
 * A quote from a costed order. Each line's amount is rounded once; subtotal, tax, total and balance are sums of what is shown.
 * @param date ISO 8601 date of the quote
 */
export function makeQuote(
  order: Order,
  sheets: readonly CostSheet[],
  rates: Rates,
  date: string,
): { readonly quote: Quote; readonly watch: QuoteWatch } {
  const lines = Object.freeze(sheets.map(quoteLine));
  const subtotal = money(sum(lines.map((line) => line.amount.amount)), rates.currency);
  const discount = roundToCurrency(timesMoney(subtotal, order.discount));
  const net = subtractMoney(subtotal, discount);
  const tax = roundToCurrency(timesMoney(net, rates.tax));
  const total = addMoney(net, tax);
  const cashOut = sumOver(sheets, (sheet) => sheet.cashOut);
  const floor = sumOver(sheets, (sheet) => sheet.floor);
  const landed = sumOver(sheets, (sheet) => sheet.landed);
  const deposit = depositOf(total, cashOut, rates);
  const quote: Quote = {
    number: Object.freeze({ number: rates.nextNumber, revision: "" }),
    date,
    validUntil: daysAfter(date, rates.validity),
    customer: order.customer,
    workshop: rates.workshop,
    workshopContact: rates.workshopContact,
    lines,
    subtotal,
    discount,
    taxName: rates.taxName,
    tax,
    total,
    deposit,
    balance: subtractMoney(total, deposit),
  };
  return Object.freeze({
    quote: Object.freeze(quote),
    watch: Object.freeze({
      belowFloor: net.amount.isLessThan(floor),
      depositShort: deposit.amount.isLessThan(cashOut),
      margin: net.amount.isZero() ? undefined : margin(landed, net.amount),
      markup: markup(landed, net.amount),
    }),
  });
}

function quoteLine(sheet: CostSheet): QuoteLine {
  const { line } = sheet;
  return Object.freeze({
    design: line.design,
    mark: line.markText,
    colour: line.colour,
    length: line.lengthText,
    unit: line.lengthUnit,
    links: line.links,
    weight: Quotient.of(sheet.finishedWeight.grams.rounded(1)),
    stones: line.stoneCount,
    plated: line.plated,
    quantity: line.quantity,
    price: sheet.price,
    amount: roundToCurrency(forAll(sheet.price, line)),
  });
}

/** A deposit grows by twentieths of the total, so that it does not spell out to the customer what goes out. */
const TWENTIETHS = Quotient.of(20);

/**
 * The wanted share of the total, or where more cash goes out before the piece is sold, the next twentieth that covers it;
 * rounded up to the price step, at least to whole money, and never above the total.
 */
function depositOf(total: Money, cashOut: Quotient, rates: Rates): Money {
  if (rates.deposit.isZero() || total.amount.isZero()) return money(Quotient.zero, rates.currency);
  const twentieths = cashOut.dividedBy(total.amount).times(TWENTIETHS).value().ceil();
  const share = maximum(rates.deposit, Quotient.of(twentieths).dividedBy(TWENTIETHS));
  const rounded = roundToCurrency(
    roundUpToStep(timesMoney(total, share), maximum(rates.priceStep, Quotient.one)),
    "up",
  );
  return rounded.amount.isGreaterThan(total.amount) ? total : rounded;
}

function sumOver(sheets: readonly CostSheet[], amount: (sheet: CostSheet) => Money): Quotient {
  return sum(sheets.map((sheet) => forAll(amount(sheet), sheet.line).amount));
}

function daysAfter(date: string, days: number): string {
  const day = new Date(`${date}T00:00:00Z`);
  day.setUTCDate(day.getUTCDate() + days);
  return day.toISOString().slice(0, 10);
}

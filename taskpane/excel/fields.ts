import { type Money, minorDigits, type Quote, type QuoteLine, type Quotient, showQuoteNumber } from "../../src/index";

/** What a field of the template is filled with: `value` alone in its cell, `text` among other words. */
export interface FieldValue {
  readonly value: string | number;
  readonly text: string;
  /** Number format for a cell that holds the field alone and has no format of its own. */
  readonly format?: string;
}

export type Fields = ReadonlyMap<string, FieldValue>;

const EMPTY: FieldValue = { value: "", text: "" };

/** The fields of a quote as a whole. Nothing here is a cost. */
export function quoteFields(quote: Quote, locale: string): Fields {
  const { currency } = quote.total;
  const cash = (amount: Money) => moneyField(amount, locale);
  return new Map([
    ["number", textField(showQuoteNumber(quote.number))],
    ["date", dateField(quote.date, locale)],
    ["validUntil", dateField(quote.validUntil, locale)],
    ["customer", textField(quote.customer)],
    ["workshop", textField(quote.workshop)],
    ["workshopContact", textField(quote.workshopContact)],
    ["currency", textField(currency)],
    ["subtotal", cash(quote.subtotal)],
    ["discount", unlessZero(quote.discount, cash)],
    ["taxName", quote.tax.amount.isZero() ? EMPTY : textField(quote.taxName || "Tax")],
    ["tax", unlessZero(quote.tax, cash)],
    ["total", cash(quote.total)],
    ["deposit", unlessZero(quote.deposit, cash)],
    ["balance", quote.deposit.amount.isZero() ? EMPTY : cash(quote.balance)],
  ]);
}

/** The fields of one line, under "line.". */
export function lineFields(line: QuoteLine, locale: string): Fields {
  return new Map([
    ["line.design", textField(line.design)],
    ["line.mark", textField(line.mark)],
    ["line.colour", textField(line.colours.join(", "))],
    ["line.plated", line.plated ? textField("plated") : EMPTY],
    ["line.length", textField(line.length)],
    ["line.unit", textField(line.unit)],
    ["line.links", numberField(line.links, 0, locale)],
    ["line.weight", numberField(line.weight, 1, locale)],
    ["line.stones", line.stones.isZero() ? EMPTY : numberField(line.stones, 0, locale)],
    ["line.quantity", numberField(line.quantity, 0, locale)],
    ["line.price", moneyField(line.price, locale)],
    ["line.amount", moneyField(line.amount, locale)],
  ]);
}

/** The number format of an amount with so many decimals. */
export function numberFormat(decimals: number): string {
  return decimals === 0 ? "#,##0" : `#,##0.${"0".repeat(decimals)}`;
}

/** An ISO 8601 date as Excel's serial number: days since 30 December 1899. */
export function dateSerial(isoDate: string): number {
  return (Date.parse(`${isoDate}T00:00:00Z`) - Date.UTC(1899, 11, 30)) / 86_400_000;
}

function textField(text: string): FieldValue {
  return { value: text, text };
}

function moneyField(amount: Money, locale: string): FieldValue {
  return numberField(amount.amount, minorDigits(amount.currency), locale);
}

function numberField(amount: Quotient, decimals: number, locale: string): FieldValue {
  const rounded = amount.rounded(decimals);
  const show = new Intl.NumberFormat(locale, { minimumFractionDigits: decimals, maximumFractionDigits: decimals });
  return { value: rounded.toNumber(), text: show.format(rounded.toNumber()), format: numberFormat(decimals) };
}

function dateField(isoDate: string, locale: string): FieldValue {
  const show = new Intl.DateTimeFormat(locale, { dateStyle: "long", timeZone: "UTC" });
  return { value: dateSerial(isoDate), text: show.format(new Date(`${isoDate}T00:00:00Z`)), format: "d mmm yyyy" };
}

function unlessZero(amount: Money, show: (amount: Money) => FieldValue): FieldValue {
  return amount.amount.isZero() ? EMPTY : show(amount);
}

import {
  type Money,
  minorDigits,
  type Plating,
  type Quote,
  type QuoteExtra,
  type QuoteLine,
  Quotient,
  STATED_DECIMALS,
  showMark,
  showQuoteNumber,
} from "../../../src/index";
import { PLATING_TEXTS, platingWords } from "../../wording/platingtexts";

/** What a field of the template is filled with: `value` alone in its cell, `text` among other words. */
export interface FieldValue {
  readonly value: string | number;
  readonly text: string;
  /** Number format for a cell that holds the field alone and has no format of its own. */
  readonly format?: string;
  /**
   * The field in a template's own words, where one word for one word is not enough.
   * @param own the template's word for ours, if any
   */
  readonly inWords?: (own: (word: string) => string | undefined) => string;
}

export type Fields = ReadonlyMap<string, FieldValue>;

const EMPTY: FieldValue = { value: "", text: "" };

/** Separates the words of a field that has several, such as the colours of a line. */
export const BETWEEN_WORDS = ", ";

/** The fields of a quote as a whole. Nothing here is a cost. */
export function quoteFields(quote: Quote, locale: string): Fields {
  const { currency } = quote.total;
  const cash = (amount: Money) => moneyField(amount, locale);
  const { tax, taxIncluded, taxName } = quote;
  const taxIs = (included: boolean) => taxIncluded === included && !tax.amount.isZero();
  const tolerance = percentField(quote.tolerance, locale);
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
    ["shipping", unlessZero(quote.shipping, cash)],
    ["taxName", taxIs(false) ? textField(taxName || "Tax") : EMPTY],
    ["tax", taxIs(false) ? cash(tax) : EMPTY],
    ["taxIncludedName", taxIs(true) ? textField(taxName || "Tax") : EMPTY],
    ["taxIncluded", taxIs(true) ? cash(tax) : EMPTY],
    ["total", cash(quote.total)],
    ...ownGoldFields(quote, locale),
    ["deposit", unlessZero(quote.deposit, cash)],
    ["balance", quote.deposit.amount.isZero() ? EMPTY : cash(quote.balance)],
    ["tolerance", tolerance],
    ["settledTolerance", quote.settledByWeight ? tolerance : EMPTY],
    ["fixedTolerance", quote.settledByWeight || quote.tolerance.isZero() ? EMPTY : tolerance],
    ["settledDiscount", quote.settledDiscount ? percentField(quote.settledDiscount, locale) : EMPTY],
    ["settledStones", quote.settledWithoutStones ? textField("stones") : EMPTY],
    ["spot", quote.spot ? cash(quote.spot) : EMPTY],
  ]);
}

/** The customer's own gold, and what is left to pay; empty where none is brought. */
function ownGoldFields({ ownGold, toPay }: Quote, locale: string): [string, FieldValue][] {
  if (!ownGold) {
    const names = ["ownGoldWeight", "ownGoldMark", "ownGoldUse", "ownGoldCredit", "ownGoldReturned", "toPay"];
    return names.map((name) => [name, EMPTY]);
  }
  const { given, returned, credit } = ownGold;
  return [
    ["ownGoldWeight", numberField(given.weight.grams, 2, locale)],
    ["ownGoldMark", textField(showMark(given.mark))],
    ["ownGoldUse", textField(given.use)],
    ["ownGoldCredit", moneyField(credit, locale)],
    ["ownGoldReturned", returned.grams.isZero() ? EMPTY : numberField(returned.grams, 2, locale)],
    ["toPay", moneyField(toPay, locale)],
  ];
}

/** The fields of one line, under "line.". */
export function lineFields(line: QuoteLine, locale: string): Fields {
  const count = (amount: Quotient) => numberField(amount, 0, locale);
  const weight = numberField(line.weight, line.perGram ? STATED_DECIMALS : 1, locale);
  return new Map([
    ["line.design", textField(line.design)],
    ["line.kind", textField(line.kind)],
    ["line.mark", textField(line.mark)],
    ["line.colour", textField(line.colours.join(BETWEEN_WORDS))],
    ["line.solid", textField(line.hollow ? "hollow" : "solid")],
    ["line.plated", line.plating ? platingField(line.plating) : EMPTY],
    ["line.length", upToTwoDecimals(Quotient.of(line.length), locale)],
    ["line.unit", textField(line.unit)],
    ["line.reached", line.reached ? upToTwoDecimals(line.reached, locale) : EMPTY],
    ["line.links", count(line.links)],
    ["line.weight", weight],
    ["line.weightAbout", line.perGram ? EMPTY : weight],
    ["line.weightStated", line.perGram ? weight : EMPTY],
    ["line.clasp", line.clasp === "none" ? EMPTY : textField(claspName(line.clasp))],
    ["line.stones", line.stones.isZero() ? EMPTY : count(line.stones)],
    ["line.carats", line.carats && !line.caratsAbout ? numberField(line.carats, 2, locale) : EMPTY],
    ["line.caratsAbout", line.carats && line.caratsAbout ? numberField(line.carats, 2, locale) : EMPTY],
    ["line.stoneSizes", textField(sizesIn(line.stoneSizes, locale))],
    ["line.stoneSets", textField(sizesIn(line.stoneSets, locale))],
    ["line.findings", textField(line.findings)],
    ["line.engraving", textField(line.engraving)],
    ["line.quantity", count(line.quantity)],
    ["line.price", moneyField(line.price, locale)],
    ["line.amount", moneyField(line.amount, locale)],
    ["line.perGram", line.perGram ? moneyField(line.perGram, locale) : EMPTY],
  ]);
}

/**
 * The plating with its metal. A template's own words may replace "plated with", or "plated with rhodium" for this metal, or, in
 * older templates, "plated" alone: then the metal follows in brackets.
 */
function platingField(plating: Plating): FieldValue {
  const { metal, part } = plating;
  const { plated, with: joined, whiteLinks } = PLATING_TEXTS;
  const text = platingWords(plating);
  return {
    value: text,
    text,
    inWords(own) {
      const alone = own(plated);
      const named = own(metal) ?? metal;
      const whole = own(`${joined} ${metal}`);
      const parts = alone === undefined ? [own(joined) ?? joined, named] : [alone, named && `(${named})`];
      const said = whole === undefined ? parts : [whole];
      // Where the template replaces one word by nothing, the whole field is empty: the rest alone would be misleading.
      const all = part === "white links" ? [own(whiteLinks) ?? whiteLinks, ...said] : said;
      return all.includes("") ? "" : all.join(" ");
    },
  };
}

/** The fields of a free line, under "extra.". */
export function extraFields(extra: QuoteExtra, locale: string): Fields {
  return new Map([
    ["extra.text", textField(extra.text)],
    ["extra.amount", moneyField(extra.amount, locale)],
  ]);
}

/** The number format of an amount with this many decimals. */
export function numberFormat(decimals: number): string {
  return decimals === 0 ? "#,##0" : `#,##0.${"0".repeat(decimals)}`;
}

/** An ISO 8601 date as Excel's serial number: days since 30 December 1899. */
export function dateSerial(isoDate: string): number {
  return (Date.parse(`${isoDate}T00:00:00Z`) - Date.UTC(1899, 11, 30)) / 86_400_000;
}

/** Excel's format of a date as a language writes it: "mmm d, yyyy" in American English, "dd.mm.yyyy" in German. */
export function dateFormat(locale: string): string {
  const show = new Intl.DateTimeFormat(locale, {
    dateStyle: "medium",
    calendar: "gregory",
    numberingSystem: "latn",
    timeZone: "UTC",
  });
  const parts = show.formatToParts(new Date("2026-03-04T00:00:00Z"));
  return parts.map(({ type, value }) => datePart(type, value)).join("");
}

function datePart(type: Intl.DateTimeFormatPartTypes, value: string): string {
  switch (type) {
    case "day":
      return value.length === 2 ? "dd" : "d";
    case "month":
      if (!/^\d+$/.test(value)) return "mmm";
      return value.length === 2 ? "mm" : "m";
    case "year":
      return "yyyy";
    default:
      return /^[\s,./-]*$/.test(value) ? value : `"${value}"`;
  }
}

/** The clasp for the customer: what it does, not where it comes from. */
function claspName(clasp: string): string {
  return clasp.replace(/^(bought|cast) /, "");
}

/** Sizes of stones with decimals as the language writes them. */
function sizesIn(sizes: string, locale: string): string {
  const show = new Intl.NumberFormat(locale, { maximumFractionDigits: 6 });
  return sizes.replace(/\d+\.\d+/g, (figure) => show.format(Number(figure)));
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

/** A measure without zeros at its end. */
function upToTwoDecimals(amount: Quotient, locale: string): FieldValue {
  const value = amount.rounded(2).toNumber();
  return { value, text: new Intl.NumberFormat(locale, { maximumFractionDigits: 2 }).format(value) };
}

function percentField(share: Quotient, locale: string): FieldValue {
  const value = share.rounded(6).toNumber();
  const isWhole = share.times(Quotient.of(100)).rounded(6).isInteger();
  const show = new Intl.NumberFormat(locale, { style: "percent", maximumFractionDigits: 2 });
  return { value, text: show.format(value), format: isWhole ? "0%" : "0.0#%" };
}

function dateField(isoDate: string, locale: string): FieldValue {
  const show = new Intl.DateTimeFormat(locale, { dateStyle: "long", timeZone: "UTC" });
  return {
    value: dateSerial(isoDate),
    text: show.format(new Date(`${isoDate}T00:00:00Z`)),
    format: dateFormat(locale),
  };
}

function unlessZero(amount: Money, show: (amount: Money) => FieldValue): FieldValue {
  return amount.amount.isZero() ? EMPTY : show(amount);
}

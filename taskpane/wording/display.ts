/// <reference lib="es2023.intl" />
import {
  type Currency,
  type Decimal,
  inLengthUnit,
  type Length,
  type Money,
  minorDigits,
  type ORDER_LENGTH_UNITS,
  type Quotient,
  type Rate,
  type Weight,
} from "../../src/index";
import { locale } from "./language";
import { TEXTS } from "./texts";

/** Money in its currency's minor unit, rounded once, half away from zero, with the ISO 4217 code. */
export function showMoney(money: Money): string {
  return showAmount(money.amount, money.currency, minorDigits(money.currency));
}

/** Money per gram, shown as money; the words around it say "per gram". */
export function showRate(rate: Rate): string {
  return showAmount(rate.perGram, rate.currency, minorDigits(rate.currency));
}

/** A spot as it was given, to at most six decimals: a quoted spot may have more digits than its currency. */
export function showSpot(spot: Money): string {
  return showAmount(spot.amount, spot.currency, 6);
}

/** A plain number, with at most this many decimals. */
export function showNumber(value: Quotient, decimals = 0): string {
  return formatted(value.rounded(decimals), { maximumFractionDigits: decimals });
}

/** A plain number, with exactly this many decimals. */
export function showFixed(value: Quotient, decimals: number): string {
  const rounded = value.rounded(decimals);
  return formatted(rounded.isZero() ? rounded.abs() : rounded, {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  });
}

/** Grams with exactly this many decimals, as a scale shows them. */
export function showGrams(weight: Weight, decimals: number): string {
  return formatted(weight.grams.rounded(decimals), {
    style: "unit",
    unit: "gram",
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  });
}

const INTL_UNIT = { in: "inch", cm: "centimeter", mm: "millimeter" } as const;

/** A length to at most two decimals of the unit. */
export function showLength(length: Length, unit: (typeof ORDER_LENGTH_UNITS)[number]): string {
  return formatted(inLengthUnit(length, unit).rounded(2), {
    style: "unit",
    unit: INTL_UNIT[unit],
    maximumFractionDigits: 2,
  });
}

/** A share as per cent, to one decimal or as many as are asked for. */
export function showShare(share: Quotient, decimals = 1): string {
  return formatted(share.rounded(2 + decimals), { style: "percent", maximumFractionDigits: decimals });
}

/** A share by which something moved, with its sign: "+5%". */
export function showMove(share: Quotient): string {
  return `${share.isNegative() ? "" : "+"}${showShare(share)}`;
}

/** A list of words, in the pane's own language: "Customer, Design and Mark". */
export function showList(words: readonly string[]): string {
  return new Intl.ListFormat(TEXTS.language, { type: "conjunction" }).format(words);
}

/** Day 0 of Excel's 1900 date system for dates after February 1900; the system has a February 29 that did not exist. */
const DAY_ZERO = Date.UTC(1899, 11, 30);
const DAY = 86_400_000;

/** A date cell: a serial number as a date, with its time if it has one; a text as it is; "" for a blank. */
export function showCellDate(value: unknown): string {
  if (typeof value !== "number") return typeof value === "string" ? value.trim() : "";
  const date = new Date(DAY_ZERO + Math.round(value * DAY));
  if (!Number.isFinite(date.getTime())) return "";
  // Read as UTC, since a cell's time has no zone and is shown as it was written.
  return new Intl.DateTimeFormat(locale(), {
    dateStyle: "medium",
    ...(Number.isInteger(value) ? {} : { timeStyle: "short" }),
    timeZone: "UTC",
  }).format(date);
}

/** "14K", or "14K, hollow". */
export function markWords(mark: string, hollow: boolean): string {
  return hollow ? `${mark}, hollow` : mark;
}

/** A month such as "1979-12" by its name and year. */
export function showMonth(month: string): string {
  return new Intl.DateTimeFormat(locale(), { month: "long", year: "numeric", timeZone: "UTC" }).format(
    new Date(`${month}-01T00:00Z`),
  );
}

/** Today on this machine's calendar, ISO 8601. */
export function today(): string {
  const now = new Date();
  const two = (part: number) => String(part).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function showAmount(amount: Quotient, currency: Currency, most: number): string {
  const rounded = amount.rounded(most);
  return formatted(rounded.isZero() ? rounded.abs() : rounded, {
    style: "currency",
    currency,
    currencyDisplay: "code",
    // Given explicitly: Intl's own digits come from CLDR, which differs from ISO 4217 for some currencies.
    minimumFractionDigits: minorDigits(currency),
    maximumFractionDigits: most,
  });
}

/** Formats through the decimal's text, exactly: a double would lose digits (ECMA-402 2023). */
function formatted(value: Decimal, options: Intl.NumberFormatOptions): string {
  const text = value.toFixed();
  if (!isNumeric(text)) throw new Error(`${text} is not a plain number`);
  return new Intl.NumberFormat(locale(), options).format(text);
}

function isNumeric(text: string): text is `${number}` {
  return /^-?\d+(\.\d+)?$/.test(text);
}

/** Whether day or month comes first where the year is last. */
export type DateOrder = "day first" | "month first";

/** What a list's dates tell of their order. */
export interface DateEvidence {
  /** Undefined where they do not tell, or contradict each other. */
  readonly order: DateOrder | undefined;
  /** A date that two people would read as two days, until the order is known; undefined where there is none. */
  readonly doubtful: string | undefined;
}

const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const LONG_MONTHS = [
  "january",
  "february",
  "march",
  "april",
  "may",
  "june",
  "july",
  "august",
  "september",
  "october",
  "november",
  "december",
];

/** The two days that a date may be: the same one where only one is possible. */
interface Readings {
  readonly dayFirst: string | undefined;
  readonly monthFirst: string | undefined;
}

/** What texts of dates tell of the order of day and month: "25/04/2026" that the day is first, "03/04/2026" nothing. */
export function dateEvidence(texts: readonly string[]): DateEvidence {
  const read = texts.flatMap((text) => {
    const readings = readingsOf(text);
    return readings ? [{ text: text.trim(), ...readings }] : [];
  });
  const told = new Set<DateOrder>();
  for (const { dayFirst, monthFirst } of read) {
    if (dayFirst && !monthFirst) told.add("day first");
    if (monthFirst && !dayFirst) told.add("month first");
  }
  const [only] = told;
  if (told.size === 1 && only) return { order: only, doubtful: undefined };
  return {
    order: undefined,
    doubtful: read.find(({ dayFirst, monthFirst }) => dayFirst && monthFirst && dayFirst !== monthFirst)?.text,
  };
}

/**
 * A date as ISO 8601 has it: "2026-04-03". Takes the year first or last, months by number or by their English names, two figures
 * of a year as this century's, a time behind it (which goes), and the serial number of a date cell. Undefined for anything else, and
 * for a date of two readings while the order is not known.
 * Source of the serial numbers: the 1900 date system, day 1 is 1900-01-01, past its February 29 that never was.
 */
export function readListDate(value: unknown, order: DateOrder | undefined): string | undefined {
  if (typeof value === "number") return dayOfSerial(value);
  if (typeof value !== "string") return undefined;
  const named = dateIn(value);
  if (named) return named;
  const readings = readingsOf(value);
  if (!readings) return undefined;
  const { dayFirst, monthFirst } = readings;
  if (order) return order === "day first" ? dayFirst : monthFirst;
  if (dayFirst && monthFirst) return dayFirst === monthFirst ? dayFirst : undefined;
  return dayFirst ?? monthFirst;
}

/** A date that can be read in one way only. */
function dateIn(text: string): string | undefined {
  const said = text
    .trim()
    .toLowerCase()
    .replace(/[t\s]+\d{1,2}:\d{2}.*$/, "");
  const [, year, month, day] = /^(\d{4})[-/. ](\d{1,2})[-/. ](\d{1,2})\.?$/.exec(said) ?? [];
  if (year && month && day) return isoOf(year, month, day);
  const [, first, name = "", last] =
    /^(\d{1,2})(?:st|nd|rd|th)?[-/. ]+(\p{L}+)[-/., ]+(\d{4}|\d{2})$/u.exec(said) ?? [];
  if (first && last) return isoOf(last, monthNamed(name), first);
  const [, month2 = "", day2, year2] =
    /^(\p{L}+)[-/. ]+(\d{1,2})(?:st|nd|rd|th)?[-/., ]+(\d{4}|\d{2})$/u.exec(said) ?? [];
  return day2 && year2 ? isoOf(year2, monthNamed(month2), day2) : undefined;
}

function readingsOf(text: string): Readings | undefined {
  const said = text.trim().replace(/\s+\d{1,2}:\d{2}.*$/, "");
  const [, first, second, year] = /^(\d{1,2})[-/. ]\s*(\d{1,2})[-/. ]\s*(\d{4}|\d{2})\.?$/.exec(said) ?? [];
  if (!first || !second || !year) return undefined;
  return { dayFirst: isoOf(year, second, first), monthFirst: isoOf(year, first, second) };
}

function monthNamed(name: string): string {
  const place = Math.max(MONTHS.indexOf(name === "sept" ? "sep" : name), LONG_MONTHS.indexOf(name));
  return String(place + 1);
}

/** Undefined for a day that is in no calendar, such as April 31. */
function isoOf(year: string, month: string, day: string): string | undefined {
  const full = year.length === 2 ? 2000 + Number(year) : Number(year);
  const date = new Date(Date.UTC(full, Number(month) - 1, Number(day)));
  if (date.getUTCFullYear() !== full || date.getUTCMonth() !== Number(month) - 1 || date.getUTCDate() !== Number(day))
    return undefined;
  return date.toISOString().slice(0, 10);
}

const DAY_ZERO = Date.UTC(1899, 11, 30);
const DAY = 86_400_000;
/** Day 61 is 1900-03-01; the last day a cell can hold is in the year 9999. */
const FIRST_SERIAL = 61;
const LAST_SERIAL = 2_958_465;

/** The day of a date cell, ISO 8601, from its serial number; undefined where no such day is meant. */
export function dayOfSerial(serial: number): string | undefined {
  if (!(serial >= FIRST_SERIAL && serial < LAST_SERIAL + 1)) return undefined;
  return new Date(DAY_ZERO + Math.floor(serial) * DAY).toISOString().slice(0, 10);
}

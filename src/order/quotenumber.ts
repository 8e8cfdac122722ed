import { CostingError } from "../exact/errors";

/** What a quote is called by: its number, and for a revision of it a letter, as 1001 and 1001a. */
export interface QuoteNumber {
  readonly number: number;
  /** "" for a first quote, then a to z. */
  readonly revision: string;
}

/** Seven digits: as many as Rates allows for the next number; what has more is somebody else's. */
const WRITTEN = /^([1-9]\d{0,6})([a-z]?)$/;

const LETTERS = "abcdefghijklmnopqrstuvwxyz";

/** The number as it is written: "1001", "1001a". */
export function showQuoteNumber({ number, revision }: QuoteNumber): string {
  return `${number}${revision}`;
}

/** Reads a number as it is written, in a cell or a sheet's name; undefined for anything else. */
export function readQuoteNumber(value: unknown): QuoteNumber | undefined {
  const [, digits, revision] = WRITTEN.exec(String(value).trim().toLowerCase()) ?? [];
  if (digits === undefined || revision === undefined) return undefined;
  return Object.freeze({ number: Number(digits), revision });
}

/** The first number from `least` that is above every number taken, whatever its revisions. */
export function nextQuoteNumber(least: number, taken: readonly QuoteNumber[]): QuoteNumber {
  const highest = taken.reduce((most, { number }) => Math.max(most, number), 0);
  return Object.freeze({ number: Math.max(least, highest + 1), revision: "" });
}

/** The same number with the letter after the last one taken. Errors: outOfRange after z. */
export function nextRevision({ number, revision }: QuoteNumber, taken: readonly QuoteNumber[]): QuoteNumber {
  const letters = [revision, ...taken.filter((other) => other.number === number).map((other) => other.revision)];
  const last = Math.max(...letters.map((letter) => (letter === "" ? -1 : LETTERS.indexOf(letter))));
  const next = LETTERS[last + 1];
  if (next === undefined) {
    throw new CostingError(
      "outOfRange",
      `Quote ${number}`,
      "its revisions have come to z, the last letter; start a new order, which takes a number of its own",
    );
  }
  return Object.freeze({ number, revision: next });
}

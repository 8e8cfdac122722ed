/** What can be wrong, one code each. functions/cell.ts says which cell error each code becomes. */
export type CostingErrorCode =
  | "blank"
  | "notANumber"
  | "outOfRange"
  | "unknownWord"
  | "unknownMark"
  | "ambiguousMark"
  | "wrongShape"
  | "tooLarge"
  | "currencyMismatch"
  | "belowLowestMark"
  | "neverReached";

/** One thing a person can put right: the field, what was found there, and what would be right. */
export interface Fault {
  readonly field: string;
  readonly code: CostingErrorCode;
  readonly sentence: string;
  /** The line of the order it is in, counted from 0; undefined for a field of the whole order. */
  readonly line?: number;
  /** The free line it is in, counted from 0. */
  readonly extra?: number;
}

/** The library's only error for what a caller gave; `message` is a sentence that names the field. */
export class CostingError extends Error {
  override readonly name = "CostingError";

  constructor(
    readonly code: CostingErrorCode,
    readonly field: string,
    said: string,
  ) {
    super(`${field}: ${said}`);
  }
}

/** A cell that holds an error or a data type, such as a stock, in place of a number or a text. Its text is what the cell shows. */
export class UnreadableCell {
  constructor(
    readonly holds: "error" | "data type",
    private readonly shown: string,
  ) {}

  toString(): string {
    return this.shown;
  }
}

const LONGEST_SHOWN = 40;

/** What was found, quoted and cut to a length that a person reads. */
export function found(value: unknown): string {
  if (value === null || value === undefined || value === "") return "found nothing";
  if (typeof value === "number") return `found ${value}`;
  if (typeof value === "boolean") return `found ${value ? "TRUE" : "FALSE"}`;
  if (value instanceof UnreadableCell)
    return value.holds === "error" ? `found the error ${value}` : "found a data type";
  if (typeof value !== "string") return "found an error value";
  return `found "${value.length > LONGEST_SHOWN ? `${value.slice(0, LONGEST_SHOWN)}…` : value}"`;
}

/** What to give in place of a value that is not a number. For a data type, one of the numbers in it. */
export function numberToGive(value: unknown, right: string): string {
  const isDataType = value instanceof UnreadableCell && value.holds === "data type";
  return isDataType ? "its number, such as A1.Price" : right;
}

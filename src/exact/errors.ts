/** What can be wrong, one code each. Every code has a cell error of its own in functions/cell.ts. */
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
  /** The line of the order it is in, counted from 0; undefined for what an order says once. */
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

const LONGEST_SHOWN = 40;

/** What was found, quoted and cut to a length that a person reads. */
export function found(value: unknown): string {
  if (value === null || value === undefined || value === "") return "found nothing";
  if (typeof value === "number") return `found ${value}`;
  if (typeof value === "boolean") return `found ${value ? "TRUE" : "FALSE"}`;
  if (typeof value !== "string") return "found an error value";
  return `found "${value.length > LONGEST_SHOWN ? `${value.slice(0, LONGEST_SHOWN)}…` : value}"`;
}

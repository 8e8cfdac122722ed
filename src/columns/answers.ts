import type { Quotient } from "../exact/quotient";
import { BLOCK, type Line, type Rows } from "./lines";

/** What a formula gives for one cell. */
export type Value = Quotient | string | boolean;

/** One of a formula's answers for many rows: a line of doubles, or the one text or boolean that all rows have. */
export type Output = Line | string | boolean;

/** Receives the computed rows, with their outputs in the same order. */
export interface Taker {
  /** The rows are counted from `first`; open[k] is 0 where row k is decided. */
  take(first: number, rows: Rows, open: Uint8Array, outputs: readonly Output[]): void;
}

/** Given as `open` where every row is decided. Never written to. */
export const ALL_DECIDED = new Uint8Array(BLOCK);

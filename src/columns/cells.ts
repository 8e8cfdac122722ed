import type { NumberRule } from "../exact/numberrule";
import { isBlank } from "../reading/number";
import { LEAST_CELL, MOST_CELL } from "./bounds";

/** Rows of cells, as a range has them. */
export type Cells = readonly (readonly unknown[])[];

/** Where a block begins in ranges of so many columns, and how many cells it has. */
export interface RangePart {
  readonly row: number;
  readonly column: number;
  readonly width: number;
  readonly count: number;
}

/** The i-th cell of a block, row by row. */
export function cellOf(cells: Cells, { row, column, width }: RangePart, i: number): unknown {
  const at = column + i;
  return width === 1 ? cells[row + at]?.[0] : cells[row + Math.floor(at / width)]?.[at % width];
}

/** A column's rule in doubles. What passes it also passes the exact rule, by which readNumber reads. */
export interface ColumnRule {
  readonly least: number;
  readonly most: number;
  readonly zero: boolean;
  readonly negative: boolean;
  readonly whole: boolean;
}

/** Far more than the part by which a double misses the decimal of its 15 digits. */
const NEAR = 1e-14;
/** Longer texts may have more than 15 digits. */
const SHORT = 15;
const PLAIN_DECIMAL = /^[+-]?(\d+\.?\d*|\.\d+)$/;

/**
 * The rule of a column. Rounding to 15 digits keeps doubles in order, so one that is not below a bound of few digits stays so.
 * Shape: any number, or from or above a bound that is not below 0; below or at most a bound.
 */
export function columnRule(rule: NumberRule): ColumnRule {
  const below = rule.below === undefined ? MOST_CELL : Number(rule.below) * (1 - NEAR);
  const most = rule.most === undefined ? MOST_CELL * (1 - NEAR) : Number(rule.most);
  const above = Number(rule.above ?? 0) * (1 + NEAR);
  const least = Number(rule.least ?? 0);
  if (above < 0 || least < 0) throw new Error("Column rule: no bounds below 0");
  return {
    least: Math.max(LEAST_CELL, above, least),
    most: Math.min(below, most),
    zero: rule.above === undefined && least === 0,
    negative: rule.above === undefined && rule.least === undefined,
    whole: rule.whole ?? false,
  };
}

/** Whether a double passes the rule of its column. */
export function isInside(value: number, { least, most, zero, negative, whole }: ColumnRule): boolean {
  if (value === 0) return zero;
  const inside = value >= least ? value <= most : negative && -value >= least && -value <= most;
  return inside && (!whole || Number.isInteger(value));
}

/**
 * A cell as the double that stands for its decimal in columns; NaN where only the exact way can read it.
 * @param blank what a blank cell counts as
 */
export function columnNumber(cell: unknown, rule: ColumnRule, blank: number): number {
  if (typeof cell === "number") {
    return isInside(cell, rule) ? cell : Number.NaN;
  }
  if (typeof cell === "string" && cell.length <= SHORT) {
    const text = cell.trim();
    if (PLAIN_DECIMAL.test(text)) return columnNumber(Number(text), rule, blank);
  }
  return isBlank(cell) ? blank : Number.NaN;
}

/** A range that is read into a column. */
export interface Reading {
  readonly cells: Cells;
  readonly rule: ColumnRule;
  /** What a blank cell counts as; not a number where only the exact way can read it. */
  readonly blank: number;
  readonly values: Float64Array;
}

/**
 * Reads the cells of ranges' rows into columns; marks in `odd` the rows that only the exact way can read. Two ranges at a time: the
 * processor then waits for the memory of both at once.
 */
export function readColumns(readings: readonly Reading[], part: RangePart, odd: Uint8Array): void {
  for (let at = 0; at < readings.length; at += 2) {
    const [first, second] = [readings[at], readings[at + 1]];
    const both = first && second && part.width === 1 && !first.rule.whole && !second.rule.whole;
    const done = both ? readBothPlain(first, second, part) : 0;
    if (first) readColumn(first, part, done, odd);
    if (second) readColumn(second, part, done, odd);
  }
}

function readColumn({ cells, rule, blank, values }: Reading, part: RangePart, from: number, odd: Uint8Array): void {
  const { count, width } = part;
  let done = from;
  while (done < count) {
    if (width === 1 && !rule.whole) done = readPlain(cells, part.row, done, count, rule, values);
    // Here the plain reading stopped, or these are the last few rows.
    for (const end = Math.min(done + FOUR, count); done < end; done += 1) {
      const number = columnNumber(cellOf(cells, part, done), rule, blank);
      if (Number.isNaN(number)) odd[done] = 1;
      values[done] = Number.isNaN(number) ? 1 : number;
    }
  }
}

const FOUR = 4;
const TWO = 2;

/** As readPlain, but for two ranges, two rows at a time. */
function readBothPlain(one: Reading, other: Reading, { row, count }: RangePart): number {
  const { cells, values } = one;
  const { cells: besides, values: intoBesides } = other;
  const { least, most } = one.rule;
  const { least: lowest, most: highest } = other.rule;
  const zero = one.rule.zero ? 0 : least;
  const none = other.rule.zero ? 0 : lowest;
  let i = 0;
  for (; i + TWO <= count; i += TWO) {
    const first = cells[row + i];
    const second = cells[row + i + 1];
    const third = besides[row + i];
    const fourth = besides[row + i + 1];
    if (first === undefined || second === undefined || third === undefined || fourth === undefined) return i;
    const a = first[0];
    const b = second[0];
    const c = third[0];
    const d = fourth[0];
    if (typeof a !== "number" || typeof b !== "number" || typeof c !== "number" || typeof d !== "number") return i;
    if (!(a >= least || a === zero) || !(b >= least || b === zero)) return i;
    if (!(c >= lowest || c === none) || !(d >= lowest || d === none)) return i;
    if (!(a <= most && b <= most && c <= highest && d <= highest)) return i;
    values[i] = a;
    values[i + 1] = b;
    intoBesides[i] = c;
    intoBesides[i + 1] = d;
  }
  return i;
}

/**
 * Reads rows from `from` on as long as they are plain numbers inside the rule; gives back where they end. Four rows at a time, and
 * without `?.`, which would make every double an object on the heap.
 */
function readPlain(
  cells: Cells,
  start: number,
  from: number,
  count: number,
  rule: ColumnRule,
  values: Float64Array,
): number {
  const { least, most } = rule;
  const zero = rule.zero ? 0 : least;
  let i = from;
  for (; i + FOUR <= count; i += FOUR) {
    const first = cells[start + i];
    const second = cells[start + i + 1];
    const third = cells[start + i + 2];
    const fourth = cells[start + i + 3];
    if (first === undefined || second === undefined || third === undefined || fourth === undefined) return i;
    const a = first[0];
    const b = second[0];
    const c = third[0];
    const d = fourth[0];
    if (typeof a !== "number" || typeof b !== "number" || typeof c !== "number" || typeof d !== "number") return i;
    if (!(a >= least || a === zero) || !(b >= least || b === zero)) return i;
    if (!(c >= least || c === zero) || !(d >= least || d === zero)) return i;
    if (!(a <= most && b <= most && c <= most && d <= most)) return i;
    values[i] = a;
    values[i + 1] = b;
    values[i + 2] = c;
    values[i + 3] = d;
  }
  return i;
}

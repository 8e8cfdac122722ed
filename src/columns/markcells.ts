import { CostingError } from "../exact/errors";
import { fineShare, parseMark } from "../gold/mark";
import { LEAST_CELL } from "./bounds";
import { type Cells, cellOf, type RangePart } from "./cells";
import { type Grain, grainOf } from "./denominators";
import { lowOf } from "./pairmath";

/** A mark in words, such as "14K": its number, its share of fine gold as a pair of doubles, and that share's grain. */
interface MarkWord {
  readonly at: number;
  readonly high: number;
  readonly low: number;
  readonly grain: Grain;
}

const NEAR = 1e-14;
const SHARE = { parts: 1, from: LEAST_CELL, to: 1 - NEAR };
const KARATS = { parts: 24, from: 1 + NEAR, to: 24 };
const FINENESS = { parts: 1000, from: 24 * (1 + NEAR), to: 1000 };
const MOST_WORDS = 1000;
/** Halves of a karat in the whole. */
const HALVES = 48;
/** What a cell keeps of a figure. */
const CELL_DIGITS = 15;

/** What a column's cells are: marks, or a fineness in parts per thousand, whose numbers are never karats. */
export type MarkReading = "mark" | "fineness";
const KINDS = {
  mark: [FINENESS, KARATS, SHARE],
  fineness: [{ ...FINENESS, from: LEAST_CELL }],
} as const satisfies Record<MarkReading, unknown>;

/** Marks in words, each read once. They are told by their numbers. */
export class MarkWords {
  private readonly byText = new Map<string, MarkWord | undefined>();
  private readonly words: MarkWord[] = [];

  at(number: number): MarkWord | undefined {
    return this.words[number];
  }

  /** Undefined for a text that only the exact way can read. */
  of(text: string): MarkWord | undefined {
    if (this.byText.has(text)) return this.byText.get(text);
    if (this.byText.size >= MOST_WORDS) return undefined;
    const word = readWord(text, this.words.length);
    if (word) this.words.push(word);
    this.byText.set(text, word);
    return word;
  }
}

/**
 * Reads a mark into one row of a column: a number and how many parts the whole has, or 0 parts and the number of a word.
 * False where only the exact way can read it.
 */
export function readColumnMark(
  cell: unknown,
  row: number,
  values: Float64Array,
  parts: Float64Array,
  words: MarkWords,
  as: MarkReading = "mark",
): boolean {
  let text = cell;
  if (typeof cell === "number") {
    const kind = KINDS[as].find(({ from, to }) => cell >= from && cell <= to);
    if (!kind || !isLikeKarats(cell, kind.parts)) {
      values[row] = cell;
      parts[row] = kind?.parts ?? 1;
      return kind !== undefined;
    }
    text = cell.toPrecision(CELL_DIGITS);
  }
  const word = typeof text === "string" ? words.of(as === "mark" ? text : `${text.trim()}‰`) : undefined;
  values[row] = word?.at ?? 0;
  parts[row] = 0;
  return word !== undefined;
}

/** Reads the marks of a range's rows into a column; marks in `odd` the rows that only the exact way can read. */
export function readColumnMarks(
  cells: Cells,
  part: RangePart,
  values: Float64Array,
  parts: Float64Array,
  words: MarkWords,
  odd: Uint8Array,
  as: MarkReading = "mark",
): void {
  for (let i = 0; i < part.count; i += 1)
    if (!readColumnMark(cellOf(cells, part, i), i, values, parts, words, as)) odd[i] = 1;
}

/** Whether a figure is within a few units of its 15th digit of n/24 that does not end as a decimal: it may be n/24 itself. */
function isLikeKarats(cell: number, parts: number): boolean {
  if (parts === KARATS.parts) return false;
  const halves = Math.round((cell * HALVES) / parts);
  return halves % 3 !== 0 && Math.abs((cell * HALVES) / parts - halves) <= halves * NEAR;
}

function readWord(text: string, at: number): MarkWord | undefined {
  try {
    const share = fineShare(parseMark(text));
    const high = share.toNumber();
    return high < LEAST_CELL / 1000 ? undefined : { at, high, low: lowOf(share, high), grain: grainOf(share) };
  } catch (error) {
    if (error instanceof CostingError) return undefined;
    throw error;
  }
}

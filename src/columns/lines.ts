/** Rows computed together: few enough that a formula's columns stay in the processor's nearest memory. */
export const BLOCK = 2048;

/** Values of a block's rows, or of some of them, one after another. */
export type Line = Float64Array<ArrayBuffer>;

export function lineOf(value = 0, length = BLOCK): Line {
  return new Float64Array(length).fill(value);
}

/** Marks of rows: a plan cannot decide it; it certainly takes another way through the formula. */
export const UNDECIDED = 1;
export const OTHER_PATH = 2;

/** Some rows of a block, in their order. */
export interface Rows {
  /** Which; undefined for the first `count` rows of the block. */
  readonly at: Uint16Array | undefined;
  readonly count: number;
}

/** A column's values for these rows, one after another. @param single one cell goes with every row */
export function gathered(values: Line, single: boolean, { at, count }: Rows, into: Line): Line {
  if (!at || single) return values;
  for (let i = 0; i < count; i += 1) into[i] = values[at[i] ?? 0] ?? 0;
  return into;
}

/** Writes a value into the first rows of a line: for few rows without a call, which takes longer than to write them. */
export function fillLine(line: Line, value: number, count: number): Line {
  if (count > FEW) return line.fill(value, 0, count);
  for (let i = 0; i < count; i += 1) line[i] = value;
  return line;
}
const FEW = 16;

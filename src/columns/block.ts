/** Rows computed together: few enough that a formula's columns stay in the processor's nearest memory. */
export const BLOCK = 2048;

/** Values of a block's rows, or of some of them, one after another. */
export type Line = Float64Array<ArrayBuffer>;

export function lineOf(value = 0, length = BLOCK): Line {
  return new Float64Array(length).fill(value);
}

/** Marks of rows: one that a plan leaves open, and one that certainly goes another way through the formula. */
export const OPEN = 1;
export const ELSEWHERE = 2;

/** One argument's cells of a block as doubles: what they say, and for a mark what it is a part of. */
export interface Column {
  readonly values: Line;
  /** One cell goes with every row. */
  single: boolean;
  /** For marks: `values` are numbers over these, or with 0 the places of words in src/columnmark.ts. */
  readonly parts: Line | undefined;
}

/** A block of rows while a formula is computed over them. */
export class Block {
  readonly columns: readonly Column[];
  /** 1 where a cell is not one that columns compute with. */
  readonly odd = new Uint8Array(BLOCK);

  /** @param columns whether each is of marks, and how many rows are read together; at most BLOCK of them are computed together */
  constructor(columns: readonly { readonly mark: boolean; readonly rows?: number }[]) {
    this.columns = columns.map(({ mark, rows }) => ({
      values: lineOf(0, rows),
      single: false,
      parts: mark ? lineOf(0, rows) : undefined,
    }));
  }
}

/** The rows of a block that are still to be computed, in their order. */
export interface Rows {
  /** Which rows; undefined for the first `count` of the block. */
  readonly at: Uint16Array | undefined;
  readonly count: number;
}

/** A column's values for these rows. */
export function gathered(values: Line, single: boolean, { at, count }: Rows, into: Line): Line {
  if (!at || single) return values;
  for (let i = 0; i < count; i += 1) into[i] = values[at[i] ?? 0] ?? 0;
  return into;
}

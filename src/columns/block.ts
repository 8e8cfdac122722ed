import { BLOCK, type Line, lineOf } from "./lines";
import { MarkWords } from "./markcells";

/** One argument's cells of a block as doubles: what they say, and for a mark what it is a part of. */
export interface Column {
  readonly values: Line;
  /** One cell goes with every row. */
  single: boolean;
  /** For marks: `values` are numbers over these, or with 0 the places of words among the block's. */
  readonly parts: Line | undefined;
}

/** The cells that one run reads, a block at a time. */
export class Block {
  readonly columns: readonly Column[];
  /** 1 where a cell is not one that columns compute with. */
  readonly odd = new Uint8Array(BLOCK);
  /** The marks in words of its columns. */
  readonly words = new MarkWords();

  /** @param columns whether each is of marks, and how many rows are read together; at most BLOCK of them are computed together */
  constructor(columns: readonly { readonly mark: boolean; readonly rows?: number }[]) {
    this.columns = columns.map(({ mark, rows }) => ({
      values: lineOf(0, rows),
      single: false,
      parts: mark ? lineOf(0, rows) : undefined,
    }));
  }
}

import { BLOCK, type Line, lineOf } from "./lines";
import { MarkWords } from "./markcells";

/** One column's cells as doubles; for marks also how many parts the whole has. */
export interface Column {
  readonly values: Line;
  /** One cell goes with every row. */
  single: boolean;
  /** For marks: each share is its value over its parts. Where parts are 0, the value is the number of one of the block's words. */
  readonly parts: Line | undefined;
}

/** The cells that one run reads, a block at a time. */
export class Block {
  readonly columns: readonly Column[];
  /** 1 where only the exact way can read a row. */
  readonly odd = new Uint8Array(BLOCK);
  /** The marks that stand in words, such as "14K". */
  readonly words = new MarkWords();

  /** @param columns `mark`: its cells are marks; `rows`: how many are read together, of which at most BLOCK are computed together */
  constructor(columns: readonly { readonly mark: boolean; readonly rows?: number }[]) {
    this.columns = columns.map(({ mark, rows }) => ({
      values: lineOf(0, rows),
      single: false,
      parts: mark ? lineOf(0, rows) : undefined,
    }));
  }
}

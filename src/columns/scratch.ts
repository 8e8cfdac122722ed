import type { Output } from "./answers";
import type { Grains } from "./denominators";
import { BLOCK, type Line, lineOf } from "./lines";
import type { Pairs } from "./pairmath";

/** A step's rows as pairs and, where ties are to be proved, their grains. */
export interface PairRows extends Pairs {
  readonly grains: Grains | undefined;
}

/** Stands where a step has no such operand. Never written to. */
export const NOTHING: Line = lineOf();

/**
 * What one run computes in. A run has it to itself until it gives it back, so that a run within another, or between two blocks
 * of another, disturbs nothing. Lines are made for the longest plan so far and used again: making one takes longer than computing it.
 */
export class Scratch {
  /** One for each row under way: 0 where it is decided, else UNDECIDED or OTHER_PATH. */
  readonly open = new Uint8Array(BLOCK);
  readonly openByFours = new Uint32Array(this.open.buffer);
  /** The rows that are left after a pass. Two lists: one is read while the other is written. */
  readonly left = [new Uint16Array(BLOCK), new Uint16Array(BLOCK)] as const;
  /** Rows that take another way through the formula. */
  readonly otherPath = new Uint16Array(BLOCK);
  readonly outputs: Output[] = [];
  /** Each step's values in the pass under way: in its own line, or in that of a column or another step. */
  readonly lines: Line[] = [];
  readonly pairs: PairRows[] = [];
  /** One input's cells for the rows under way, their parts, and their decimals' digits and powers of ten. */
  readonly values = lineOf();
  readonly parts = lineOf();
  readonly digits = lineOf();
  readonly powers = lineOf();
  /** The mark of a step that has one value for all rows. */
  readonly openOne = new Uint8Array(1);
  private readonly ownLines: Line[] = [];
  private readonly ownPairs: ReturnType<typeof newPairRows>[] = [];

  /** The line that a step writes in doubles. */
  lineOf(step: number): Line {
    return this.ownLines[step] ?? this.newLine(step);
  }

  /** The rows that a step writes in pairs. */
  pairsOf(step: number, proves: boolean): PairRows {
    const rows = this.ownPairs[step] ?? this.newPairs(step);
    return proves ? rows.proving : rows.bare;
  }

  private newLine(step: number): Line {
    const line = lineOf();
    this.ownLines[step] = line;
    return line;
  }

  private newPairs(step: number): ReturnType<typeof newPairRows> {
    const rows = newPairRows();
    this.ownPairs[step] = rows;
    return rows;
  }
}

function newPairRows(): { readonly bare: PairRows; readonly proving: PairRows } {
  const pair = { high: lineOf(), low: lineOf() };
  return { bare: { ...pair, grains: undefined }, proving: { ...pair, grains: { power: lineOf(), count: lineOf() } } };
}

/** Those that no run has just now. A run takes one out before it computes. */
const idle: Scratch[] = [];

export function borrowed(): Scratch {
  return idle.pop() ?? new Scratch();
}

export function giveBack(scratch: Scratch): void {
  idle.push(scratch);
}

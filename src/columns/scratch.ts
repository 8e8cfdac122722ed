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
 * What one run computes in. A run has it to itself from `borrowed` to `giveBack`, so that a run within a run, or one between two
 * blocks of another, disturbs nothing. Lines grow with the longest plan and are used again, since to make one costs more than to compute it.
 */
export class Scratch {
  /** A mark for each row that a plan leaves: OPEN or ELSEWHERE. */
  readonly open = new Uint8Array(BLOCK);
  readonly openByFours = new Uint32Array(this.open.buffer);
  /** Rows that are left, by turns: those of one pass are read while those of the next are written. */
  readonly left = [new Uint16Array(BLOCK), new Uint16Array(BLOCK)] as const;
  readonly elsewhere = new Uint16Array(BLOCK);
  readonly outputs: Output[] = [];
  /** Each step's line in the pass under way: its own, or one that it takes as it is. */
  readonly lines: Line[] = [];
  readonly pairs: PairRows[] = [];
  /** An input's cells for the rows under way. */
  readonly values = lineOf();
  readonly parts = lineOf();
  readonly digits = lineOf();
  readonly powers = lineOf();
  /** The mark of a step that is the same for all rows. */
  readonly openOne = new Uint8Array(1);
  private readonly ownLines: Line[] = [];
  private readonly ownPairs: { readonly bare: PairRows; readonly proving: PairRows }[] = [];

  /** The line that a step writes in doubles. */
  lineOf(step: number): Line {
    const line = this.ownLines[step] ?? lineOf();
    this.ownLines[step] = line;
    return line;
  }

  /** The rows that a step writes in pairs. */
  pairsOf(step: number, proves: boolean): PairRows {
    const rows = this.ownPairs[step] ?? newPairRows();
    this.ownPairs[step] = rows;
    return proves ? rows.proving : rows.bare;
  }
}

function newPairRows(): { readonly bare: PairRows; readonly proving: PairRows } {
  const pair = { high: lineOf(), low: lineOf() };
  return { bare: { ...pair, grains: undefined }, proving: { ...pair, grains: { power: lineOf(), count: lineOf() } } };
}

/** Those that no run has: the only thing here that runs share, and none computes in it. */
const idle: Scratch[] = [];

export function borrowed(): Scratch {
  return idle.pop() ?? new Scratch();
}

export function giveBack(scratch: Scratch): void {
  idle.push(scratch);
}

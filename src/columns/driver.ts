import type { Quotient } from "../exact/quotient";
import type { Taker, Value } from "./answers";
import { Block } from "./block";
import type { Input } from "./bounds";
import { BLOCK, type Rows } from "./lines";
import type { Plan } from "./plan";
import { Plans } from "./plans";
import { grouped } from "./rowgroups";
import { borrowed, giveBack, type Scratch } from "./scratch";
import { settle } from "./settle";
import { type Fields, type Trace, traced } from "./trace";

/** The choice key of a row that only the exact way can read. */
export const UNREAD = -1;

/** One of the columns that a formula computes with. */
export interface ColumnInput extends Input {
  /** Its cells are marks. */
  readonly mark: boolean;
}

/**
 * Runs a formula for one row, exactly. Where the row's way through it is still to be learned, the run is listened to.
 * @param inputs the row's values, one object for each column; undefined for a column that the formula reads itself
 * @param fields which columns the formula reads itself, by the names of their fields
 */
export type Watch = <T extends Value | readonly Value[]>(
  inputs: readonly (Quotient | undefined)[],
  formula: () => T,
  fields?: Fields,
) => T;

/** The rows that a formula is to be computed for: what an adapter tells the driver of them, and what it receives. */
export interface RowSource extends Taker {
  readonly count: number;
  /** Reads the cells that go with every row. False where one of them can only be read exactly: then every row goes the exact way. */
  begin(block: Block): boolean;
  /**
   * Reads `count` rows from `first` on into the first rows of the block. Gives the choice key that all of them have, or writes
   * each row's to `keys`. Rows of one key make the same choices; UNREAD is the key of a row that only the exact way can read.
   */
  read(block: Block, first: number, count: number, keys: Float64Array): number | undefined;
  /** Computes one row by `watch` and keeps its answer or its fault. */
  exact(row: number, watch: Watch): void;
}

export interface DriverSizes {
  /** Rows that are read together: BLOCK, or more where most blocks would have few rows of each key. */
  readonly together?: number;
  /** Choice keys whose plans are remembered. */
  readonly mostKeys?: number;
}

/** What one run has to itself: the cells that it reads, their rows' choice keys, and, while it lasts, what it computes in. */
interface Run {
  readonly block: Block;
  readonly keys: Float64Array;
  scratch: Scratch;
}

/**
 * Computes one formula over many rows, to the same bits as row by row. It reads the rows, puts those of one choice key together
 * and computes them by the plans that are known; a row that is left then goes the exact way, and the plan learned from it is
 * tried on the others.
 */
export class ColumnDriver {
  private readonly plans: Plans;
  private readonly together: number;
  /** Blocks of runs that have ended. A run within a run gets one of its own. */
  private readonly idle: Run[] = [];

  constructor(
    private readonly columns: readonly ColumnInput[],
    { together = BLOCK, mostKeys = 200 }: DriverSizes = {},
  ) {
    this.together = together;
    this.plans = new Plans(columns, mostKeys);
  }

  run(source: RowSource): void {
    const scratch = borrowed();
    const run = this.idle.pop() ?? this.newRun(scratch);
    run.scratch = scratch;
    try {
      this.runAll(run, source);
    } finally {
      this.idle.push(run);
      giveBack(scratch);
    }
  }

  private newRun(scratch: Scratch): Run {
    const lines = this.columns.map(({ mark, shared = false }) => ({ mark, rows: shared ? BLOCK : this.together }));
    return { block: new Block(lines), keys: new Float64Array(this.together), scratch };
  }

  private runAll(run: Run, source: RowSource): void {
    const { together } = this;
    if (!source.begin(run.block)) {
      for (let row = 0; row < source.count; row += 1) source.exact(row, unheard);
      return;
    }
    for (let first = 0; first < source.count; first += together)
      this.runTogether(run, source, first, Math.min(together, source.count - first));
  }

  private runTogether(run: Run, source: RowSource, first: number, count: number): void {
    const { block, keys } = run;
    const key = source.read(block, first, count, keys);
    if (key === UNREAD) for (let k = 0; k < count; k += 1) source.exact(first + k, unheard);
    else if (key !== undefined && count <= BLOCK) this.runKey(run, source, first, key, { at: undefined, count });
    else {
      if (key !== undefined) keys.fill(key, 0, count);
      for (const [each, rows] of grouped(keys, count)) {
        if (each === UNREAD) for (const k of rows) source.exact(first + k, unheard);
        else
          for (let start = 0; start < rows.length; start += BLOCK) {
            const at = rows.subarray(start, start + BLOCK);
            this.runKey(run, source, first, each, { at, count: at.length });
          }
      }
    }
  }

  /** Rows of one choice key: first by the plans that are known, then by what is learned from each that remains. */
  private runKey({ block, scratch }: Run, source: RowSource, first: number, key: number, rows: Rows): void {
    let rest = rows;
    for (const plan of this.plans.of(key)) {
      rest = settle(plan, block, rest, scratch, first, source);
      if (rest.count > 0) continue;
      if (rows.count === 1) this.plans.prefer(key, plan);
      return;
    }
    while (rest.count > 0) {
      const at = rest.at?.slice(0, rest.count) ?? Uint16Array.from({ length: rest.count }, (_, row) => row);
      const plan = this.learn(source, first + (at[0] ?? 0), key);
      rest = { at: at.subarray(1), count: at.length - 1 };
      if (plan && rest.count > 0) rest = settle(plan, block, rest, scratch, first, source);
    }
  }

  /** Computes a row exactly, and gives back the plan of its way through the formula where that is new. */
  private learn(source: RowSource, row: number, key: number): Plan | undefined {
    if (!this.plans.hasRoom(key)) {
      source.exact(row, unheard);
      return undefined;
    }
    let heard: Trace | undefined;
    source.exact(row, (inputs, formula, fields) => {
      const { result, trace } = traced(inputs, formula, fields);
      heard = trace;
      return result;
    });
    return heard && this.plans.learn(key, heard);
  }
}

const unheard: Watch = (_, formula) => formula();

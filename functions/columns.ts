import {
  type Block,
  type CellReading,
  cellOf,
  isBlank,
  type Output,
  type RangeColumn,
  type RangePart,
  type RowSource,
  type Rows,
  readCell,
  readForAll,
  readRanges,
  UNREAD,
  type Watch,
} from "../src/index";
import { type Cell, cellsOf } from "./cell";
import type { ChoiceArgument, FigureArgument, Formula } from "./formula";
import type { Grid } from "./grid";
import { cellIn, type Spill } from "./spill";

/** One call's cells, argument by argument. */
export interface Call {
  readonly grids: readonly Grid[];
  readonly isRange: readonly boolean[];
  /** Every range is optional. Then a row of blank cells is a blank row, and not computed by their defaults. */
  readonly keepsBlanks: boolean;
}

/** A call of single cells, as one row; its answer stands in `answers` when it was run. Throws the row's fault. */
export class SingleCells<Row extends object> implements RowSource {
  readonly count = 1;
  answers: readonly Cell[] = [];

  constructor(
    private readonly formula: Formula<Row>,
    private readonly cells: readonly unknown[],
  ) {}

  begin(): boolean {
    return true;
  }

  read(block: Block): number {
    for (const { at, column, reading } of this.formula.figures)
      if (!readCell(block, column, this.cells[at], reading)) return UNREAD;
    let key = 0;
    for (const { at, words, digit } of this.formula.choices) {
      const number = words.of(this.cells[at]);
      if (number === UNREAD) return UNREAD;
      key += number * digit;
    }
    return key;
  }

  take(_: number, __: Rows, open: Uint8Array, outputs: readonly Output[]): void {
    if (open[0] !== 0) return;
    const [only] = outputs;
    this.answers =
      outputs.length === 1 && only !== undefined ? [cellIn(only, 0)] : outputs.map((output) => cellIn(output, 0));
  }

  exact(_: number, watch: Watch): void {
    this.answers = cellsOf(this.formula.exact((at) => this.cells[at], watch));
  }
}

/** A call over ranges: their cells one by one, with single cells that go with each. */
export class RangeCells<Row extends object> implements RowSource {
  readonly count: number;
  private readonly width: number;
  private readonly ranges: readonly RangeColumn[];
  private readonly ranged: readonly ChoiceArgument[];
  /** The choice key as far as single cells tell it; UNREAD where one of them says nothing readable. */
  private readonly sharedKey: number;

  /** @param exact computes the k-th cell of the ranges exactly */
  constructor(
    private readonly formula: Formula<Row>,
    private readonly call: Call,
    lead: Grid,
    private readonly spill: Spill,
    readonly exact: (row: number, watch: Watch) => void,
  ) {
    this.width = lead[0]?.length ?? 0;
    this.count = lead.length * this.width;
    this.ranges = formula.figures.flatMap((argument) =>
      call.isRange[argument.at]
        ? [{ column: argument.column, cells: call.grids[argument.at] ?? [], reading: this.readingInRange(argument) }]
        : [],
    );
    this.ranged = formula.choices.filter(({ at }) => call.isRange[at]);
    this.sharedKey = this.keyOfSingles();
  }

  begin(block: Block): boolean {
    const { grids, isRange } = this.call;
    return this.formula.figures.every(
      ({ at, column, reading }) => isRange[at] || readForAll(block, column, grids[at]?.[0]?.[0], reading, this.count),
    );
  }

  read(block: Block, first: number, count: number, keys: Float64Array): number | undefined {
    const { width, ranged, sharedKey } = this;
    const part = { row: Math.floor(first / width), column: first % width, width, count };
    readRanges(block, this.ranges, part);
    if (sharedKey === UNREAD) return UNREAD;
    const { odd } = block;
    const firstOdd = odd.indexOf(1);
    if (ranged.length === 0 && (firstOdd < 0 || firstOdd >= count)) return sharedKey;
    keys.fill(sharedKey, 0, count);
    for (const choice of ranged) this.addChoice(choice, part, keys, odd);
    for (let k = 0; k < count; k += 1) if (odd[k]) keys[k] = UNREAD;
    return undefined;
  }

  take(first: number, rows: Rows, open: Uint8Array, outputs: readonly Output[]): void {
    this.spill.take(first, rows, open, outputs);
  }

  private readingInRange({ reading }: FigureArgument): CellReading {
    return reading.kind === "figure" && this.call.keepsBlanks ? { ...reading, blank: Number.NaN } : reading;
  }

  private keyOfSingles(): number {
    let key = 0;
    for (const { at, reader, words, digit } of this.formula.choices) {
      if (this.call.isRange[at]) continue;
      const grid = this.call.grids[at];
      const number = words.of(reader.isList ? grid : grid?.[0]?.[0]);
      if (number === UNREAD) return UNREAD;
      key += number * digit;
    }
    return key;
  }

  /** Adds what the cells of one choice say to their rows' keys; a cell that says nothing readable makes its row odd. */
  private addChoice(choice: ChoiceArgument, part: RangePart, keys: Float64Array, odd: Uint8Array): void {
    const grid = this.call.grids[choice.at] ?? [];
    for (let k = 0; k < part.count; k += 1) {
      const cell = cellOf(grid, part, k);
      const number = this.call.keepsBlanks && isBlank(cell) ? UNREAD : choice.words.of(cell);
      if (number === UNREAD) odd[k] = 1;
      else keys[k] = (keys[k] ?? 0) + number * choice.digit;
    }
  }
}

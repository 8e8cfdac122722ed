import {
  BLOCK,
  Block,
  type Column,
  cellOf,
  columnNumber,
  isBlank,
  type Place,
  type Plan,
  type Reading,
  type Rows,
  readColumnMark,
  readColumnMarks,
  readColumns,
  settle,
  settleAll,
  type Taker,
} from "../src/index";
import type { ChoiceArgument, FigureArgument, Formula } from "./formula";
import type { Grid } from "./grid";
import { UNREAD } from "./words";

/** One call's cells, argument by argument. */
export interface Call {
  readonly grids: readonly Grid[];
  readonly isRange: readonly boolean[];
  /** With no required range, a row of blank optional cells is a blank row: not to be computed by their defaults. */
  readonly keepsBlanks: boolean;
}

/** Computes one row of the block exactly and keeps the result; with `words`, gives back a plan learned from it. */
export type Exact = (row: number, words: number | undefined) => Plan | undefined;

/** A formula over the rows of ranges, block by block. */
export class Columns<Row extends object> {
  private readonly block: Block;
  private readonly codes = new Float64Array(BLOCK);

  constructor(private readonly formula: Formula<Row>) {
    this.block = new Block(formula.figures.map(({ reader }) => ({ mark: reader.kind === "mark" })));
  }

  /** Computes one row of cells: `take` gets it, or `exact` is told what its choices say, where that can be read. */
  runOne(cells: readonly unknown[], take: Taker, exact: (words: number | undefined) => void): void {
    const words = this.readOne(cells);
    let rest: Rows = ONE_ROW;
    for (const plan of this.formula.plans.of(words)) {
      rest = settle(plan, this.block, rest, take);
      if (rest.count > 0) continue;
      this.formula.plans.prefer(words, plan);
      return;
    }
    exact(words === UNREAD ? undefined : words);
  }

  /** Reads the cells that go with every row. False where one is not to be computed with in columns. */
  begin({ grids, isRange }: Call, count: number): boolean {
    for (const argument of this.formula.figures) {
      const to = this.block.columns[argument.column];
      if (!to) continue;
      to.single = !isRange[argument.at];
      if (isRange[argument.at]) continue;
      if (!readFigure(grids[argument.at]?.[0]?.[0], argument, to)) return false;
      to.values.fill(to.values[0] ?? 0, 0, count);
      to.parts?.fill(to.parts[0] ?? 0, 0, count);
    }
    return true;
  }

  /** Computes a block's rows: `take` gets what columns decide, `exact` every other row. */
  run(call: Call, place: Place, take: Taker, exact: Exact): void {
    const { odd, columns } = this.block;
    odd.fill(0, 0, place.count);
    const readings: Reading[] = [];
    for (const { at, reader, column, blank } of this.formula.figures) {
      const grid = call.grids[at];
      const to = columns[column];
      if (!call.isRange[at] || !grid || !to) continue;
      if (reader.kind === "figure")
        readings.push({
          cells: grid,
          rule: reader.rule,
          blank: call.keepsBlanks ? Number.NaN : blank,
          values: to.values,
        });
      else if (to.parts) readColumnMarks(grid, place, to.values, to.parts, odd);
    }
    readColumns(readings, place, odd);
    for (const [words, rows] of this.groups(call, place)) this.runGroup(rows, words, take, exact);
    for (let row = odd.indexOf(1); row >= 0 && row < place.count; row = odd.indexOf(1, row + 1)) exact(row, undefined);
  }

  private runGroup(rows: Rows, words: number, take: Taker, exact: Exact): void {
    settleAll(this.formula.plans.of(words), this.block, rows, take, (row) => exact(row, words));
  }

  /** The rows to compute in columns, those of the same choices together; a choice that cannot be read makes its row odd. */
  private groups(call: Call, place: Place): Iterable<readonly [words: number, rows: Rows]> {
    const { odd } = this.block;
    const { count } = place;
    const { codes } = this;
    const ranged = this.formula.choices.filter(({ at }) => call.isRange[at]);
    const words = this.sharedWords(call);
    if (words === UNREAD) odd.fill(1, 0, count);
    const firstOdd = odd.indexOf(1);
    if (ranged.length === 0 && (firstOdd < 0 || firstOdd >= count)) return [[words, { at: undefined, count }]];
    codes.fill(words, 0, count);
    for (const choice of ranged) readWords(call, place, choice, codes, odd);
    const groups = new Map<number, { readonly at: Uint16Array; count: number }>();
    for (let row = 0; row < count; row += 1) {
      if (odd[row]) continue;
      const code = codes[row] ?? 0;
      const group = groups.get(code) ?? { at: new Uint16Array(BLOCK), count: 0 };
      groups.set(code, group);
      group.at[group.count] = row;
      group.count += 1;
    }
    return groups;
  }

  /** What the choices of single cells say, in the digits of their places; UNREAD where one says nothing. */
  private sharedWords({ grids, isRange }: Call): number {
    let words = 0;
    for (const { at, reader, words: said, digit } of this.formula.choices) {
      if (isRange[at]) continue;
      const grid = grids[at];
      const number = said.of(reader.isList ? grid : grid?.[0]?.[0]);
      if (number === UNREAD) return UNREAD;
      words += number * digit;
    }
    return words;
  }

  private readOne(cells: readonly unknown[]): number {
    for (const argument of this.formula.figures) {
      const to = this.block.columns[argument.column];
      if (to) to.single = false;
      if (!to || !readFigure(cells[argument.at], argument, to)) return UNREAD;
    }
    let words = 0;
    for (const { at, words: said, digit } of this.formula.choices) {
      const number = said.of(cells[at]);
      if (number === UNREAD) return UNREAD;
      words += number * digit;
    }
    return words;
  }
}

const ONE_ROW: Rows = { at: undefined, count: 1 };

/** Reads a cell into the first row of its column. False where the exact reading must look at it. */
function readFigure(cell: unknown, { reader, blank }: FigureArgument, to: Column): boolean {
  if (reader.kind === "mark") return to.parts !== undefined && readColumnMark(cell, 0, to.values, to.parts);
  const value = columnNumber(cell, reader.rule, blank);
  to.values[0] = value;
  return !Number.isNaN(value);
}

function readWords(call: Call, place: Place, choice: ChoiceArgument, codes: Float64Array, odd: Uint8Array): void {
  const grid = call.grids[choice.at] ?? [];
  for (let i = 0; i < place.count; i += 1) {
    const cell = cellOf(grid, place, i);
    const said = call.keepsBlanks && isBlank(cell) ? UNREAD : choice.words.of(cell);
    if (said === UNREAD) odd[i] = 1;
    else codes[i] = (codes[i] ?? 0) + said * choice.digit;
  }
}

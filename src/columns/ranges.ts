import type { Block } from "./block";
import { type Cells, type ColumnRule, columnNumber, type RangePart, type Reading, readColumns } from "./cells";
import { type MarkReading, readColumnMark, readColumnMarks } from "./markcells";

/** How the cells of a column are read. */
export type CellReading =
  | { readonly kind: "mark"; readonly as: MarkReading }
  | {
      readonly kind: "figure";
      readonly rule: ColumnRule;
      /** What a blank cell counts as; not a number where the exact way must look at it. */
      readonly blank: number;
    };

/** A range whose cells are read into a column of a block. */
export interface RangeColumn {
  readonly column: number;
  readonly cells: Cells;
  readonly reading: CellReading;
}

/** Reads one cell into the block's first row. False where only the exact way can read it. */
export function readCell(block: Block, column: number, cell: unknown, reading: CellReading): boolean {
  const to = block.columns[column];
  if (!to) return false;
  to.single = false;
  if (reading.kind === "mark")
    return to.parts !== undefined && readColumnMark(cell, 0, to.values, to.parts, block.words, reading.as);
  const value = columnNumber(cell, reading.rule, reading.blank);
  to.values[0] = value;
  return !Number.isNaN(value);
}

/** Reads a cell that goes with each of `count` rows. False where only the exact way can read it. */
export function readForAll(block: Block, column: number, cell: unknown, reading: CellReading, count: number): boolean {
  const to = block.columns[column];
  if (!to || !readCell(block, column, cell, reading)) return false;
  to.single = true;
  to.values.fill(to.values[0] ?? 0, 0, count);
  to.parts?.fill(to.parts[0] ?? 0, 0, count);
  return true;
}

/** Reads a part of ranges into the block; `block.odd` is 1 where only the exact way can read a row, else 0. */
export function readRanges(block: Block, ranges: readonly RangeColumn[], part: RangePart): void {
  block.odd.fill(0, 0, part.count);
  const figures: Reading[] = [];
  for (const { column, cells, reading } of ranges) {
    const to = block.columns[column];
    if (!to) continue;
    to.single = false;
    if (reading.kind === "figure") figures.push({ cells, ...reading, values: to.values });
    else if (to.parts) readColumnMarks(cells, part, to.values, to.parts, block.words, block.odd, reading.as);
  }
  readColumns(figures, part, block.odd);
}

import { dressAs } from "../paper";
import { contentOf, endsBlank, rule, type TableReading, type Written } from "./plannedtable";
import { keysOf, type TablePlan, type TypedCells } from "./tableplan";

/** Rows at a table's end that are to be filled. */
export interface NewRows {
  /** Index of the first of them in the table, from 0. */
  readonly first: number;
  readonly count: number;
  /** Whether the first one existed already, with all its columns to type into blank. */
  readonly isFree: boolean;
}

/**
 * Adds formatted rows at a table's end, all at once, so that the table grows only once. A last row whose columns to type into
 * are all blank is taken as the first of them. Columns of the person's own stay as Excel makes them.
 * @param count at least one
 */
export function growTable<K extends string>(
  context: Excel.RequestContext,
  plan: TablePlan<K>,
  reading: TableReading<K>,
  count: number,
): NewRows {
  const table = context.workbook.tables.getItem(plan.name);
  const isFree = endsBlank(plan, reading);
  const added = count - (isFree ? 1 : 0);
  if (added > 0) table.rows.add(undefined, nothing(added, reading.width));
  const rows = { first: reading.rows.length - (isFree ? 1 : 0), count, isFree };
  for (const key of keysOf(plan)) {
    const column = plan.columns[key];
    const cells = cellsOf(context, plan, reading, rows.first, count, key);
    cells.numberFormat = Array.from({ length: count }, () => [column.format ?? "General"]);
    dressAs(cells, column.look);
    rule(cells, column);
  }
  return rows;
}

/** Puts typed values into existing rows, with neighbouring columns as one block. */
export function putTyped<K extends string>(
  context: Excel.RequestContext,
  plan: TablePlan<K>,
  reading: TableReading<K>,
  first: number,
  rows: readonly TypedCells<K>[],
  keys: readonly K[],
): void {
  for (const run of runsOf(keys, reading)) {
    const [left] = run;
    if (left === undefined) continue;
    const cells = cellsOf(context, plan, reading, first, rows.length, left).getResizedRange(0, run.length - 1);
    cells.values = rows.map((typed) => run.map((key) => contentOf(typed[key] ?? "")));
  }
}

/** Puts a plan's formulas into existing rows. */
export function putRowFormulas<K extends string>(
  context: Excel.RequestContext,
  plan: TablePlan<K>,
  reading: TableReading<K>,
  first: number,
  count: number,
  written: Written,
): void {
  const keys = keysOf(plan).filter((key) => plan.columns[key].formula !== undefined);
  for (const run of runsOf(keys, reading)) {
    const [left] = run;
    if (left === undefined) continue;
    const line = run.map((key) => written(plan.columns[key].formula ?? ""));
    const cells = cellsOf(context, plan, reading, first, count, left).getResizedRange(0, run.length - 1);
    cells.formulas = Array.from({ length: count }, () => line);
  }
  context.workbook.tables
    .getItem(plan.name)
    .getDataBodyRange()
    .getCell(first, 0)
    .getResizedRange(count - 1, 0)
    .format.autofitRows();
}

/** A column's cells in some rows of the table. */
function cellsOf<K extends string>(
  context: Excel.RequestContext,
  plan: TablePlan<K>,
  { places }: TableReading<K>,
  first: number,
  count: number,
  key: K,
): Excel.Range {
  const body = context.workbook.tables.getItem(plan.name).getDataBodyRange();
  return body.getCell(first, places[key]).getResizedRange(count - 1, 0);
}

/** Runs of columns that are side by side in the table, whatever the person has moved. */
function runsOf<K extends string>(keys: readonly K[], { places }: TableReading<K>): readonly (readonly K[])[] {
  const runs: K[][] = [];
  for (const key of [...keys].sort((a, b) => places[a] - places[b])) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    if (run && last !== undefined && places[last] + 1 === places[key]) run.push(key);
    else runs.push([key]);
  }
  return runs;
}

/** Blank rows. Null leaves a cell to Excel, which fills the person's own columns as it would for a row that they add. */
function nothing(rows: number, columns: number): string[][] {
  return Array.from({ length: rows }, () => Array<null>(columns).fill(null)) as unknown as string[][];
}

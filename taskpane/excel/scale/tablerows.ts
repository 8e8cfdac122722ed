import { dressAs } from "../paper";
import { contentOf, endsBlank, rule, type TableReading, type Written } from "./plannedtable";
import { keysOf, type TablePlan, type TypedCells } from "./tableplan";

/**
 * Puts many rows at a table's end, a column at a time, so that it takes no longer by the row. A last row whose columns to type
 * into are all blank is taken for the first of them. Columns of the person's own stay as Excel makes them.
 * @param rows at least one
 */
export function putRows<K extends string>(
  context: Excel.RequestContext,
  plan: TablePlan<K>,
  reading: TableReading<K>,
  rows: readonly TypedCells<K>[],
  written: Written,
): void {
  const table = context.workbook.tables.getItem(plan.name);
  const isFree = endsBlank(plan, reading);
  const added = rows.length - (isFree ? 1 : 0);
  if (added > 0) table.rows.add(undefined, nothing(added, reading.width));
  const first = reading.rows.length - (isFree ? 1 : 0);
  const body = table.getDataBodyRange();
  for (const key of keysOf(plan)) {
    const column = plan.columns[key];
    const { formula } = column;
    const cells = body.getCell(first, reading.places[key]).getResizedRange(rows.length - 1, 0);
    cells.numberFormat = rows.map(() => [column.format ?? "General"]);
    if (formula) cells.formulas = rows.map(() => [written(formula)]);
    else cells.values = rows.map((typed) => [contentOf(typed[key] ?? "")]);
    dressAs(cells, column.look);
    rule(cells, column);
  }
  body
    .getCell(first, 0)
    .getResizedRange(rows.length - 1, 0)
    .format.autofitRows();
}

/** Rows that say nothing: null leaves a cell to Excel, which fills the person's own columns as it would for a row they add. */
function nothing(rows: number, columns: number): string[][] {
  return Array.from({ length: rows }, () => Array<null>(columns).fill(null)) as unknown as string[][];
}

import { run, WorkbookFault } from "../run";
import { askToWrite } from "../tables/askedtable";
import type { TableReading } from "../tables/plannedtable";
import { typedKeys } from "../tables/tableplan";
import { type AskingCells, isFilled } from "./askingbook";
import { deletePlaces, placesOf, rowFingerprint } from "./askingrows";
import { ASKING_PLAN, ASKING_TABLE, type AskingTableColumn as Column } from "./askingtable";

/** The result of taking a list out again. */
export interface ListOut {
  readonly out: number;
  /** Rows that were changed since; they stay. */
  readonly stay: number;
  /** Whether the table was removed too, since it was added for that list. */
  readonly tableGone: boolean;
}

/**
 * Takes a list out again. Rows that were changed since, or have more in columns of the person's own, belong to the person: they
 * stay, and are no longer part of the list.
 * Errors: WorkbookFault where none of its rows is there any more.
 */
export async function takeListOut(list: number): Promise<ListOut> {
  return run(async (context) => {
    const asked = askToWrite(context, ASKING_PLAN);
    await context.sync();
    const table = asked();
    const reading = table.isMissing ? undefined : table.read();
    const places = reading ? placesOf(reading.rows, list) : [];
    if (!reading || places.length === 0)
      throw new WorkbookFault(`No row of list ${list} is in the table ${ASKING_TABLE} any more.`);
    const fingerprints = await Promise.all(reading.rows.map(rowFingerprint));
    const isAsTaken = (place: number) =>
      fingerprints[place] === reading.rows[place]?.taken && reading.hasMore[place] === false;
    const same = places.filter(isAsTaken);
    const changed = places.filter((place) => !same.includes(place));
    const isAll = reading.rows.every((row, place) => same.includes(place) || !isFilled(row));
    if (isAll && list === 1 && (await isOursAlone(context, reading))) {
      context.workbook.worksheets.getItem(reading.sheet).delete();
      await context.sync();
      return { out: same.length, stay: 0, tableGone: true };
    }
    const body = context.workbook.tables.getItem(ASKING_TABLE).getDataBodyRange();
    for (const place of changed) {
      for (const key of ["list", "taken"] as const) body.getCell(place, reading.places[key]).clear("Contents");
    }
    await deleteRows(context, reading, same);
    return { out: same.length, stay: changed.length, tableGone: false };
  });
}

/** The lists that rows of the table belong to, newest first, with their number of rows. */
export function listsOf(rows: readonly AskingCells[]): readonly { readonly list: number; readonly rows: number }[] {
  const counts = new Map<number, number>();
  for (const { list } of rows) if (typeof list === "number" && list > 0) counts.set(list, 1 + (counts.get(list) ?? 0));
  return [...counts].map(([list, count]) => ({ list, rows: count })).sort((a, b) => b.list - a.list);
}

/** Whether the sheet holds only what the pane put there: its heading and the table with its own columns. */
async function isOursAlone(
  context: Excel.RequestContext,
  { sheet, width, rows, left }: TableReading<Column>,
): Promise<boolean> {
  const used = context.workbook.worksheets.getItem(sheet).getUsedRange(true);
  used.load("rowIndex,rowCount,columnIndex,columnCount");
  const table = context.workbook.tables.getItem(ASKING_TABLE).getRange();
  table.load("rowIndex");
  await context.sync();
  const columns = Object.keys(ASKING_PLAN.columns).length;
  return (
    width === columns &&
    used.columnIndex >= left &&
    used.columnIndex + used.columnCount <= left + columns &&
    used.rowIndex + used.rowCount <= table.rowIndex + 1 + rows.length
  );
}

/** Deletes rows from the last one up. A table must keep one row, so the last one left is emptied. */
async function deleteRows(
  context: Excel.RequestContext,
  reading: TableReading<Column>,
  places: readonly number[],
): Promise<void> {
  const kept = places.length === reading.rows.length ? places[0] : undefined;
  await deletePlaces(
    context,
    places.filter((place) => place !== kept),
  );
  if (kept === undefined) return;
  const row = context.workbook.tables.getItem(ASKING_TABLE).getDataBodyRange().getRow(kept);
  for (const key of typedKeys(ASKING_PLAN)) row.getCell(0, reading.places[key]).clear("Contents");
  await context.sync();
}

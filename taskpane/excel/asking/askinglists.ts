import { isBlank, type SeenAsking } from "../../../src/index";
import { printOf } from "../catalogue/additions";
import { dateSerial } from "../fields";
import { locale } from "../host";
import { paperSizeFor } from "../paper";
import { run, WorkbookFault } from "../run";
import { askToWrite, takeBack } from "../scale/askedtable";
import { beginTable, begunReading, endsBlank, type TableReading, type Written } from "../scale/plannedtable";
import { type TypedCells, typedKeys } from "../scale/tableplan";
import { putRows } from "../scale/tablerows";
import { freeSheetName } from "../sheetname";
import { type AskingCells, isFilled } from "./askingbook";
import { ASKING_PLAN, ASKING_TABLE, type AskingTableColumn as Column } from "./askingtable";

/** A price as it is taken in. */
export interface TakenAsking {
  readonly seen: SeenAsking;
  /** As it is written. */
  readonly mark: string;
}

/** A list that was taken in: the number its rows bear, and how many they are. */
export interface TakenList {
  readonly list: number;
  readonly rows: number;
  readonly sheet: string;
}

/** What came of taking a list out again. */
export interface ListOut {
  readonly out: number;
  /** Rows that were changed since, and stay. */
  readonly stay: number;
  /** Whether the table, which that list had begun, is gone too. */
  readonly tableGone: boolean;
}

/** Rows that are written or deleted at once, since Excel on the web takes 5 MB a request. */
const BLOCK = 500;
const asItIs: Written = (formula) => formula;
/** What a person types, or the pane for them; the last two columns are the pane's own. */
const SAID = typedKeys(ASKING_PLAN).filter((key) => key !== "list" && key !== "taken");

/** Writes a list at the end of the table of asking prices, and begins that where there is none. @param askings at least one */
export async function takeListIn(askings: readonly TakenAsking[]): Promise<TakenList> {
  const rows = await Promise.all(askings.map(withPrint));
  let begun: readonly string[] = [];
  let half: number | undefined;
  try {
    return await run(async (context) => {
      const { worksheets, protection } = context.workbook;
      worksheets.load("items/name");
      protection.load("protected");
      const asked = askToWrite(context, ASKING_PLAN);
      await context.sync();
      const names = new Set(worksheets.items.map(({ name }) => name.toLowerCase()));
      const table = asked();
      if (table.isMissing && protection.protected) {
        throw new WorkbookFault(
          "The workbook is protected against new sheets. Take that protection off (Review, Protect Workbook) and try again.",
        );
      }
      let reading = table.isMissing ? begin(context, freeSheetName(ASKING_PLAN.sheet, names)) : table.read();
      if (table.isMissing) {
        begun = [reading.sheet];
        // Excel refuses a formula over a table that is not there yet.
        await context.sync();
      }
      const list = 1 + Math.max(0, ...reading.rows.map((row) => Number(row.list) || 0));
      const marked = rows.map((row) => ({ ...row, list }));
      for (let at = 0; at < marked.length; at += BLOCK) {
        const block = marked.slice(at, at + BLOCK);
        putRows(context, ASKING_PLAN, reading, block, asItIs);
        await context.sync();
        half = list;
        reading = grownBy(reading, block);
      }
      return { list, rows: rows.length, sheet: reading.sheet };
    });
  } catch (error) {
    // What went wrong first is what the person must hear, also where taking back fails.
    if (begun.length > 0) await takeBack(begun).catch(() => undefined);
    else if (half !== undefined) await takeListOut(half).catch(() => undefined);
    throw error;
  }
}

/**
 * Takes a list out again. Rows that say something else by now, or more in columns of the person's own, are theirs: they stay, and no longer belong to the list.
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
    const prints = await Promise.all(reading.rows.map(printOfCells));
    const isAsTaken = (place: number) =>
      prints[place] === reading.rows[place]?.taken && reading.hasMore[place] === false;
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

function begin(context: Excel.RequestContext, name: string): TableReading<Column> {
  beginTable(context.workbook.worksheets.add(name), ASKING_PLAN, paperSizeFor(locale()));
  return begunReading(ASKING_PLAN, name);
}

function grownBy(reading: TableReading<Column>, block: readonly TypedCells<Column>[]): TableReading<Column> {
  const kept = endsBlank(ASKING_PLAN, reading) ? reading.rows.slice(0, -1) : reading.rows;
  const rows = [...kept, ...block.map((row) => ({ ...(row as AskingCells) }))];
  return { ...reading, rows, hasMore: rows.map((_, place) => reading.hasMore[place] ?? false) };
}

async function withPrint({ seen, mark }: TakenAsking): Promise<TypedCells<Column>> {
  const { date, source, kind, hollow, weight, price, per, currency, exchange, own, spot } = seen;
  const typed: TypedCells<Column> = {
    date: date === "" ? "" : dateSerial(date),
    source,
    kind,
    mark,
    solidity: hollow === undefined ? "" : hollow ? "hollow" : "solid",
    weight: weight ? weight.grams.toNumber() : "",
    price: price.toNumber(),
    per,
    currency,
    exchange: currency === own ? "" : exchange.toNumber(),
    spot: spot ? spot.amount.toNumber() : "",
  };
  return { ...typed, taken: await printOfCells(typed) };
}

/** Of what a row says: the same as long as nobody changed it. */
async function printOfCells(row: Readonly<Partial<Record<Column, unknown>>>): Promise<string> {
  const said = SAID.map((key) => (isBlank(row[key]) ? "" : row[key]));
  return (await printOf(said)).slice(0, 12);
}

function placesOf(rows: readonly AskingCells[], list: number): readonly number[] {
  return rows.flatMap((row, place) => (row.list === list ? [place] : []));
}

/** Whether nothing stands on the sheet but what the pane begins it with and the table, in its own columns. */
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

/** Deletes rows from the last one up; a table keeps one row at least, which is emptied. */
async function deleteRows(
  context: Excel.RequestContext,
  reading: TableReading<Column>,
  places: readonly number[],
): Promise<void> {
  const table = context.workbook.tables.getItem(ASKING_TABLE);
  const kept = places.length === reading.rows.length ? places[0] : undefined;
  const going = places.filter((place) => place !== kept).toSorted((a, b) => b - a);
  for (let at = 0; at < going.length; at += BLOCK) {
    for (const place of going.slice(at, at + BLOCK)) table.rows.getItemAt(place).delete();
    await context.sync();
  }
  if (kept === undefined) return;
  const row = table.getDataBodyRange().getRow(kept);
  for (const key of typedKeys(ASKING_PLAN)) row.getCell(0, reading.places[key]).clear("Contents");
  await context.sync();
}

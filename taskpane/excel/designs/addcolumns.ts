import { type LineKey, minorDigits, type PricedLine, type Rates, ROW_LABELS } from "../../../src/index";
import { addressOf } from "../address";
import { dressAs } from "../paper";
import { run, WorkbookFault } from "../run";
import { type Addition, noteAddition } from "../tables/additions";
import { type Before, clearColumns } from "../tables/cellsbefore";
import { numberFormat } from "../template/fields";
import {
  type AddedColumn,
  CAST,
  columnFormulas,
  FINISHED,
  LANDED,
  LINKS,
  type PlacedField,
  PRICE,
  RECKONED,
} from "./columnformulas";
import type { Designs } from "./designs";

/** Columns to be added beside designs. */
export interface ColumnsPlan {
  readonly designs: Designs;
  /** The columns in use: place in the designs, field, unit. */
  readonly fields: readonly { readonly place: number; readonly key: LineKey; readonly unit: string | undefined }[];
  /** What the library says of each row: a row that it refuses gets no formulas. */
  readonly priced: readonly PricedLine[];
  readonly rates: Rates;
  /** Told after each block of rows; throws to call the work off. */
  readonly wrote: (share: number) => Promise<void>;
}

/** Rows written at once: about a megabyte, a fifth of what Excel on the web takes in one request. */
const BLOCK = 250;
/** Milliseconds between two looks for values that are still to come, and how often. */
const PAUSE = 250;
const LOOKS = 40;

/**
 * Adds columns of formulas to the right of the designs, one column between, or where the person has something there, right of
 * all that is on the sheet. What Excel makes of them is compared with the library row by row; on a difference, a fault or a
 * cancel they are taken back. Syncs: about six, and one for every 250 rows.
 */
export async function addColumns(plan: ColumnsPlan): Promise<Addition> {
  const { designs, fields, priced, rates, wrote } = plan;
  const strange = fields.filter(({ key }) => !RECKONED.includes(key)).map(({ key }) => ROW_LABELS[key]);
  if (strange.length > 0) {
    throw new WorkbookFault(
      `Columns of formulas do not reckon with ${strange.join(", ")}. Make the price list instead, which does, or set those columns to not used.`,
    );
  }
  return run(async (context) => {
    const sheet = context.workbook.worksheets.getItem(designs.sheetId);
    const rows = designs.cells.length;
    const placed = new Map(
      fields.map(({ place, key, unit }): [LineKey, PlacedField] => [key, { column: designs.column + place, unit }]),
    );
    const width = columnFormulas(placed, 0, 0).length;
    const first = await findRoom(context, sheet, designs, width);
    const columns = columnFormulas(placed, first, minorDigits(rates.currency));
    const block = sheet.getRangeByIndexes(designs.row, first, rows, width);
    const before = await lookBefore(context, block, width);
    const name = `CurbwrightAdded_${crypto.randomUUID().replaceAll("-", "")}`;
    const area = `${addressOf(designs.row, first)}:${addressOf(designs.row + rows - 1, first + width - 1)}`;
    try {
      dressColumns(sheet, columns, designs, first, before, rates);
      for (let at = 0; at < rows; at += BLOCK) {
        const count = Math.min(BLOCK, rows - at);
        const part = sheet.getRangeByIndexes(designs.row + at, first, count, width);
        part.formulas = Array.from({ length: count }, (_, index) => contentsOf(columns, at + index, designs, priced));
        await context.sync();
        await wrote((at + count) / rows);
      }
      await compare(context, sheet, area, designs, priced);
      context.workbook.names.add(name, block).visible = false;
      return await noteAddition(context, {
        what: "columns",
        name,
        worksheet: sheet,
        from: designs.sheetId,
        follows: undefined,
        areas: [area],
        extent: undefined,
        before,
      });
    } catch (error) {
      // What went wrong first is what the person must hear, also where taking back fails.
      clearColumns(sheet, { areas: [area], before });
      context.workbook.names.getItemOrNullObject(name).delete();
      await context.sync().catch(() => undefined);
      throw error;
    }
  });
}

/** The headers for the first row, formulas for a row that can be priced, nothing for others. */
function contentsOf(
  columns: readonly AddedColumn[],
  at: number,
  { row }: Designs,
  priced: readonly PricedLine[],
): string[] {
  if (at === 0) return columns.map(({ header }) => header);
  return columns.map(({ formula }) => (priced[at - 1]?.kind === "priced" ? formula(row + at + 1) : ""));
}

/** Where so many columns and one between are free: beside the designs, or right of everything. */
async function findRoom(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  { row, column, cells }: Designs,
  width: number,
): Promise<number> {
  const beside = column + (cells[0]?.length ?? 1);
  const wanted = sheet.getRangeByIndexes(row, beside, cells.length, width + 1);
  wanted.load("formulas");
  const used = sheet.getUsedRange(true);
  used.load("columnIndex,columnCount");
  await context.sync();
  const isFree = wanted.formulas.every((cellsOfRow) => cellsOfRow.every((cell: unknown) => cell === ""));
  return (isFree ? beside : used.columnIndex + used.columnCount) + 1;
}

/** How the cells look now, so that it can be brought back. */
async function lookBefore(context: Excel.RequestContext, block: Excel.Range, width: number): Promise<Before> {
  block.load("numberFormat,format/fill/color,format/font/bold,format/font/color");
  const columns = Array.from({ length: width }, (_, index) => block.getColumn(index));
  for (const column of columns) column.load("format/columnWidth");
  await context.sync();
  const { fill, font } = block.format;
  const usual =
    block.numberFormat.every((row) => row.every((format: unknown) => format === "General")) &&
    ["#FFFFFF", ""].includes(fill.color ?? "mixed") &&
    font.bold === false &&
    font.color === "#000000";
  return {
    widths: columns.map((column) => column.format.columnWidth),
    numberFormats: usual ? undefined : block.numberFormat.map((row) => row.map(String)),
  };
}

function dressColumns(
  sheet: Excel.Worksheet,
  columns: readonly AddedColumn[],
  { row, cells }: Designs,
  first: number,
  before: Before,
  rates: Rates,
): void {
  const formats: Readonly<Record<AddedColumn["shown"], string>> = {
    count: "#,##0",
    weight: "#,##0.00",
    money: numberFormat(minorDigits(rates.currency)),
    share: "0.0%",
  };
  const formatRow = columns.map(({ shown }) => formats[shown]);
  const body = sheet.getRangeByIndexes(row + 1, first, cells.length - 1, columns.length);
  body.numberFormat = Array.from({ length: cells.length - 1 }, () => formatRow);
  columns.forEach(({ header, shown }, index) => {
    const cell = sheet.getRangeByIndexes(row, first + index, 1, 1);
    cell.format.columnWidth = Math.max(before.widths[index] ?? 0, header.length * 5.6 + 10, shown === "money" ? 78 : 0);
    // Cells that looked otherwise keep the person's look.
    if (!before.numberFormats) dressAs(cell, "headRight");
  });
}

/** Whether Excel makes of every formula what the library says; a value that never comes is not held against it. */
async function compare(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  area: string,
  { row }: Designs,
  priced: readonly PricedLine[],
): Promise<void> {
  for (let look = 0; look < LOOKS; look += 1) {
    // Its cells' values are asked for once everything is calculated.
    sheet.getUsedRange();
    const range = sheet.getRange(area);
    range.load("values");
    await context.sync();
    const body = range.values.slice(1);
    if (body.some((cells) => cells.some((cell: unknown) => cell === "#BUSY!" || cell === "#GETTING_DATA"))) {
      await new Promise((resolve) => setTimeout(resolve, PAUSE));
      continue;
    }
    const wrong = priced.findIndex((line, index) => line.kind === "priced" && !agrees(line, body[index] ?? []));
    if (wrong >= 0) {
      throw new WorkbookFault(
        `In row ${row + wrong + 2} the formulas do not give what the price list gives, so the columns were taken back. Make the price list instead.`,
      );
    }
    return;
  }
}

function agrees({ sheet }: Extract<PricedLine, { kind: "priced" }>, cells: readonly unknown[]): boolean {
  const exactly = cells[LINKS] === sheet.line.links.toNumber() && cells[PRICE] === sheet.price.amount.toNumber();
  return (
    exactly &&
    near(cells[FINISHED], sheet.finishedWeight.grams.toNumber()) &&
    near(cells[CAST], sheet.castWeight.grams.toNumber()) &&
    near(cells[LANDED], sheet.landed.amount.toNumber())
  );
}

/** The rounding of a few operations on doubles, each within 2^-53. */
function near(cell: unknown, wanted: number): boolean {
  return typeof cell === "number" && Math.abs(cell - wanted) <= 1e-11 * Math.max(1, Math.abs(wanted));
}

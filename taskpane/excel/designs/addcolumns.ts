import { figureOf, type PricedLine, Quotient, type Rates } from "../../../src/index";
import { addressOf } from "../address";
import { dressAs } from "../paper";
import { findRatesBlock } from "../rates/ratesblock";
import { run, WorkbookFault } from "../run";
import { type Added, noteAddition } from "../tables/additions";
import { type Before, clearColumns } from "../tables/cellsbefore";
import { ADDED_COLUMNS, type ColumnsSource, columnFormula } from "./columnformulas";
import type { Designs } from "./designs";
import { digitsOf, formatOf } from "./pricelist";

/** Columns to be added beside designs. */
export interface ColumnsPlan extends Omit<ColumnsSource, "rates"> {
  /** What the library says of each row: an empty one gets no formulas. */
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
 * cancel they are taken back. Syncs: about eight, and one for every 250 rows.
 */
export async function addColumns(plan: ColumnsPlan): Promise<Added> {
  const { designs, priced, wrote } = plan;
  return run(async (context) => {
    const block = await findRatesBlock(context);
    const source = { ...plan, rates: block.address };
    const sheet = context.workbook.worksheets.getItem(designs.sheetId);
    const rows = designs.cells.length;
    const width = ADDED_COLUMNS.length;
    const first = await findRoom(context, sheet, designs, width);
    const added = sheet.getRangeByIndexes(designs.row, first, rows, width);
    const before = await lookBefore(context, added, width);
    const name = `CurbwrightAdded_${crypto.randomUUID().replaceAll("-", "")}`;
    const area = `${addressOf(designs.row, first)}:${addressOf(designs.row + rows - 1, first + width - 1)}`;
    try {
      dressColumns(sheet, designs, first, before, digitsOf(block.reading.values.currency));
      for (let at = 0; at < rows; at += BLOCK) {
        const count = Math.min(BLOCK, rows - at);
        const part = sheet.getRangeByIndexes(designs.row + at, first, count, width);
        part.formulas = Array.from({ length: count }, (_, index) => contentsOf(at + index, source, priced));
        await context.sync();
        await wrote((at + count) / rows);
      }
      await compare(context, sheet, area, designs, priced);
      context.workbook.names.add(name, added).visible = false;
      return await noteAddition(context, {
        what: "columns",
        name,
        worksheet: sheet,
        from: designs.sheetId,
        follows: undefined,
        areas: [area],
        extent: undefined,
        before,
        headRow: designs.row,
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

/** The headers for the first row, formulas for a design, nothing for an empty row. One that is refused says why in its own cells. */
function contentsOf(at: number, source: ColumnsSource, priced: readonly PricedLine[]): string[] {
  if (at === 0) return ADDED_COLUMNS.map(({ header }) => header);
  const kind = priced[at - 1]?.kind ?? "empty";
  return ADDED_COLUMNS.map(({ column }) =>
    kind === "empty" ? "" : columnFormula(column, source, source.designs.row + at + 1),
  );
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
  { row, cells }: Designs,
  first: number,
  before: Before,
  digits: number,
): void {
  const formats = ADDED_COLUMNS.map(({ column }) => formatOf(column, digits));
  const body = sheet.getRangeByIndexes(row + 1, first, cells.length - 1, ADDED_COLUMNS.length);
  body.numberFormat = Array.from({ length: cells.length - 1 }, () => formats);
  ADDED_COLUMNS.forEach(({ column, header }, index) => {
    const cell = sheet.getRangeByIndexes(row, first + index, 1, 1);
    const least = column === "landed" || column === "price" ? 78 : 0;
    cell.format.columnWidth = Math.max(before.widths[index] ?? 0, header.length * 5.6 + 10, least);
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

function agrees(line: Extract<PricedLine, { kind: "priced" }>, cells: readonly unknown[]): boolean {
  return ADDED_COLUMNS.every(({ column }, at) => {
    const figure = figureOf(line, column);
    return cells[at] === (figure instanceof Quotient ? figure.toNumber() : (figure ?? ""));
  });
}

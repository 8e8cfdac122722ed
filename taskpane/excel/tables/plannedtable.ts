import { isBlank } from "../../../src/index";
import { columnLetters } from "../address";
import { asText, dressAs, type Look, type PaperCell, type PaperSize, putContents } from "../paper";
import { WorkbookFault } from "../run";
import { keysOf, overColumns, type TableColumn, type TablePlan, type TypedCells, typedKeys } from "./tableplan";

/** The rows of a table, and the place of each column, counted from its left edge. */
export interface TableReading<K extends string> {
  readonly places: Readonly<Record<K, number>>;
  readonly sheet: string;
  /** The sheet's column of its left edge, counted from 0. */
  readonly left: number;
  /** How many columns it has, the person's own among them. */
  readonly width: number;
  readonly rows: readonly Readonly<Record<K, unknown>>[];
  /** For each row, whether columns of the person's own hold something. */
  readonly hasMore: readonly boolean[];
}

/** Turns a formula of a plan into the one that is written into a cell. */
export type Written = (formula: string) => string;

const HEADER_ROW = 3;

/**
 * Asks for a table along with whatever else a batch reads; the answer is ready after its sync.
 * The answer is undefined where there is no table, and throws a WorkbookFault where a column of it is gone.
 */
export function askTable<K extends string>(
  context: Excel.RequestContext,
  plan: TablePlan<K>,
): () => TableReading<K> | undefined {
  const table = context.workbook.tables.getItemOrNullObject(plan.name);
  table.load("name");
  const all = table.getRange();
  all.load("values,columnIndex");
  const { worksheet } = table;
  worksheet.load("name");
  return () =>
    table.isNullObject
      ? undefined
      : {
          ...readingOf(plan, all.values),
          sheet: worksheet.name,
          left: all.columnIndex,
          width: all.values[0]?.length ?? 0,
        };
}

/**
 * Adds a table on its own empty sheet, with one blank row. `putFormulas` writes its formulas later: Excel refuses a formula over
 * a table that does not exist yet.
 */
export function beginTable<K extends string>(sheet: Excel.Worksheet, plan: TablePlan<K>, size: PaperSize): void {
  const keys = keysOf(plan);
  const columns = keys.map((key) => plan.columns[key]);
  putContents(sheet, {
    widths: columns.map((column) => column.width),
    rows: [
      [{ content: plan.sheet, look: "title" }],
      ...plan.lead.map((line): PaperCell[] => [{ content: line, look: "small" }]),
      columns.map((column) => ({ content: column.header, look: headLook(column) })),
      columns.map(({ format, look }) => ({ content: "", look, ...(format ? { format } : {}) })),
    ],
  });
  const table = sheet.tables.add(sheet.getRangeByIndexes(HEADER_ROW, 0, 2, columns.length), true);
  table.name = plan.name;
  table.style = "TableStyleLight1";
  table.showBandedRows = false;
  columns.forEach((column, index) => {
    rule(sheet.getRangeByIndexes(HEADER_ROW + 1, index, 1, 1), column);
  });
  sheet.freezePanes.freezeRows(HEADER_ROW + 1);
  sheet.pageLayout.paperSize = size === "A4" ? Excel.PaperType.a4 : Excel.PaperType.letter;
  sheet.pageLayout.orientation = Excel.PageOrientation.landscape;
  sheet.pageLayout.zoom = { horizontalFitToPages: 1 };
  // No print area: it would not grow with the table.
  sheet.pageLayout.setPrintTitleRows(`$${HEADER_ROW + 1}:$${HEADER_ROW + 1}`);
}

/** Writes the formulas of a table that was just added. */
export function putFormulas<K extends string>(sheet: Excel.Worksheet, plan: TablePlan<K>, written: Written): void {
  keysOf(plan).forEach((key, index) => {
    const { formula } = plan.columns[key];
    if (formula) sheet.getRangeByIndexes(HEADER_ROW + 1, index, 1, 1).formulas = [[written(formula)]];
  });
}

/** The reading of a table that was just added. */
export function begunReading<K extends string>(plan: TablePlan<K>, sheet: string): TableReading<K> {
  const keys = keysOf(plan);
  const blank = Object.fromEntries(keys.map((key) => [key, ""])) as Record<K, unknown>;
  const places = Object.fromEntries(keys.map((key, place) => [key, place])) as Record<K, number>;
  return { places, sheet, left: 0, width: keys.length, rows: [blank], hasMore: [false] };
}

/**
 * Puts a row at the table's end, cell by cell: columns of the person's own stay as Excel makes them. A last row whose
 * columns to type into are all blank is taken instead.
 */
export function putRow<K extends string>(
  context: Excel.RequestContext,
  plan: TablePlan<K>,
  reading: TableReading<K>,
  typed: TypedCells<K>,
  written: Written,
): void {
  const table = context.workbook.tables.getItem(plan.name);
  const row = endsBlank(plan, reading)
    ? table.getDataBodyRange().getRow(reading.rows.length - 1)
    : table.rows.add().getRange();
  for (const key of keysOf(plan)) {
    const column = plan.columns[key];
    const cell = row.getCell(0, reading.places[key]);
    cell.numberFormat = [[column.format ?? "General"]];
    if (column.formula) cell.formulas = [[written(column.formula)]];
    else if (typed[key] !== undefined) cell.values = [[contentOf(typed[key])]];
    dressAs(cell, column.look);
    rule(cell, column);
  }
  row.format.autofitRows();
}

/** Whether the last row of a table is free for the next entry. */
export function endsBlank<K extends string>(plan: TablePlan<K>, { rows }: TableReading<K>): boolean {
  const last = rows.at(-1);
  return last !== undefined && typedKeys(plan).every((key) => isBlank(last[key]));
}

/** How formulas over a table are written on other sheets: with whole columns of its sheet. */
export function writtenOver<K extends string>(plan: TablePlan<K>, { sheet, left, places }: TableReading<K>): Written {
  const name = `'${sheet.replaceAll("'", "''")}'`;
  return (formula) =>
    overColumns(formula, plan, (key) => {
      const letters = columnLetters(left + places[key]);
      return `${name}!$${letters}:$${letters}`;
    });
}

/** Removes the last row that still says what was typed; false where none does. */
export function takeRowOut<K extends string>(
  context: Excel.RequestContext,
  plan: TablePlan<K>,
  reading: TableReading<K>,
  typed: TypedCells<K>,
): boolean {
  const index = reading.rows.findLastIndex((row) =>
    typedKeys(plan).every((key) => sameCell(row[key], typed[key] ?? "")),
  );
  if (index < 0) return false;
  const table = context.workbook.tables.getItem(plan.name);
  if (reading.rows.length > 1) {
    table.rows.getItemAt(index).delete();
    return true;
  }
  // A table must keep one row, so the last one left is emptied.
  const row = table.getDataBodyRange().getRow(index);
  for (const key of typedKeys(plan)) row.getCell(0, reading.places[key]).clear("Contents");
  return true;
}

/** What is written into a cell that a person could type into. */
export function contentOf(content: string | number): string | number {
  return typeof content === "string" ? asText(content) : content;
}

function sameCell(cell: unknown, typed: string | number): boolean {
  return typeof typed === "number" ? cell === typed : (isBlank(cell) ? "" : String(cell)) === typed;
}

/** Sets the list of words that a column's cells are chosen from. */
export function rule(cell: Excel.Range, { choices }: TableColumn): void {
  if (choices) cell.dataValidation.rule = { list: { inCellDropDown: true, source: choices.join(",") } };
}

function headLook({ look }: TableColumn): Look {
  if (look === "number" || look === "inputRight") return "headRight";
  return look === "inputAfterNumber" || look === "startAfterNumber" || look === "unit" ? "headAfterNumber" : "head";
}

function readingOf<K extends string>(
  plan: TablePlan<K>,
  [header = [], ...body]: readonly (readonly unknown[])[],
): Pick<TableReading<K>, "places" | "rows" | "hasMore"> {
  const titles = header.map((title) => String(title).trim().toLowerCase());
  const placed = keysOf(plan).map((key) => [key, titles.indexOf(plan.columns[key].header.toLowerCase())] as const);
  const gone = placed.filter(([, place]) => place < 0).map(([key]) => `"${plan.columns[key].header}"`);
  if (gone.length > 0) {
    throw new WorkbookFault(
      `The table ${plan.name} has no column ${gone.join(", ")} any more. Give its header back, or give the table another name (Table Design): then a new one is begun.`,
    );
  }
  const ours = new Set(placed.map(([, place]) => place));
  return {
    hasMore: body.map((row) => row.some((cell, place) => !ours.has(place) && !isBlank(cell))),
    places: Object.fromEntries(placed) as Record<K, number>,
    rows: body.map((row) => Object.fromEntries(placed.map(([key, place]) => [key, row[place]])) as Record<K, unknown>),
  };
}

import { doubledWords, doublesOf, isBlank } from "../../../src/index";
import { columnLetters } from "../address";
import { asText, dressAs, type Look, type PaperCell, type PaperSize, putContents } from "../paper";
import { WorkbookFault } from "../run";
import { keysOf, overColumns, type TableColumn, type TablePlan, type TypedCells, typedKeys } from "./tableplan";

/** The rows of a table, and the place of each column, counted from its left edge. */
export interface TableReading<K extends string> {
  /** Below 0 for a column that an earlier version did not have. */
  readonly places: Readonly<Record<K, number>>;
  readonly sheet: string;
  /** The sheet's column of its left edge, counted from 0. */
  readonly left: number;
  /** How many columns it has, the person's own among them. */
  readonly width: number;
  readonly rows: readonly Readonly<Record<K, unknown>>[];
  /** For each row, whether columns of the person's own hold something. */
  readonly hasMore: readonly boolean[];
  /** The formulas of the last row; undefined where they were not asked for. */
  readonly lastFormulas?: readonly unknown[];
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
  toWrite = false,
): () => TableReading<K> | undefined {
  const table = context.workbook.tables.getItemOrNullObject(plan.name);
  table.load("name");
  const all = table.getRange();
  all.load("values,columnIndex,rowIndex");
  const { worksheet } = table;
  worksheet.load("name");
  const last = toWrite ? table.getRange().getLastRow() : undefined;
  last?.load("formulas");
  return () =>
    table.isNullObject
      ? undefined
      : {
          ...readingOf(plan, all.values, (place) => `${columnLetters(all.columnIndex + place)}${all.rowIndex + 1}`),
          sheet: worksheet.name,
          left: all.columnIndex,
          width: all.values[0]?.length ?? 0,
          ...(last ? { lastFormulas: last.formulas[0] ?? [] } : {}),
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
 * columns to type into are all blank is taken instead. A table of an earlier version keeps the formulas of its own rows.
 * Errors: WorkbookFault where something is to be written into a column that such a table does not have.
 */
export function putRow<K extends string>(
  context: Excel.RequestContext,
  plan: TablePlan<K>,
  reading: TableReading<K>,
  typed: TypedCells<K>,
  written: Written,
): void {
  const lacking = keysOf(plan).filter((key) => reading.places[key] < 0);
  for (const key of lacking) if (!isBlank(typed[key] ?? "")) throw lacksColumn(plan, key);
  const table = context.workbook.tables.getItem(plan.name);
  const row = endsBlank(plan, reading)
    ? table.getDataBodyRange().getRow(reading.rows.length - 1)
    : table.rows.add().getRange();
  for (const key of keysOf(plan)) {
    if (lacking.includes(key)) continue;
    const column = plan.columns[key];
    const place = reading.places[key];
    const cell = row.getCell(0, place);
    cell.numberFormat = [[column.format ?? "General"]];
    const kept = lacking.length > 0 ? reading.lastFormulas?.[place] : undefined;
    if (column.formula) cell.formulas = [[kept === undefined ? written(column.formula) : kept]];
    else if (typed[key] !== undefined) cell.values = [[contentOf(typed[key])]];
    dressAs(cell, column.look);
    rule(cell, column);
  }
  row.format.autofitRows();
}

/** What says that a table of an earlier version has no place for what was typed. */
export function lacksColumn<K extends string>({ name, columns }: TablePlan<K>, key: K): WorkbookFault {
  const { header } = columns[key];
  return new WorkbookFault(
    `The table ${name} has no column "${header}": it was begun by an earlier version. Add a column with the header ${header} at its right end, and try again.`,
  );
}

/** Whether the last row of a table is free for the next entry. */
export function endsBlank<K extends string>(plan: TablePlan<K>, { rows }: TableReading<K>): boolean {
  const last = rows.at(-1);
  return last !== undefined && typedKeys(plan).every((key) => isBlank(last[key]));
}

/** How formulas over a table are written on other sheets: with whole columns of its sheet. */
export function writtenOver<K extends string>(plan: TablePlan<K>, { sheet, left, places }: TableReading<K>): Written {
  const name = `'${sheet.replaceAll("'", "''")}'`;
  const placeOf = (key: K): number => {
    const instead = keysOf(plan).find((other) => plan.columns[other].header === plan.columns[key].before);
    return places[key] < 0 && instead ? places[instead] : places[key];
  };
  return (formula) =>
    overColumns(formula, plan, (key) => {
      const letters = columnLetters(left + placeOf(key));
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
  const index = rowOf(plan, reading, typed);
  if (index < 0) return false;
  const table = context.workbook.tables.getItem(plan.name);
  if (reading.rows.length > 1) {
    table.rows.getItemAt(index).delete();
    return true;
  }
  // A table must keep one row, so the last one left is emptied.
  const row = table.getDataBodyRange().getRow(index);
  for (const key of typedKeys(plan)) {
    if (reading.places[key] >= 0) row.getCell(0, reading.places[key]).clear("Contents");
  }
  return true;
}

/** The last row that says what was typed, counted from 0; below 0 where none does. */
export function rowOf<K extends string>(plan: TablePlan<K>, { rows }: TableReading<K>, typed: TypedCells<K>): number {
  return rows.findLastIndex((row) => typedKeys(plan).every((key) => sameCell(row[key], typed[key] ?? "")));
}

/** Writes one cell of a row. Errors: WorkbookFault where an earlier version's table has no such column. */
export function putCell<K extends string>(
  context: Excel.RequestContext,
  plan: TablePlan<K>,
  { places }: TableReading<K>,
  row: number,
  key: K,
  content: string | number,
): void {
  if (places[key] < 0) throw lacksColumn(plan, key);
  context.workbook.tables.getItem(plan.name).getDataBodyRange().getCell(row, places[key]).values = [
    [contentOf(content)],
  ];
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
  addressOf: (place: number) => string,
): Pick<TableReading<K>, "places" | "rows" | "hasMore"> {
  const titles = header.map((title) => String(title).trim().toLowerCase());
  const [doubled] = doublesOf(
    titles.flatMap((title, at) => {
      const key = keysOf(plan).find((each) => plan.columns[each].header.toLowerCase() === title);
      return key ? [{ key, what: plan.columns[key].header, place: addressOf(at) }] : [];
    }),
  );
  if (doubled) throw new WorkbookFault(`The headers of the table ${plan.name}: found ${doubledWords(doubled)}.`);
  const placed = keysOf(plan).map((key) => [key, titles.indexOf(plan.columns[key].header.toLowerCase())] as const);
  const gone = placed
    .filter(([key, place]) => place < 0 && !plan.columns[key].isLater)
    .map(([key]) => `"${plan.columns[key].header}"`);
  if (gone.length > 0) {
    throw new WorkbookFault(
      `The table ${plan.name} has no column ${gone.join(", ")} any more. Give its header back, or give the table another name (Table Design): then a new one is begun.`,
    );
  }
  const ours = new Set(placed.map(([, place]) => place));
  return {
    hasMore: body.map((row) => row.some((cell, place) => !ours.has(place) && !isBlank(cell))),
    places: Object.fromEntries(placed) as Record<K, number>,
    rows: body.map(
      (row) => Object.fromEntries(placed.map(([key, place]) => [key, row[place] ?? ""])) as Record<K, unknown>,
    ),
  };
}

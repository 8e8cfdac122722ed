import { CellValueType, type ICellData, type Nullable, type Worksheet } from "@univerjs/core";
import {
  SetRangeValuesMutation,
  SetStyleCommand,
  SetWorksheetColumnCountMutation,
  SetWorksheetRowCountMutation,
} from "@univerjs/preset-sheets-core";
import type { Rect } from "./address";
import type { Book } from "./book";
import { isLook } from "./changes";
import { display, ERRORS, enter } from "./entry";
import { denied, wrongSize } from "./failure";

export type Value = string | number | boolean;

export interface Cell {
  /** "" where the cell is blank; an error as its code. */
  readonly value: Value;
  /** "" where there is none. Of a spilled array only the first cell has it. */
  readonly formula: string;
  readonly format: string;
  readonly isError: boolean;
  /** Whether it is a text, kept so by an apostrophe or by the text format, whatever it begins with. */
  readonly isText: boolean;
}

/** One cell as it is now, spilled values included. */
export function readCell(book: Book, sheetId: string, row: number, column: number): Cell {
  return readFrom(book, book.worksheet(sheetId), row, column);
}

/** The cells of a rectangle, row by row. Beyond the grid's edge everything is blank. */
export function readCells(book: Book, sheetId: string, rect: Rect): Cell[][] {
  const sheet = book.worksheet(sheetId);
  return Array.from({ length: rect.rows }, (_, row) =>
    Array.from({ length: rect.columns }, (_, column) => readFrom(book, sheet, rect.row + row, rect.column + column)),
  );
}

export function textOf(cell: Cell): string {
  return cell.isError ? String(cell.value) : display(cell.value, cell.format);
}

function readFrom(book: Book, sheet: Worksheet, row: number, column: number): Cell {
  const sheetId = sheet.getSheetId();
  const raw = row < sheet.getRowCount() && column < sheet.getColumnCount() ? sheet.getCellRaw(row, column) : undefined;
  const hasFormula = Boolean(raw?.f || raw?.si);
  const formula = hasFormula ? (book.engine.formulas.getFormulaStringByCell(row, column, sheetId, book.id) ?? "") : "";
  const shown = hasFormula || hasContent(raw) ? raw : (spilledAt(book, sheetId, row, column) ?? raw);
  const value = contentOf(shown);
  const isText = typeof value === "string" && shown === raw && !formula;
  const isError = typeof value === "string" && raw?.t !== CellValueType.FORCE_STRING && ERRORS.includes(value);
  // Computed only when asked for: composing a cell's style takes longer than reading its value.
  return {
    value,
    formula,
    get format() {
      return formatAt(sheet, row, column);
    },
    isError,
    isText,
  };
}

export function hasContent(cell: Nullable<ICellData>): boolean {
  return cell?.p != null || (cell?.v !== undefined && cell.v !== null && cell.v !== "");
}

/** The value a neighbour's array formula left in a cell that has no content of its own. */
function spilledAt(book: Book, sheetId: string, row: number, column: number): ICellData | undefined {
  const sheet = book.engine.formulas.getArrayFormulaCellData()[book.id]?.[sheetId];
  return sheet?.[row]?.[column] ?? undefined;
}

function contentOf(cell: Nullable<ICellData>): Value {
  if (!cell) return "";
  if (cell.p) return (cell.p.body?.dataStream ?? "").replace(/\r\n$/, "").replaceAll("\r", "\n");
  const { v, t } = cell;
  if (v === undefined || v === null) return "";
  if (t === CellValueType.BOOLEAN) return typeof v === "boolean" ? v : Number(v) === 1;
  if (t === CellValueType.NUMBER && v !== "") return Number(v);
  return v;
}

/** The cell's number format, "General" where none is set. */
export function formatAt(sheet: Worksheet, row: number, column: number): string {
  if (row >= sheet.getRowCount() || column >= sheet.getColumnCount()) return "General";
  const pattern = sheet.getComposedCellStyle(row, column).n?.pattern;
  if (!pattern) return "General";
  return pattern === "@@@" ? "@" : pattern;
}

/** Writes one element per cell, as range.values and range.formulas do. `what` names the property in a failure. */
export function writeCells(book: Book, sheetId: string, rect: Rect, values: unknown, what: string): void {
  const rows: unknown[] = Array.isArray(values) ? values : repeat(rect, values);
  const lines = rows.filter((row): row is unknown[] => Array.isArray(row) && row.length === rect.columns);
  if (rows.length !== rect.rows || lines.length !== rect.rows) throw wrongSize(what);
  const sheet = book.worksheet(sheetId);
  const cells = new Map<number, Map<number, ICellData>>();
  for (const [i, row] of lines.entries()) {
    for (const [j, value] of row.entries()) {
      const format = formatAt(sheet, rect.row + i, rect.column + j);
      const entry = enter(value, format);
      if (!entry) continue;
      const cell = entry.format ? { ...entry.cell, s: { n: { pattern: entry.format } } } : entry.cell;
      const line = cells.get(rect.row + i) ?? new Map<number, ICellData>();
      cells.set(rect.row + i, line.set(rect.column + j, cell));
    }
  }
  putCells(book, sheetId, rect, cells);
}

function repeat(rect: Rect, value: unknown): unknown[][] {
  return Array.from({ length: rect.rows }, () => Array.from({ length: rect.columns }, () => value));
}

/** Gives cells to the grid in one step. `null` removes a cell with its look. */
export function putCells(
  book: Book,
  sheetId: string,
  rect: Rect,
  cells: ReadonlyMap<number, ReadonlyMap<number, ICellData | null>>,
): void {
  if (cells.size === 0) return;
  checkUnlocked(book, sheetId, rect);
  growTo(book, sheetId, rect);
  const cellValue: Record<number, Record<number, ICellData | null>> = {};
  for (const [row, line] of cells) cellValue[row] = Object.fromEntries(line);
  // Where a cell comes without a formula, the grid deletes the formula, unless `params` says that only looks change.
  const onlyLooks = [...cells.values()].every((line) => [...line.values()].every((cell) => cell && isLook(cell)));
  const params = {
    unitId: book.id,
    subUnitId: sheetId,
    cellValue,
    ...(onlyLooks ? { trigger: SetStyleCommand.id } : {}),
  };
  book.engine.commands.syncExecuteCommand(SetRangeValuesMutation.id, params);
}

/** Makes the same change to every cell of a rectangle; of whole columns and rows only to the part inside the grid. */
export function mapCells(
  book: Book,
  sheetId: string,
  rect: Rect,
  change: (row: number, column: number) => ICellData | null | undefined,
): void {
  const within = clamp(book.worksheet(sheetId), rect);
  const cells = new Map<number, Map<number, ICellData | null>>();
  for (let row = within.row; row < within.row + within.rows; row += 1) {
    const line = new Map<number, ICellData | null>();
    for (let column = within.column; column < within.column + within.columns; column += 1) {
      const cell = change(row, column);
      if (cell !== undefined) line.set(column, cell);
    }
    if (line.size > 0) cells.set(row, line);
  }
  putCells(book, sheetId, within, cells);
}

/** A rectangle without the part of whole columns or rows that is outside the grid. */
export function clamp(sheet: Worksheet, rect: Rect): Rect {
  const rows = Math.max(sheet.getRowCount(), rect.rows > 100_000 ? 0 : rect.row + rect.rows) - rect.row;
  const columns =
    Math.max(sheet.getColumnCount(), rect.columns > 10_000 ? 0 : rect.column + rect.columns) - rect.column;
  return { ...rect, rows: Math.min(rect.rows, rows), columns: Math.min(rect.columns, columns) };
}

/** Makes the grid large enough; it starts far smaller than a sheet of Excel. */
export function growTo(book: Book, sheetId: string, rect: Rect): void {
  const sheet = book.worksheet(sheetId);
  const target = { unitId: book.id, subUnitId: sheetId };
  const { commands } = book.engine;
  const rowCount = rect.row + rect.rows;
  if (rowCount > sheet.getRowCount())
    commands.syncExecuteCommand(SetWorksheetRowCountMutation.id, { ...target, rowCount: rowCount + 50 });
  const columnCount = rect.column + rect.columns;
  if (columnCount > sheet.getColumnCount())
    commands.syncExecuteCommand(SetWorksheetColumnCountMutation.id, { ...target, columnCount: columnCount + 5 });
}

/** Throws where the sheet is protected and a cell of the rectangle is locked, as cells are by default. */
export function checkUnlocked(book: Book, sheetId: string, rect: Rect): void {
  if (!book.extrasOf(sheetId).protection.on) return;
  const sheet = book.worksheet(sheetId);
  const within = clamp(sheet, rect);
  for (let row = within.row; row < within.row + within.rows; row += 1)
    for (let column = within.column; column < within.column + within.columns; column += 1)
      if (isLocked(sheet, row, column)) throw denied();
}

export function isLocked(sheet: Worksheet, row: number, column: number): boolean {
  return sheet.getCellRaw(row, column)?.custom?.locked !== false;
}

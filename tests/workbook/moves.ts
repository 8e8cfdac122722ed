import type { ICellData, IStyleData, Nullable } from "@univerjs/core";
import {
  AddWorksheetMergeMutation,
  DeleteRangeMoveLeftCommand,
  DeleteRangeMoveUpCommand,
  InsertRangeMoveDownCommand,
  InsertRangeMoveRightCommand,
  RemoveWorksheetMergeMutation,
} from "@univerjs/preset-sheets-core";
import { contains, intersect, MAX_COLUMNS, MAX_ROWS, type Rect } from "./address";
import type { Book } from "./book";
import { checkUnlocked, clamp, growTo, mapCells, readCell } from "./cells";
import { fromRange, toRange } from "./extent";
import { denied, invalid } from "./failure";

/** A rectangle on a sheet. */
export interface Place {
  readonly sheetId: string;
  readonly rect: Rect;
}

export type ClearWhat = "All" | "Formats" | "Contents";

export function clearCells(book: Book, sheetId: string, rect: Rect, what: ClearWhat): void {
  if (what !== "Contents") unmergeCells(book, sheetId, rect);
  mapCells(book, sheetId, rect, () => {
    if (what === "All") return null;
    return what === "Formats" ? { s: null, custom: null } : { v: null, f: null, si: null, p: null };
  });
}

/** Inserts cells before a rectangle. Whole rows and columns take formulas, names, merges and sizes along. */
export function insertCells(book: Book, sheetId: string, rect: Rect, shift: "Down" | "Right"): void {
  if (book.extrasOf(sheetId).protection.on) throw denied();
  const sheet = book.sheet(sheetId);
  growTo(book, sheetId, clamp(sheet.getSheet(), rect));
  if (rect.columns === MAX_COLUMNS) onActive(book, sheetId, () => sheet.insertRowsBefore(rect.row, rect.rows));
  else if (rect.rows === MAX_ROWS) onActive(book, sheetId, () => sheet.insertColumnsBefore(rect.column, rect.columns));
  else
    moveCells(book, sheetId, rect, shift === "Down" ? InsertRangeMoveDownCommand.id : InsertRangeMoveRightCommand.id);
}

export function deleteCells(book: Book, sheetId: string, rect: Rect, shift: "Up" | "Left"): void {
  if (book.extrasOf(sheetId).protection.on) throw denied();
  const sheet = book.sheet(sheetId);
  const within = clamp(sheet.getSheet(), rect);
  if (rect.columns === MAX_COLUMNS) onActive(book, sheetId, () => sheet.deleteRows(within.row, within.rows));
  else if (rect.rows === MAX_ROWS) onActive(book, sheetId, () => sheet.deleteColumns(within.column, within.columns));
  else moveCells(book, sheetId, within, shift === "Up" ? DeleteRangeMoveUpCommand.id : DeleteRangeMoveLeftCommand.id);
}

/** Runs a command of the grid, which works on the active sheet only and is done before it first waits. */
function moveCells(book: Book, sheetId: string, rect: Rect, command: string): void {
  onActive(book, sheetId, () => book.engine.commands.executeCommand(command, { range: toRange(rect) }));
}

/** Does something while the sheet is active: on other sheets the grid does not move defined names. */
function onActive(book: Book, sheetId: string, act: () => unknown): void {
  const active = book.active().getSheetId();
  book.activate(sheetId);
  act();
  book.activate(active);
}

/** Merges a rectangle, or each of its rows; only the first cell keeps its content. */
export function mergeCells(book: Book, sheetId: string, rect: Rect, across: boolean): void {
  checkUnlocked(book, sheetId, rect);
  const rows = Array.from({ length: rect.rows }, (_, i) => ({ ...rect, row: rect.row + i, rows: 1 }));
  const rects = (across ? rows : [rect]).filter((each) => each.rows * each.columns > 1);
  if (rects.length === 0) return;
  unmergeCells(book, sheetId, rect);
  growTo(book, sheetId, rect);
  mapCells(book, sheetId, rect, (row, column) => {
    const isFirst = rects.some((each) => each.row === row && each.column === column);
    return isFirst ? undefined : { v: null, f: null, si: null, p: null };
  });
  const params = { unitId: book.id, subUnitId: sheetId, ranges: rects.map(toRange) };
  book.engine.commands.syncExecuteCommand(AddWorksheetMergeMutation.id, params);
}

export function unmergeCells(book: Book, sheetId: string, rect: Rect): void {
  const merges = book.worksheet(sheetId).getMergeData();
  const ranges = merges.filter((merge) => intersect(fromRange(merge), rect));
  if (ranges.length === 0) return;
  checkUnlocked(book, sheetId, rect);
  const params = { unitId: book.id, subUnitId: sheetId, ranges: ranges.map((range) => ({ ...range })) };
  book.engine.commands.syncExecuteCommand(RemoveWorksheetMergeMutation.id, params);
}

/** Copies one rectangle over another as Excel's paste does: repeated to fill, relative references moved along. */
export function copyCells(
  book: Book,
  from: Place,
  to: Place,
  what: "All" | "Formulas" | "Values" | "Formats",
  skipBlanks: boolean,
  transpose: boolean,
): void {
  const source = clamp(book.worksheet(from.sheetId), from.rect);
  const size = transpose
    ? { rows: source.columns, columns: source.rows }
    : { rows: source.rows, columns: source.columns };
  const fills = to.rect.rows % size.rows === 0 && to.rect.columns % size.columns === 0;
  const target = { ...to.rect, ...(fills && to.rect.rows < 100_000 && to.rect.columns < 10_000 ? {} : size) };
  const taken = takeCells(book, from.sheetId, source, what);
  mapCells(book, to.sheetId, target, (row, column) => {
    const down = (row - target.row) % size.rows;
    const right = (column - target.column) % size.columns;
    const cell = transpose ? taken[right]?.[down] : taken[down]?.[right];
    if (!cell || (skipBlanks && cell.isBlank)) return undefined;
    const { f } = cell.data;
    if (!f) return cell.data;
    const moved = book.engine.api.getFormula().moveFormulaRefOffset(f, column - cell.column, row - cell.row);
    return { ...cell.data, f: moved };
  });
  if (what === "All" || what === "Formats") copyMerges(book, from, to, source, target, size, transpose);
}

interface Taken {
  readonly row: number;
  readonly column: number;
  readonly data: ICellData;
  readonly isBlank: boolean;
}

function takeCells(book: Book, sheetId: string, rect: Rect, what: string): Taken[][] {
  const sheet = book.worksheet(sheetId);
  return Array.from({ length: rect.rows }, (_, i) =>
    Array.from({ length: rect.columns }, (_, j) => {
      const [row, column] = [rect.row + i, rect.column + j];
      const raw = sheet.getCellRaw(row, column);
      const cell = readCell(book, sheetId, row, column);
      const looks = { s: wholeStyle(sheet.getCellStyle(row, column)), custom: raw?.custom ?? null };
      const value =
        typeof cell.value === "boolean" ? { v: cell.value ? 1 : 0, t: 3 } : { v: cell.value, t: raw?.t ?? null };
      const shown = cell.value === "" ? { v: null } : typeof cell.value === "number" ? { v: cell.value, t: 2 } : value;
      const content = { ...(cell.formula ? { v: null, f: cell.formula } : { ...shown, f: null }), si: null, p: null };
      const data = what === "Formats" ? looks : what === "Values" ? { ...shown, f: null, si: null, p: null } : content;
      return {
        row,
        column,
        data: what === "All" ? { ...content, ...looks } : data,
        isBlank: cell.value === "" && !cell.formula,
      };
    }),
  );
}

const NO_STYLE: IStyleData = {
  ff: null,
  bg: null,
  bd: null,
  cl: null,
  n: null,
  ht: null,
  vt: null,
  tb: null,
  pd: null,
};

/** A look with every part set, so that it replaces another look completely. */
function wholeStyle(style: Nullable<IStyleData>): IStyleData | null {
  return style ? { ...NO_STYLE, bl: 0, it: 0, ul: { s: 0 }, ...style } : null;
}

function copyMerges(
  book: Book,
  from: Place,
  to: Place,
  source: Rect,
  target: Rect,
  size: { rows: number; columns: number },
  transpose: boolean,
): void {
  const merges = book.worksheet(from.sheetId).getMergeData().map(fromRange);
  const inside = merges.filter((merge) => contains(source, merge));
  for (let row = 0; row < target.rows; row += size.rows)
    for (let column = 0; column < target.columns; column += size.columns)
      for (const merge of inside) {
        if (transpose) throw invalid("The workbook page cannot transpose merged cells.");
        const rect = {
          ...merge,
          row: target.row + row + merge.row - source.row,
          column: target.column + column + merge.column - source.column,
        };
        mergeCells(book, to.sheetId, rect, false);
      }
}

import { contains, printRect, printReference, type Rect } from "./address";
import type { Book } from "./book";
import { type Cell, formatAt, isLocked, readCells } from "./cells";
import { fromRange, spills, usedRect } from "./extent";
import type { KeptBook, KeptCell, KeptName, KeptRow, KeptRule, KeptSheet } from "./kept";

/** Describes the open workbook as it is now, calculated. Throws where it holds something that the description cannot hold. */
export function keepBook(book: Book): Omit<KeptBook, "version" | "locale" | "clock"> {
  if (book.structure.isProtected) throw new Error("A protected workbook cannot be kept");
  const active = book.active();
  const cell = active.getActiveCell();
  const place = { row: cell?.getRow() ?? 0, column: cell?.getColumn() ?? 0, rows: 1, columns: 1 };
  return {
    start: printReference(active.getSheetName(), place),
    sheets: book.sheets().map((sheet) => keepSheet(book, sheet.getSheetId())),
    names: keepNames(book),
    settings: Object.fromEntries(book.settings),
  };
}

function keepSheet(book: Book, sheetId: string): KeptSheet {
  const sheet = book.sheet(sheetId);
  const { protection, pictures, veryHidden, validations, page } = book.extrasOf(sheetId);
  if (protection.on || pictures.length > 0)
    throw new Error(`${sheet.getSheetName()}: a protected sheet or a picture cannot be kept`);
  const merged = sheet
    .getSheet()
    .getMergeData()
    .map((merge) => printRect(fromRange(merge)));
  const hidden = hiddenIn(book, sheetId);
  const tables = book.tables.all(sheetId).map(({ name, rect }) => [name, printRect(rect)] as const);
  return {
    id: sheetId,
    name: sheet.getSheetName(),
    ...(sheet.isSheetHidden() ? { visibility: veryHidden ? "VeryHidden" : "Hidden" } : {}),
    rows: keepRows(book, sheetId),
    formats: keepFormats(book, sheetId),
    ...(merged.length > 0 ? { merged } : {}),
    ...(hidden.length > 0 ? { hidden } : {}),
    ...(validations.length > 0 ? { rules: validations.map(keepRule) } : {}),
    ...(tables.length > 0 ? { tables: Object.fromEntries(tables) } : {}),
    ...(page.area ? { printArea: printRect(page.area) } : {}),
    ...(page.titleRows ? { titleRows: printRect(page.titleRows) } : {}),
  };
}

function keepRows(book: Book, sheetId: string): KeptRow[] {
  const used = usedRect(book, sheetId, true);
  if (!used) return [];
  const sheet = book.worksheet(sheetId);
  const arrays = spills(book, sheetId);
  return readCells(book, sheetId, used).flatMap((line, down) => {
    const cells = line.map((cell, right): KeptCell => {
      const place = { row: used.row + down, column: used.column + right, rows: 1, columns: 1 };
      if (!isLocked(sheet, place.row, place.column)) throw new Error("An unlocked cell cannot be kept");
      const isSpilled = arrays.some(
        (array) => contains(array, place) && (array.row !== place.row || array.column !== place.column),
      );
      return keepCell(cell, isSpilled);
    });
    const first = cells.findIndex((cell) => cell !== null);
    if (first < 0) return [];
    const last = cells.findLastIndex((cell) => cell !== null);
    const address = printRect({ row: used.row + down, column: used.column + first, rows: 1, columns: 1 });
    return [[address, ...cells.slice(first, last + 1)] as const];
  });
}

function keepCell(cell: Cell, isSpilled: boolean): KeptCell {
  if (cell.formula !== "") return [cell.formula, cell.value];
  // A formula may leave an empty text in a cell of its array.
  if (isSpilled) return [null, cell.value];
  if (cell.isError) throw new Error(`${cell.value} without a formula cannot be kept`);
  return cell.value === "" ? null : cell.value;
}

/** The cells that have a number format, as rectangles; rows of the same shape one below the other become one rectangle. */
function keepFormats(book: Book, sheetId: string): Record<string, string> {
  const used = usedRect(book, sheetId, false);
  const sheet = book.worksheet(sheetId);
  const areas = new Map<string, Rect[]>();
  for (let row = used?.row ?? 0; used && row < used.row + used.rows; row += 1) {
    const end = used.column + used.columns;
    for (let column = used.column; column < end; ) {
      const format = formatAt(sheet, row, column);
      let columns = 1;
      while (column + columns < end && formatAt(sheet, row, column + columns) === format) columns += 1;
      if (format !== "General") {
        const rects = areas.get(format) ?? [];
        const above = rects.findIndex(
          (rect) => rect.column === column && rect.columns === columns && rect.row + rect.rows === row,
        );
        const taller = rects[above];
        if (taller) rects[above] = { ...taller, rows: taller.rows + 1 };
        else rects.push({ row, column, rows: 1, columns });
        areas.set(format, rects);
      }
      column += columns;
    }
  }
  return Object.fromEntries(
    [...areas].map(([format, rects]) => [format, rects.map((rect) => printRect(rect)).join(" ")]),
  );
}

function hiddenIn(book: Book, sheetId: string): string[] {
  const { rowData, columnData } = book.worksheet(sheetId).getConfig();
  const indexes = (data: typeof rowData | typeof columnData) =>
    Object.entries(data).flatMap(([index, each]) => (each?.hd ? [Number(index)] : []));
  const rows = indexes(rowData).map((row) => ({ row, column: 0, rows: 1, columns: 16_384 }));
  const columns = indexes(columnData).map((column) => ({ row: 0, column, rows: 1_048_576, columns: 1 }));
  return [...rows, ...columns].map((rect) => printRect(rect));
}

function keepRule({ rect, ...rule }: { readonly rect: Rect } & Omit<KeptRule, "range">): KeptRule {
  return { range: printRect(rect), ...rule };
}

/** The workbook's names before those of sheets, which may be the same. */
function keepNames(book: Book): KeptName[] {
  const names = book.names.all().map(({ name, formula, comment, visible, sheetId }): KeptName => {
    return {
      name,
      refersTo: formula,
      ...(comment === "" ? {} : { comment }),
      ...(visible ? {} : { hidden: true }),
      ...(sheetId === undefined ? {} : { sheet: book.sheet(sheetId).getSheetName() }),
    };
  });
  return [...names.filter(({ sheet }) => sheet === undefined), ...names.filter(({ sheet }) => sheet !== undefined)];
}

import type { IObjectMatrixPrimitiveType, IRange } from "@univerjs/core";
import { around, type Rect } from "./address";
import type { Book } from "./book";
import { hasContent } from "./cells";

/** The smallest rectangle around all cells with content, or also those with a look; undefined on an empty sheet. */
export function usedRect(book: Book, sheetId: string, valuesOnly: boolean): Rect | undefined {
  const sheet = book.worksheet(sheetId);
  let used: Rect | undefined;
  sheet.getCellMatrix().forValue((row, column, cell) => {
    const counts = cell?.f || cell?.si || hasContent(cell) || (!valuesOnly && cell?.s);
    if (counts) used = around(used, { row, column, rows: 1, columns: 1 });
  });
  for (const spill of spills(book, sheetId)) used = around(used, spill);
  if (!valuesOnly) for (const merge of sheet.getMergeData()) used = around(used, fromRange(merge));
  return used;
}

/** The rectangles that array formulas fill. */
export function spills(book: Book, sheetId: string): Rect[] {
  const lines: IObjectMatrixPrimitiveType<IRange> =
    book.engine.formulas.getArrayFormulaRange()[book.id]?.[sheetId] ?? {};
  return Object.values(lines).flatMap((line: Record<number, IRange>) => Object.values(line).map(fromRange));
}

export function fromRange(range: IRange): Rect {
  return {
    row: range.startRow,
    column: range.startColumn,
    rows: range.endRow - range.startRow + 1,
    columns: range.endColumn - range.startColumn + 1,
  };
}

export function toRange(rect: Rect): IRange {
  return {
    startRow: rect.row,
    startColumn: rect.column,
    endRow: rect.row + rect.rows - 1,
    endColumn: rect.column + rect.columns - 1,
  };
}

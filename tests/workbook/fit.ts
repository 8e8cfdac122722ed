import { SetWorksheetColWidthMutation, SetWorksheetRowHeightMutation } from "@univerjs/preset-sheets-core";
import { intersect, type Rect } from "./address";
import { type Book, DEFAULT_HEIGHT, DEFAULT_WIDTH } from "./book";
import { checkUnlocked, readCells, textOf } from "./cells";
import { fromRange, usedRect } from "./extent";
import { styleAt } from "./styles";

/** Pixels around a text in its cell. */
const MARGIN = 10;
const LEADING = 1.35;

/** Makes columns as wide as their longest line; a column without content keeps its width, as in Excel. */
export function fitColumns(book: Book, sheetId: string, rect: Rect): void {
  checkUnlocked(book, sheetId, rect);
  const widths = new Map<number, number>();
  each(book, sheetId, rect, ({ column, text, font, isWrapped }) => {
    if (isWrapped) return;
    widths.set(column, Math.max(widths.get(column) ?? 0, Math.ceil(measure(text, font)) + MARGIN));
  });
  for (const [column, colWidth] of widths) {
    const ranges = [{ startRow: 0, endRow: 0, startColumn: column, endColumn: column }];
    const params = { unitId: book.id, subUnitId: sheetId, ranges, colWidth };
    book.engine.commands.syncExecuteCommand(SetWorksheetColWidthMutation.id, params);
  }
}

/** Makes rows as high as their tallest text, counting the lines of wrapped ones. */
export function fitRows(book: Book, sheetId: string, rect: Rect): void {
  checkUnlocked(book, sheetId, rect);
  const sheet = book.worksheet(sheetId);
  const heights = new Map<number, number>();
  each(book, sheetId, rect, ({ row, column, text, font, size, isWrapped }) => {
    const width = (column < sheet.getColumnCount() ? sheet.getColumnWidth(column) : DEFAULT_WIDTH) - MARGIN / 2;
    const lines = isWrapped ? lineCount(text, font, width) : 1;
    const height = Math.max(DEFAULT_HEIGHT, Math.ceil(lines * size * (4 / 3) * LEADING) + 4);
    heights.set(row, Math.max(heights.get(row) ?? 0, height));
  });
  for (const [row, rowHeight] of heights) {
    const ranges = [{ startRow: row, endRow: row, startColumn: 0, endColumn: 0 }];
    const params = { unitId: book.id, subUnitId: sheetId, ranges, rowHeight };
    book.engine.commands.syncExecuteCommand(SetWorksheetRowHeightMutation.id, params);
  }
}

interface Shown {
  readonly row: number;
  readonly column: number;
  readonly text: string;
  readonly font: string;
  readonly size: number;
  readonly isWrapped: boolean;
}

/** Every cell with content that is not merged: merged ones count for neither, as in Excel. */
function each(book: Book, sheetId: string, rect: Rect, act: (shown: Shown) => void): void {
  const used = usedRect(book, sheetId, true);
  const within = used && intersect(used, rect);
  if (!within) return;
  const sheet = book.worksheet(sheetId);
  const merges = sheet.getMergeData().map(fromRange);
  for (const [i, line] of readCells(book, sheetId, within).entries()) {
    for (const [j, cell] of line.entries()) {
      const [row, column] = [within.row + i, within.column + j];
      if (cell.value === "" || merges.some((merge) => intersect(merge, { row, column, rows: 1, columns: 1 }))) continue;
      const style = styleAt(sheet, row, column);
      const size = style.fs ?? 11;
      const font = `${style.it ? "italic " : ""}${style.bl ? "bold " : ""}${size * (4 / 3)}px "${style.ff ?? "Segoe UI"}"`;
      act({ row, column, text: textOf(cell), font, size, isWrapped: style.tb === 3 });
    }
  }
}

let context: CanvasRenderingContext2D | null | undefined;

function measure(text: string, font: string): number {
  context ??= document.createElement("canvas").getContext("2d");
  if (!context) return text.length * 8;
  context.font = font;
  return Math.max(...text.split("\n").map((line) => context?.measureText(line).width ?? 0));
}

function lineCount(text: string, font: string, width: number): number {
  return text.split("\n").reduce((count, paragraph) => {
    let line = "";
    let lines = 1;
    for (const word of paragraph.split(" ")) {
      const longer = line === "" ? word : `${line} ${word}`;
      if (line !== "" && measure(longer, font) > width) {
        lines += 1;
        line = word;
      } else line = longer;
    }
    return count + lines;
  }, 0);
}

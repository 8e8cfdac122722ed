import { IRenderManagerService, SHEET_VIEWPORT_KEY } from "@univerjs/preset-sheets-core";
import type { Book } from "./book";

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Where a cell of the active sheet is drawn, in pixels of the page. */
export function cellBox(book: Book, sheetId: string, row: number, column: number): Box {
  const render = book.engine.injector.get(IRenderManagerService).getRenderById(book.id);
  const view = render?.scene.getViewport(SHEET_VIEWPORT_KEY.VIEW_MAIN);
  const canvas = render?.engine.getCanvasElement().getBoundingClientRect();
  if (!view || !canvas) throw new Error("The grid is not drawn yet");
  const sheet = book.sheet(sheetId);
  const { startRow, startColumn } = sheet.getFreeze();
  // The grid gives places as if nothing were scrolled; frozen rows and columns never are.
  const box = sheet.getRange(row, column).getCellRect();
  const left = column < startColumn ? 0 : view.viewportScrollX;
  const top = row < startRow ? 0 : view.viewportScrollY;
  return { x: canvas.x + box.x - left, y: canvas.y + box.y - top, width: box.width, height: box.height };
}

/** Scrolls a cell into sight where it is not; frozen rows and columns always are. */
export function scrollTo(book: Book, sheetId: string, row: number, column: number): void {
  const sheet = book.sheet(sheetId);
  const seen = sheet.getVisibleRange() ?? { startRow: 0, endRow: 0, startColumn: 0, endColumn: 0 };
  const freeze = sheet.getFreeze();
  // The first rows and columns that the grid gives as visible may be behind the frozen ones.
  const isRowSeen = row < freeze.startRow || (row >= seen.startRow + freeze.startRow && row < seen.endRow);
  const isColumnSeen =
    column < freeze.startColumn || (column >= seen.startColumn + freeze.startColumn && column < seen.endColumn);
  if (isRowSeen && isColumnSeen) return;
  const top = isRowSeen ? seen.startRow : Math.max(0, row - 3);
  const left = isColumnSeen ? seen.startColumn : Math.max(0, column - 1);
  sheet.scrollToCell(top, left);
}

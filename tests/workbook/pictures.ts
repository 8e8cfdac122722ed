import type { Worksheet } from "@univerjs/core";
import { DEFAULT_HEIGHT, DEFAULT_WIDTH } from "./book";
import { gap } from "./failure";

/**
 * A picture over a sheet's cells. It belongs to the cell under its corner and moves with it. Print and file show it, the grid
 * does not.
 */
export interface Picture {
  readonly id: string;
  name: string;
  /** The cell under its upper left corner, from 0, and how far inside that cell it begins, in points. */
  row: number;
  column: number;
  inset: { left: number; top: number };
  /** Points. */
  width: number;
  height: number;
  /** A PNG file in base64. */
  readonly png: string;
}

const POINTS_PER_PIXEL = 0.75;

/** A picture as big as its file says, at 96 pixels an inch, in the sheet's corner. */
export function newPicture(base64: string, id: string, name: string): Picture {
  const bytes = Uint8Array.from(atob(base64.replace(/^data:[^,]*,/, "")), (letter) => letter.charCodeAt(0));
  const isPng = [0x89, 0x50, 0x4e, 0x47].every((byte, index) => bytes[index] === byte);
  if (!isPng) throw gap("ShapeCollection.addImage of anything but PNG");
  const size = new DataView(bytes.buffer);
  return {
    id,
    name,
    row: 0,
    column: 0,
    inset: { left: 0, top: 0 },
    width: size.getUint32(16) * POINTS_PER_PIXEL,
    height: size.getUint32(20) * POINTS_PER_PIXEL,
    png: base64.replace(/^data:[^,]*,/, ""),
  };
}

/** Where a cell, or a picture inside it, begins on its sheet, in points. */
export function cornerOf(
  sheet: Worksheet,
  { row, column, inset = { left: 0, top: 0 } }: Pick<Picture, "row" | "column"> & Partial<Pick<Picture, "inset">>,
): { left: number; top: number } {
  const before = (count: number, size: (index: number) => number) =>
    Array.from({ length: count }, (_, index) => size(index)).reduce((sum, each) => sum + each, 0);
  return {
    left: before(column, (index) => widthOf(sheet, index)) + inset.left,
    top: before(row, (index) => heightOf(sheet, index)) + inset.top,
  };
}

/** Moves a picture to the cell under a point of its sheet, in points. */
export function moveTo(sheet: Worksheet, picture: Picture, { left, top }: { left: number; top: number }): void {
  [picture.column, picture.inset.left] = cellAt(left, (index) => widthOf(sheet, index));
  [picture.row, picture.inset.top] = cellAt(top, (index) => heightOf(sheet, index));
}

function cellAt(points: number, size: (index: number) => number): [index: number, inset: number] {
  let [index, rest] = [0, Math.max(0, points)];
  while (rest >= size(index) && index < 20_000) {
    rest -= size(index);
    index += 1;
  }
  return [index, rest];
}

function widthOf(sheet: Worksheet, column: number): number {
  if (sheet.getColumnManager().getColumn(column)?.hd) return 0;
  return (column < sheet.getColumnCount() ? sheet.getColumnWidth(column) : DEFAULT_WIDTH) * POINTS_PER_PIXEL;
}

function heightOf(sheet: Worksheet, row: number): number {
  if (sheet.getRowManager().getRow(row)?.hd) return 0;
  return (row < sheet.getRowCount() ? sheet.getRowHeight(row) : DEFAULT_HEIGHT) * POINTS_PER_PIXEL;
}

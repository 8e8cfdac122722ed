import { BorderStyleTypes, type IBorderData, type IStyleData, type Nullable, type Worksheet } from "@univerjs/core";
import type { Rect } from "./address";
import type { Book } from "./book";
import { mapCells } from "./cells";
import { gap, invalid } from "./failure";

/** A cell's complete look: its own, over its row's, its column's and its sheet's. */
export function styleAt(sheet: Worksheet, row: number, column: number): IStyleData {
  if (row >= sheet.getRowCount() || column >= sheet.getColumnCount()) return {};
  return sheet.getComposedCellStyle(row, column);
}

/** Changes the look of every cell of a rectangle; a null in the change removes that part. */
export function changeStyle(
  book: Book,
  sheetId: string,
  rect: Rect,
  change: IStyleData | ((row: number, column: number) => IStyleData | undefined),
): void {
  mapCells(book, sheetId, rect, (row, column) => {
    const style = typeof change === "function" ? change(row, column) : change;
    return style && { s: style };
  });
}

export type Side = "t" | "b" | "l" | "r";
export type Edge = "EdgeTop" | "EdgeBottom" | "EdgeLeft" | "EdgeRight" | "InsideHorizontal" | "InsideVertical";

/** The sides of the cells that make up an edge of a rectangle. */
export const EDGES: Record<Edge, { side: Side; on: (rect: Rect, row: number, column: number) => boolean }[]> = {
  EdgeTop: [{ side: "t", on: (rect, row) => row === rect.row }],
  EdgeBottom: [{ side: "b", on: (rect, row) => row === rect.row + rect.rows - 1 }],
  EdgeLeft: [{ side: "l", on: (rect, _row, column) => column === rect.column }],
  EdgeRight: [{ side: "r", on: (rect, _row, column) => column === rect.column + rect.columns - 1 }],
  InsideHorizontal: [{ side: "b", on: (rect, row) => row < rect.row + rect.rows - 1 }],
  InsideVertical: [{ side: "r", on: (rect, _row, column) => column < rect.column + rect.columns - 1 }],
};

export interface Line {
  readonly style: string;
  readonly weight: string;
  readonly color: string;
}

export const NO_LINE: Line = { style: "None", weight: "Thin", color: "#000000" };

const LINES: Record<number, [style: string, weight: string]> = {
  [BorderStyleTypes.THIN]: ["Continuous", "Thin"],
  [BorderStyleTypes.HAIR]: ["Continuous", "Hairline"],
  [BorderStyleTypes.MEDIUM]: ["Continuous", "Medium"],
  [BorderStyleTypes.THICK]: ["Continuous", "Thick"],
  [BorderStyleTypes.DOTTED]: ["Dot", "Thin"],
  [BorderStyleTypes.DASHED]: ["Dash", "Thin"],
  [BorderStyleTypes.MEDIUM_DASHED]: ["Dash", "Medium"],
  [BorderStyleTypes.DASH_DOT]: ["DashDot", "Thin"],
  [BorderStyleTypes.MEDIUM_DASH_DOT]: ["DashDot", "Medium"],
  [BorderStyleTypes.DASH_DOT_DOT]: ["DashDotDot", "Thin"],
  [BorderStyleTypes.MEDIUM_DASH_DOT_DOT]: ["DashDotDot", "Medium"],
  [BorderStyleTypes.DOUBLE]: ["Double", "Thick"],
  [BorderStyleTypes.SLANT_DASH_DOT]: ["SlantDashDot", "Medium"],
};

export function lineAt(border: Nullable<IBorderData>, side: Side): Line {
  const line = border?.[side];
  const known = line && LINES[line.s];
  if (!known) return NO_LINE;
  return { style: known[0], weight: known[1], color: line.cl?.rgb ?? "#000000" };
}

/** Excel's style and weight as the grid's one kind; the nearest weight where the pair does not exist. */
export function toBorder(line: Line): { s: BorderStyleTypes; cl: { rgb: string } } | null {
  if (line.style === "None") return null;
  const kinds = Object.entries(LINES).filter(([, [style]]) => style === line.style);
  if (kinds.length === 0) throw invalid();
  const kind = kinds.find(([, [, weight]]) => weight === line.weight) ?? kinds[0];
  return { s: Number(kind?.[0]), cl: { rgb: line.color } };
}

/** "#RRGGBB" from what Excel accepts as a colour: six digits with or without #, or a common name. */
export function color(value: unknown): string {
  if (typeof value !== "string") throw invalid();
  const digits = /^#?([0-9a-f]{6})$/i.exec(value.trim());
  if (digits?.[1]) return `#${digits[1].toUpperCase()}`;
  const named = COLORS[value.trim().toLowerCase()];
  if (!named) throw gap(`the colour "${value}"`);
  return named;
}

const COLORS: Record<string, string> = {
  black: "#000000",
  white: "#FFFFFF",
  red: "#FF0000",
  green: "#008000",
  blue: "#0000FF",
  yellow: "#FFFF00",
  gray: "#808080",
  grey: "#808080",
  orange: "#FFA500",
};

/** A colour of the grid in Excel's form. */
export function asHex(rgb: Nullable<string>, fallback: string): string {
  if (!rgb) return fallback;
  const hex = /^#([0-9a-f]{3}|[0-9a-f]{6})$/i.exec(rgb)?.[1];
  if (hex) return `#${(hex.length === 3 ? [...hex].map((digit) => digit + digit).join("") : hex).toUpperCase()}`;
  const parts = /^rgba?\(\s*(\d+)[,\s]+(\d+)[,\s]+(\d+)/i.exec(rgb);
  if (!parts) return rgb;
  return `#${parts
    .slice(1, 4)
    .map((part) => Number(part).toString(16).padStart(2, "0").toUpperCase())
    .join("")}`;
}

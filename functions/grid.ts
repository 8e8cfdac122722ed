import { UnreadableCell } from "../src/index";

/** Rows of cells, as Excel passes a range. */
export type Grid = readonly (readonly unknown[])[];

/** A cell or range as rows of cells; an omitted argument is one blank cell. All items are of one kind, so the first decides. */
export function gridOf(cells: unknown): Grid {
  if (!Array.isArray(cells)) return [[cells]];
  return Array.isArray(cells[0]) ? (cells as unknown[][]) : cells.map((row: unknown) => [row]);
}

export function isSingle(grid: Grid): boolean {
  return grid.length === 1 && grid[0]?.length === 1;
}

/**
 * The rows of a list or table, with plain cells. Long columns do not go through this; their few cells that are not plain are
 * converted one by one.
 */
export function plainGridOf(cells: unknown): Grid {
  const grid = gridOf(cells);
  return grid.some((row) => row.some(isObject)) ? grid.map((row) => row.map(plainCell)) : grid;
}

/** The types of value objects that stand for a plain value. Source: CellValueType in the reference of Excel's JavaScript API. */
const VALUE_TYPES: readonly unknown[] = ["Double", "FormattedNumber", "String", "Boolean", "Empty"];

/**
 * The plain value of a cell. Excel may pass an object in its place: an error, because a flag in functions.json asks for errors, or
 * a value with its type, because older metadata that Excel may still use asked for it.
 */
export function plainCell(cell: unknown): unknown {
  if (!isObject(cell) || cell instanceof UnreadableCell) return cell;
  const { type, basicValue, text, code } = cell as Readonly<Record<string, unknown>>;
  if (VALUE_TYPES.includes(type)) return basicValue;
  if (type === "Error") return new UnreadableCell("error", String(basicValue));
  // An error of the class that functions return.
  if (typeof code === "string") return new UnreadableCell("error", code);
  return new UnreadableCell("data type", String(text ?? basicValue));
}

function isObject(cell: unknown): cell is object {
  return typeof cell === "object" && cell !== null;
}

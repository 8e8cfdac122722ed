import { UnreadableCell } from "../src/index";

/** Rows of cells, as Excel hands a range. */
export type Grid = readonly (readonly unknown[])[];

/** A cell or range as rows of cells; an omitted argument is one blank cell. Excel hands rows alike, so the first tells. */
export function gridOf(cells: unknown): Grid {
  if (!Array.isArray(cells)) return [[cells]];
  return Array.isArray(cells[0]) ? (cells as unknown[][]) : cells.map((row: unknown) => [row]);
}

export function isSingle(grid: Grid): boolean {
  return grid.length === 1 && grid[0]?.length === 1;
}

/** The rows of a list or table, each cell plain; long columns are left as they come, and their odd cells made plain one by one. */
export function plainGridOf(cells: unknown): Grid {
  const grid = gridOf(cells);
  return grid.some((row) => row.some(isObject)) ? grid.map((row) => row.map(plainCell)) : grid;
}

/** Types under which a cell's plain value comes. Source: CellValueType in the reference of Excel's JavaScript API. */
const VALUE_TYPES: readonly unknown[] = ["Double", "FormattedNumber", "String", "Boolean", "Empty"];

/**
 * What a cell holds, where Excel hands an object in its place: an error, which the flag in functions.json asks for, or a value with
 * its type, which older metadata asked for that Excel may still keep.
 */
export function plainCell(cell: unknown): unknown {
  if (!isObject(cell) || cell instanceof UnreadableCell) return cell;
  const { type, basicValue, text, code } = cell as Readonly<Record<string, unknown>>;
  if (VALUE_TYPES.includes(type)) return basicValue;
  if (type === "Error") return new UnreadableCell("error", String(basicValue));
  // An error of the runtime's own class, as functions give back.
  if (typeof code === "string") return new UnreadableCell("error", code);
  return new UnreadableCell("data type", String(text ?? basicValue));
}

function isObject(cell: unknown): cell is object {
  return typeof cell === "object" && cell !== null;
}

import { CostingError, isBlank } from "../src/index";
import { type Cell, toCell, toCellError, type Value } from "./cell";
import { type Grid, gridOf, isSingle } from "./grid";
import type { Reader } from "./readers";

type Arguments<Row> = {
  readonly [Name in keyof Row]: readonly [cells: unknown, read: Reader<Row[Name]>];
};

/**
 * Computes a worksheet function over its arguments: ranges of equal shape go cell by cell, a single cell goes with each.
 * A cell of a range with a fault gives that fault in its own place; one whose range cells are all blank gives a blank.
 * A single call throws its fault, so that Excel shows the sentence. Several values a row give as many columns.
 */
export function spread<Row extends object>(
  args: Arguments<Row>,
  compute: (row: Row) => Value | readonly Value[],
): unknown[][] {
  return answer(() => {
    const columns = Object.entries<readonly [unknown, Reader<unknown>]>(args).map(([name, [cells, read]]) => ({
      name,
      read,
      grid: gridOf(cells),
    }));
    const ranges = columns.filter(({ grid }) => !isSingle(grid));
    const lead = ranges[0];
    const rowAt = (i: number, j: number): Row =>
      Object.fromEntries(
        columns.map(({ name, read, grid }) => [name, read(isSingle(grid) ? grid[0]?.[0] : grid[i]?.[j], name)]),
      ) as Row;
    if (!lead) {
      const value = compute(rowAt(0, 0));
      if (isSeveral(value)) return [value.map(toCell)];
      const cell = toCell(value);
      return columns.some(({ name }) => Array.isArray(args[name as keyof Row][0])) ? [[cell]] : cell;
    }
    sameShape(ranges);
    const isEmpty = (i: number, j: number) => ranges.every(({ grid }) => isBlank(grid[i]?.[j]));
    return fill(lead.grid, (i, j) => (isEmpty(i, j) ? "" : compute(rowAt(i, j))));
  });
}

/** A worksheet function that takes its ranges whole and gives one value. */
export function whole(compute: () => Value): unknown[][] {
  return answer(() => [[toCell(compute())]]);
}

/** A worksheet function that takes its ranges whole and gives a table of its own. */
export function table(compute: () => readonly (readonly (Value | CostingError)[])[]): unknown[][] {
  return answer(() => compute().map((row) => row.map(toCellOrError)));
}

function toCellOrError(value: Value | CostingError): Cell {
  if (value instanceof CostingError) return toCellError(value);
  try {
    return toCell(value);
  } catch (error) {
    if (error instanceof CostingError) return toCellError(error);
    throw error;
  }
}

/** The one place where a CostingError becomes a cell error; anything else is our own mistake and goes on. */
function answer(compute: () => unknown): unknown[][] {
  try {
    return compute() as unknown[][];
  } catch (error) {
    throw error instanceof CostingError ? toCellError(error) : error;
  }
}

function fill(shape: Grid, valueAt: (i: number, j: number) => Value | readonly Value[]): Cell[][] {
  const rows = shape.map((row, i) => row.map((_, j) => cellsOf(() => valueAt(i, j))));
  const width = Math.max(1, ...rows.flat().map((cells) => (Array.isArray(cells) ? cells.length : 1)));
  if (width === 1) return rows as Cell[][];
  if (rows.some((row) => row.length > 1)) {
    throw new CostingError(
      "wrongShape",
      "ranges",
      `found ranges of ${shape.length} x ${shape[0]?.length} cells; this function gives ${width} columns a row, so give ranges of one column`,
    );
  }
  return rows.map(([cells]) => (Array.isArray(cells) ? cells : Array<Cell>(width).fill(cells ?? "")));
}

function cellsOf(value: () => Value | readonly Value[]): Cell | Cell[] {
  try {
    const computed = value();
    return isSeveral(computed) ? computed.map(toCell) : toCell(computed);
  } catch (error) {
    if (error instanceof CostingError) return toCellError(error);
    throw error;
  }
}

function sameShape(ranges: readonly { readonly name: string; readonly grid: Grid }[]): void {
  const shapes = ranges.map(({ name, grid }) => ({
    name,
    shape: `${grid.length} x ${grid[0]?.length ?? 0}`,
  }));
  const first = shapes[0];
  const other = shapes.find(({ shape }) => shape !== first?.shape);
  if (first && other) {
    throw new CostingError(
      "wrongShape",
      other.name,
      `found a range of ${other.shape} cells beside ${first.name} of ${first.shape}; give ranges of equal shape, or single cells`,
    );
  }
}

function isSeveral(value: Value | readonly Value[]): value is readonly Value[] {
  return Array.isArray(value);
}

/** Rows of cells, as Excel hands a range. */
export type Grid = readonly (readonly unknown[])[];

/** A cell or range as rows of cells; an omitted argument is one blank cell. */
export function gridOf(cells: unknown): Grid {
  if (!Array.isArray(cells)) return [[cells]];
  return cells.map((row: unknown) => (Array.isArray(row) ? row : [row]));
}

export function isSingle(grid: Grid): boolean {
  return grid.length === 1 && grid[0]?.length === 1;
}

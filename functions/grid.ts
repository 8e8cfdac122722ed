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

/** How cells looked before something was put into them. */
export interface Before {
  /** Points, column by column. */
  readonly widths: readonly number[];
  /** Undefined where every cell had the usual number format, which clearing restores. */
  readonly numberFormats: readonly (readonly string[])[] | undefined;
}

/** Empties added columns and gives their cells the look they had. */
export function clearColumns(
  sheet: Excel.Worksheet,
  { areas, before }: { readonly areas: readonly string[]; readonly before: Before | undefined },
): void {
  for (const area of areas) clearCells(sheet.getRange(area), before);
}

/** Empties cells and gives them the look they had. */
export function clearCells(range: Excel.Range, before: Before | undefined): void {
  range.clear(before?.numberFormats ? Excel.ClearApplyTo.contents : Excel.ClearApplyTo.all);
  if (before?.numberFormats) range.numberFormat = before.numberFormats.map((row) => [...row]);
  before?.widths.forEach((width, column) => {
    range.getColumn(column).format.columnWidth = width;
  });
}

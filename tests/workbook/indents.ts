import type { HorizontalAlign } from "@univerjs/core";
import { SpreadsheetSkeleton } from "@univerjs/preset-sheets-core";

/**
 * Makes the grid include a cell's indent where it calculates how far a text runs into the next cells. Univer 0.25.1 counts the text
 * alone and then cuts off as much of it as the indent moved it; Excel does not.
 */
export function countIndents(): void {
  const { getOverflowPosition } = SpreadsheetSkeleton.prototype;
  SpreadsheetSkeleton.prototype.getOverflowPosition = function (
    size: Parameters<typeof getOverflowPosition>[0],
    align: HorizontalAlign,
    row: number,
    column: number,
    columns: number,
  ) {
    const { l = 0, r = 0 } = this.worksheet.getComposedCellStyle(row, column).pd ?? {};
    return getOverflowPosition.call(this, { ...size, width: size.width + l + r }, align, row, column, columns);
  };
}

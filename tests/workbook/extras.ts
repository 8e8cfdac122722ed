import { MAX_COLUMNS, MAX_ROWS, type Rect } from "./address";
import type { Picture } from "./pictures";

/** What belongs to a sheet of Excel but has no place in the grid. */
export interface Extras {
  page: PageSetup;
  protection: { on: boolean; options: Record<string, unknown>; password?: string };
  veryHidden: boolean;
  standardWidth: number | undefined;
  validations: Validation[];
  pictures: Picture[];
}

export interface PageSetup {
  orientation: "Portrait" | "Landscape";
  paperSize: string;
  zoom: { scale?: number; horizontalFitToPages?: number; verticalFitToPages?: number };
  /** Points. */
  margins: { top: number; bottom: number; left: number; right: number; header: number; footer: number };
  centerHorizontally: boolean;
  centerVertically: boolean;
  printGridlines: boolean;
  printHeadings: boolean;
  blackAndWhite: boolean;
  texts: Record<HeaderFooter, string>;
  area: Rect | undefined;
  titleRows: Rect | undefined;
  titleColumns: Rect | undefined;
  /** Rows that begin a printed page, from 0, in their order. */
  pageStarts: number[];
}

export const HEADER_FOOTER = [
  "leftHeader",
  "centerHeader",
  "rightHeader",
  "leftFooter",
  "centerFooter",
  "rightFooter",
] as const;
export type HeaderFooter = (typeof HEADER_FOOTER)[number];

export interface Validation {
  rect: Rect;
  rule: Record<string, unknown>;
  errorAlert: Record<string, unknown>;
  prompt: Record<string, unknown>;
  ignoreBlanks: boolean;
}

/** Excel's margins of a new sheet: 0.75 inch above and below, 0.7 at the sides, 0.3 for header and footer. */
const MARGINS = { top: 54, bottom: 54, left: 50.4, right: 50.4, header: 21.6, footer: 21.6 };

export function newExtras(): Extras {
  return {
    page: {
      orientation: "Portrait",
      paperSize: "Letter",
      zoom: { scale: 100 },
      margins: { ...MARGINS },
      centerHorizontally: false,
      centerVertically: false,
      printGridlines: false,
      printHeadings: false,
      blackAndWhite: false,
      texts: { leftHeader: "", centerHeader: "", rightHeader: "", leftFooter: "", centerFooter: "", rightFooter: "" },
      area: undefined,
      titleRows: undefined,
      titleColumns: undefined,
      pageStarts: [],
    },
    protection: { on: false, options: {} },
    veryHidden: false,
    standardWidth: undefined,
    validations: [],
    pictures: [],
  };
}

/** Rows or columns inserted (count > 0) or deleted (count < 0) at `at`. */
export interface Shift {
  readonly axis: "row" | "column";
  readonly at: number;
  readonly count: number;
}

/** Where a rectangle is after rows or columns were inserted or deleted; undefined where all of it was deleted. */
export function shifted(rect: Rect, { axis, at, count }: Shift): Rect | undefined {
  const size = axis === "row" ? rect.rows : rect.columns;
  if (size === (axis === "row" ? MAX_ROWS : MAX_COLUMNS)) return rect;
  const start = axis === "row" ? rect.row : rect.column;
  const [first, length] = moved(start, size, at, count);
  if (length <= 0) return undefined;
  return axis === "row" ? { ...rect, row: first, rows: length } : { ...rect, column: first, columns: length };
}

function moved(start: number, size: number, at: number, count: number): [number, number] {
  if (count > 0) {
    if (at <= start) return [start + count, size];
    return at < start + size ? [start, size + count] : [start, size];
  }
  const end = at - count;
  const before = Math.max(0, Math.min(end, start) - at);
  const within = Math.max(0, Math.min(end, start + size) - Math.max(at, start));
  return [start - before, size - within];
}

export function shiftExtras(extras: Extras, shift: Shift): void {
  const { page } = extras;
  page.area = page.area && shifted(page.area, shift);
  page.titleRows = page.titleRows && shifted(page.titleRows, shift);
  page.titleColumns = page.titleColumns && shifted(page.titleColumns, shift);
  page.pageStarts = page.pageStarts.flatMap((row) => {
    const after = shifted({ row, column: 0, rows: 1, columns: 1 }, shift);
    return after ? [after.row] : [];
  });
  for (const picture of extras.pictures) {
    const cell = { row: picture.row, column: picture.column, rows: 1, columns: 1 };
    // A picture whose cell was deleted moves to the cell that took its place.
    const { row, column } = shifted(cell, shift) ?? { ...cell, [shift.axis]: shift.at };
    Object.assign(picture, { row, column });
  }
  extras.validations = extras.validations.flatMap((validation) => {
    const rect = shifted(validation.rect, shift);
    return rect ? [{ ...validation, rect }] : [];
  });
}

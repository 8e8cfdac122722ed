import type { Look, Paper, PaperCell } from "../paper";

/** Columns of a job sheet. */
export const COLUMNS = ["A", "B", "C", "D", "E", "F", "G"] as const;
/** Tickets have one column more. */
export type Column = (typeof COLUMNS)[number] | "H";

/** Where a row's value stands, or another cell of it, for the formulas of other rows. */
export type Ref = (key: string, column?: Column) => string;

/** A row of a job sheet: label, value, unit; or a row of a table. */
export interface JobRow {
  /** The name other rows' formulas use; headings and notes have none. */
  readonly key?: string;
  readonly cells: (ref: Ref) => readonly PaperCell[];
  /** Begins a printed page. */
  readonly startsPage?: boolean;
  /** Points; as high as its contents where none is given. */
  readonly height?: number;
}

/** The rows as cells, each formula with the addresses of the rows it names. */
function cellsOf(rows: readonly JobRow[]): (readonly PaperCell[])[] {
  const ref = refsOf(rows);
  return rows.map(({ cells }) => cells(ref));
}

/** The rows as a sheet. */
export function paperOf(widths: readonly number[], rows: readonly JobRow[]): Paper {
  return {
    widths,
    rows: cellsOf(rows),
    pageStarts: rows.flatMap(({ startsPage }, index) => (startsPage && index > 0 ? [index] : [])),
    heights: new Map(rows.flatMap(({ height }, index) => (height ? [[index, height] as const] : []))),
  };
}

/** Where the rows stand on their sheet. */
export function refsOf(rows: readonly JobRow[]): Ref {
  const rowNumber = new Map<string, number>();
  for (const [index, { key }] of rows.entries()) {
    if (key === undefined) continue;
    if (rowNumber.has(key)) throw new Error(`The job sheet has two rows ${key}`);
    rowNumber.set(key, index + 1);
  }
  return (key, column = "B") => {
    const row = rowNumber.get(key);
    if (row === undefined) throw new Error(`The job sheet has no row ${key}`);
    return `$${column}$${row}`;
  };
}

/** Rows with keys of their own: what they name is looked for among them first, then on the whole sheet. */
export function scoped(scope: string, rows: readonly JobRow[]): JobRow[] {
  const own = new Set(rows.map(({ key }) => key));
  return rows.map((row) => ({
    ...row,
    ...(row.key ? { key: within(scope, row.key) } : {}),
    cells: (ref) => row.cells((key, column) => ref(own.has(key) ? within(scope, key) : key, column)),
  }));
}

/** The key of a row among those of a scope. */
export function within(scope: string, key: string): string {
  return `${scope}.${key}`;
}

/** Points, with some room above the heading. */
const SECTION_HEIGHT = 24;

/** A heading over the whole width. @param titles of the columns after the first */
export function section(title: string, titles: readonly string[] = []): JobRow {
  return {
    height: SECTION_HEIGHT,
    cells: () =>
      COLUMNS.map((_, column) => ({
        content: column === 0 ? title : (titles[column - 1] ?? ""),
        look: column === 0 ? "heading" : "headingRight",
      })),
  };
}

export function text(content: string, look: Look): JobRow {
  return { cells: () => [{ content, look }] };
}

/** A value of the order itself. A cell to write in is one that changes something. */
export function entry(
  key: string,
  label: string,
  content: string | number,
  unit: string,
  look: "input" | "plain",
  format?: string,
): JobRow {
  return row(key, label, () => content, unit, look === "input" ? "inputRight" : "number", format);
}

/** A live formula over the rows above and the rates. */
export function formula(
  key: string,
  label: string,
  write: (at: Ref) => string,
  unit: string,
  format: string,
  look: Look = "number",
): JobRow {
  return row(key, label, (at) => `=${write(at)}`, unit, look, format);
}

function row(
  key: string,
  label: string,
  content: (at: Ref) => string | number,
  unit: string,
  look: Look,
  format?: string,
): JobRow {
  return {
    key,
    cells: (at) => [
      { content: label, look: look === "total" ? "totalLabel" : "label" },
      format ? { content: content(at), look, format } : { content: content(at), look },
      { content: unit, look: look === "total" ? "totalAside" : "aside" },
    ],
  };
}

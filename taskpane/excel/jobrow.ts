import type { Look, PaperCell } from "./paper";

/** Where a row's value stands, or its unit, for the formulas of other rows. */
export type Ref = (key: string, column?: "B" | "C") => string;

/** A row of a job sheet: label, value, unit. */
export interface JobRow {
  /** The name other rows' formulas use; headings and notes have none. */
  readonly key?: string;
  readonly cells: (ref: Ref) => readonly PaperCell[];
}

/** Columns of a job sheet. */
const COLUMNS = 5;

/** The rows as cells, each formula with the addresses of the rows it names. */
export function cellsOf(rows: readonly JobRow[]): (readonly PaperCell[])[] {
  const rowNumber = new Map(rows.flatMap(({ key }, index) => (key ? [[key, index + 1] as const] : [])));
  const ref: Ref = (key, column = "B") => {
    const row = rowNumber.get(key);
    if (row === undefined) throw new Error(`The job sheet has no row ${key}`);
    return `$${column}$${row}`;
  };
  return rows.map(({ cells }) => cells(ref));
}

export function section(title: string): JobRow {
  return {
    cells: () =>
      Array.from({ length: COLUMNS }, (_, column) => ({ content: column === 0 ? title : "", look: "heading" })),
  };
}

export function text(content: string, look: Look): JobRow {
  return { cells: () => [{ content, look }] };
}

/** A value of the order itself. */
export function entry(
  key: string,
  label: string,
  content: string | number,
  unit: string,
  look: Look,
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
      { content: unit, look: look === "total" ? "totalLabel" : "unit" },
    ],
  };
}

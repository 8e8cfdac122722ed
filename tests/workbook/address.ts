/** A1 addresses and rectangles of cells; rows and columns are counted from 0. */

export interface Rect {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** The size of a sheet in Excel. */
export const MAX_ROWS = 1_048_576;
export const MAX_COLUMNS = 16_384;

export interface Reference {
  readonly sheet?: string;
  readonly rect: Rect;
}

const CELL = String.raw`\$?([A-Z]{1,3})\$?(\d{1,7})`;
const AREA = new RegExp(`^${CELL}(?::${CELL})?$`, "i");
const COLUMNS = /^\$?([A-Z]{1,3}):\$?([A-Z]{1,3})$/i;
const ROWS = /^\$?(\d{1,7}):\$?(\d{1,7})$/;

/** Reads "B2", "$B$2:C9", "A:C", "3:5" or any of them behind a sheet's name; undefined for anything else. */
export function parseReference(text: string): Reference | undefined {
  const bang = text.lastIndexOf("!");
  const rect = parseRect(bang < 0 ? text : text.slice(bang + 1));
  if (!rect) return undefined;
  if (bang < 0) return { rect };
  return { sheet: unquote(text.slice(0, bang)), rect };
}

function parseRect(text: string): Rect | undefined {
  const area = AREA.exec(text.trim());
  if (area) {
    const [, column = "", row = "", endColumn = column, endRow = row] = area;
    return between(Number(row) - 1, columnIndex(column), Number(endRow) - 1, columnIndex(endColumn));
  }
  const columns = COLUMNS.exec(text.trim());
  if (columns) return between(0, columnIndex(columns[1] ?? ""), MAX_ROWS - 1, columnIndex(columns[2] ?? ""));
  const rows = ROWS.exec(text.trim());
  if (rows) return between(Number(rows[1]) - 1, 0, Number(rows[2]) - 1, MAX_COLUMNS - 1);
  return undefined;
}

function between(row: number, column: number, endRow: number, endColumn: number): Rect | undefined {
  const top = Math.min(row, endRow);
  const left = Math.min(column, endColumn);
  const rows = Math.abs(endRow - row) + 1;
  const columns = Math.abs(endColumn - column) + 1;
  if (top < 0 || left < 0 || top + rows > MAX_ROWS || left + columns > MAX_COLUMNS) return undefined;
  return { row: top, column: left, rows, columns };
}

/** "A" is 0, "AA" is 26. */
export function columnIndex(letters: string): number {
  let index = 0;
  for (const letter of letters.toUpperCase()) index = index * 26 + letter.charCodeAt(0) - 64;
  return index - 1;
}

export function columnLetters(index: number): string {
  let letters = "";
  for (let rest = index + 1; rest > 0; rest = Math.floor((rest - 1) / 26))
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  return letters;
}

/** "B2" or "B2:C9"; whole columns and rows as "A:C" and "3:5", as Excel writes them. */
export function printRect(rect: Rect, dollar = ""): string {
  const left = `${dollar}${columnLetters(rect.column)}`;
  const right = `${dollar}${columnLetters(rect.column + rect.columns - 1)}`;
  if (rect.rows === MAX_ROWS && rect.columns < MAX_COLUMNS) return `${left}:${right}`;
  const top = `${dollar}${rect.row + 1}`;
  const bottom = `${dollar}${rect.row + rect.rows}`;
  if (rect.columns === MAX_COLUMNS) return `${top}:${bottom}`;
  const start = left + top;
  return rect.rows === 1 && rect.columns === 1 ? start : `${start}:${right}${bottom}`;
}

export function printReference(sheet: string, rect: Rect, dollar = ""): string {
  return `${quote(sheet)}!${printRect(rect, dollar)}`;
}

/** A sheet's name as a formula needs it: in apostrophes unless it is a plain word that is not the address of a cell. */
export function quote(sheet: string): string {
  const plain = /^[A-Za-z_][A-Za-z0-9_.]*$/.test(sheet) && !AREA.test(sheet) && !/^(R|C|RC|R\d+C\d+)$/i.test(sheet);
  return plain ? sheet : `'${sheet.replaceAll("'", "''")}'`;
}

function unquote(name: string): string {
  return name.startsWith("'") && name.endsWith("'") ? name.slice(1, -1).replaceAll("''", "'") : name;
}

export function intersect(one: Rect, other: Rect): Rect | undefined {
  const row = Math.max(one.row, other.row);
  const column = Math.max(one.column, other.column);
  const rows = Math.min(one.row + one.rows, other.row + other.rows) - row;
  const columns = Math.min(one.column + one.columns, other.column + other.columns) - column;
  return rows > 0 && columns > 0 ? { row, column, rows, columns } : undefined;
}

/** The smallest rectangle around both. */
export function around(one: Rect | undefined, other: Rect): Rect {
  if (!one) return other;
  const row = Math.min(one.row, other.row);
  const column = Math.min(one.column, other.column);
  return {
    row,
    column,
    rows: Math.max(one.row + one.rows, other.row + other.rows) - row,
    columns: Math.max(one.column + one.columns, other.column + other.columns) - column,
  };
}

export function contains(outer: Rect, inner: Rect): boolean {
  const shared = intersect(outer, inner);
  return shared !== undefined && shared.rows === inner.rows && shared.columns === inner.columns;
}

/**
 * Rows as comma-separated values: lines end with CR LF, and a field with a comma, a quote or a line break is quoted.
 * Source: RFC 4180. A text that a spreadsheet would take for a formula (it begins with = + - @, a tab or a carriage return)
 * gets an apostrophe before it; a plain number below zero is none and stays. Source: OWASP, "CSV Injection".
 */
export function csvOf(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => `${row.map((cell) => quoted(neutral(cell))).join(",")}\r\n`).join("");
}

const FORMULA_LIKE = /^[=+\-@\t\r]/;
const PLAIN_NUMBER = /^-\d+(\.\d+)?$/;

function neutral(cell: string): string {
  return FORMULA_LIKE.test(cell) && !PLAIN_NUMBER.test(cell) ? `'${cell}` : cell;
}

function quoted(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

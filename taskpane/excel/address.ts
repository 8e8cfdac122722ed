/** A column's letters, counted from 0: A, B, … Z, AA. */
export function columnLetters(column: number): string {
  const before = column < 26 ? "" : columnLetters(Math.floor(column / 26) - 1);
  return before + String.fromCharCode(65 + (column % 26));
}

/** A cell as a person names it, counted from 0: B7. */
export function addressOf(row: number, column: number): string {
  return `${columnLetters(column)}${row + 1}`;
}

/** Cells of one sheet, counted from 0. */
export interface Block {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** A reference in a formula; rows and columns counted from 0, Infinity where it reaches to the sheet's end. */
export interface Reference {
  /** Undefined for the formula's own sheet. */
  readonly sheet: string | undefined;
  readonly block: Block;
  /** Whether its rows are held by a sign: it is the same for the formulas of all rows. */
  readonly isFixed: boolean;
}

/** Replaces text in quotes, names in brackets and other workbooks, none of which is a reference here. */
const ELSEWHERE = "\u0001";

const SHEET = String.raw`(?:('(?:[^']|'')+'|[\p{L}\p{N}_.\u0001]+)!)?`;
const CELL = String.raw`\$?([A-Z]{1,3})(\$?)(\d{1,7})`;
const REFERENCE = new RegExp(
  String.raw`(?<![\p{L}\p{N}_.\\$!'\u0001])${SHEET}(?:${CELL}(?::${CELL})?|\$?([A-Z]{1,3}):\$?([A-Z]{1,3})|\$?(\d{1,7}):\$?(\d{1,7})|(#REF!))(?![\p{L}\p{N}_.(!])`,
  "giu",
);

/** The references in a formula, in their order; one that points nowhere has no cells. */
export function referencesIn(formula: string): readonly Reference[] {
  return [...bare(formula).matchAll(REFERENCE)].map((match) => {
    const [, sheet, left, held, top, right, , bottom, first, last, from, to] = match;
    const named = sheet?.replace(/^'(.*)'$/, "$1").replaceAll("''", "'");
    const block = blockOf([left ?? first, right ?? last ?? left], [top ?? from, bottom ?? to ?? top]);
    return { sheet: named, block, isFixed: held === "$" };
  });
}

/** A formula with its references replaced. It is the same for a formula in every row, wherever rows and columns have moved to. */
export function shapeOf(formula: string): string {
  return bare(formula, true).replace(REFERENCE, "#").replaceAll(/\s/g, "").toUpperCase();
}

/** Whether a formula on one sheet reads any cell of a block on the same or another sheet. */
export function reads(formula: string, onSheet: string, ofSheet: string, block: Block): boolean {
  return referencesIn(formula).some(
    ({ sheet, block: found }) => (sheet ?? onSheet).toLowerCase() === ofSheet.toLowerCase() && overlap(found, block),
  );
}

export function overlap(one: Block, other: Block): boolean {
  return (
    one.row < other.row + other.rows &&
    other.row < one.row + one.rows &&
    one.column < other.column + other.columns &&
    other.column < one.column + one.columns
  );
}

/** @param keepTexts keeps the text in quotes, changed so that nothing in it looks like a reference */
function bare(formula: string, keepTexts = false): string {
  const unquoted = formula.replaceAll(
    /('(?:[^']|'')*')|"(?:[^"]|"")*"/g,
    (found: string, sheet: string | undefined) => {
      if (sheet !== undefined) return sheet.includes("[") ? `'${ELSEWHERE}'` : sheet;
      return keepTexts ? [...found].map((letter) => `${ELSEWHERE}${letter.codePointAt(0)}`).join("") : ELSEWHERE;
    },
  );
  // Table[[#This Row],[Price]] holds brackets in brackets.
  return unquoted.replaceAll(/\[[^[\]]*\]/g, ELSEWHERE).replaceAll(/\[[^[\]]*\]/g, ELSEWHERE);
}

function blockOf(letters: readonly (string | undefined)[], numbers: readonly (string | undefined)[]): Block {
  const columns = letters.flatMap((each) => (each === undefined ? [] : [columnOf(each)]));
  const rows = numbers.flatMap((each) => (each === undefined ? [] : [Number(each) - 1]));
  const none = columns.length + rows.length === 0;
  const [column, width] = spanOf(columns);
  const [row, height] = spanOf(rows);
  return { row, column, rows: none ? 0 : height, columns: none ? 0 : width };
}

function spanOf(ends: readonly number[]): [first: number, length: number] {
  if (ends.length === 0) return [0, Number.POSITIVE_INFINITY];
  const first = Math.min(...ends);
  return [first, Math.max(...ends) - first + 1];
}

function columnOf(letters: string): number {
  return [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}

import { addressOf } from "../address";
import { type Block, type Reference, referencesIn, shapeOf } from "./formulareferences";

/** How added columns are recognized, wherever they are by now. */
export interface AddedShapes {
  /** A hidden defined name over them, which Excel moves, grows and shrinks with them. */
  readonly name: string;
  readonly headers: readonly string[];
  /** One for each formula, see shapeOf. */
  readonly shapes: readonly string[];
}

/** @param cells the columns as Excel has them, headers first */
export function addedShapes(name: string, cells: readonly (readonly unknown[])[]): AddedShapes {
  const [headers = [], ...rows] = cells;
  const shapes = rows.flat().flatMap((cell) => (isFormula(cell) ? [shapeOf(cell)] : []));
  return { name, headers: headers.map(String), shapes: [...new Set(shapes)] };
}

/**
 * The number of rows of the columns: those they were added with, and those below to which somebody filled them down.
 * @param cells from the columns' first row on, beyond their last one
 */
export function rowsFilled(
  cells: readonly (readonly unknown[])[],
  { row, column, rows, columns }: Block,
  added: AddedShapes,
): number {
  const ends = cells.findIndex((line, index) => {
    if (index < rows) return false;
    const block = { row, column, rows: index + 1, columns };
    return !line.some((cell) => isFormula(cell) && isOurs(cell, row + index, block, added));
  });
  return ends < 0 ? Math.max(rows, cells.length) : ends;
}

/** Which cells of the columns are the person's by now: anything but blanks, the headers and the formulas that were added. */
export function theirCells(
  cells: readonly (readonly unknown[])[],
  block: Block,
  added: AddedShapes,
): readonly { readonly row: number; readonly column: number }[] {
  return cells.flatMap((line, index) =>
    line.flatMap((cell, at) => {
      const [row, column] = [block.row + index, block.column + at];
      return isOurs(cell, row, block, added) ? [] : [{ row, column }];
    }),
  );
}

function isOurs(cell: unknown, row: number, block: Block, added: AddedShapes): boolean {
  if (!isFormula(cell)) return cell === "" || added.headers.includes(String(cell));
  return added.shapes.includes(shapeOf(cell)) && isOfOneRow(referencesIn(cell), row, block);
}

/** What they were given refers to its own row of the columns and to one design, wherever that design has moved to; headers and rates are the same for all. */
function isOfOneRow(references: readonly Reference[], row: number, block: Block): boolean {
  const valid = references.filter(({ block: at, isFixed }) => at.rows > 0 && !isFixed);
  const isOwn = ({ sheet, block: at }: Reference) =>
    sheet === undefined && at.column >= block.column && at.column < block.column + block.columns;
  const designs = new Set(valid.filter((each) => !isOwn(each)).map(({ block: at }) => at.row));
  return designs.size <= 1 && valid.every((each) => !isOwn(each) || each.block.row === row);
}

/** Addresses of cells, with cells below each other as one range: "Q4:Q6". */
export function namesOfCells(cells: readonly { readonly row: number; readonly column: number }[]): readonly string[] {
  const runs: { first: { row: number; column: number }; last: number }[] = [];
  for (const cell of [...cells].sort((a, b) => a.column - b.column || a.row - b.row)) {
    const run = runs.at(-1);
    if (run && run.first.column === cell.column && run.last + 1 === cell.row) run.last = cell.row;
    else runs.push({ first: cell, last: cell.row });
  }
  return runs.map(({ first: { row, column }, last }) =>
    last === row ? addressOf(row, column) : `${addressOf(row, column)}:${addressOf(last, column)}`,
  );
}

export function isFormula(cell: unknown): cell is string {
  return typeof cell === "string" && cell.startsWith("=");
}

import type { KeptBook, KeptCell, KeptSheet, KeptValue } from "./kept";

/** The cells of a kept workbook, found as a person finds them: by sheet, by title, by the label beside them. */

export function sheetOf(kept: Pick<KeptBook, "sheets">, name: string): KeptSheet {
  const sheet = kept.sheets.find((each) => each.name === name);
  if (!sheet) throw new Error(`The kept workbook has no sheet ${name}`);
  return sheet;
}

/** Every cell that holds something, by its address. */
export function cellsOf(sheet: KeptSheet): ReadonlyMap<string, Exclude<KeptCell, null>> {
  const cells = new Map<string, Exclude<KeptCell, null>>();
  for (const [first, ...line] of sheet.rows) {
    const [column, row] = columnAndRow(first);
    line.forEach((cell, right) => {
      if (cell !== null) cells.set(`${lettersOf(column + right)}${row}`, cell);
    });
  }
  return cells;
}

export function valueIn(cell: KeptCell | undefined): KeptValue {
  if (cell === undefined || cell === null) return "";
  return typeof cell === "object" ? cell[1] : cell;
}

/** The rows of a table by their titles; none where there is no such table. */
export function tableOf(kept: Pick<KeptBook, "sheets">, name: string): readonly Readonly<Record<string, KeptValue>>[] {
  const sheet = kept.sheets.find(({ tables }) => tables?.[name] !== undefined);
  const [first = "", last = ""] = sheet?.tables?.[name]?.split(":") ?? [];
  if (!sheet) return [];
  const cells = cellsOf(sheet);
  const [[left, top], [right, bottom]] = [columnAndRow(first), columnAndRow(last)];
  const at = (column: number, row: number) => valueIn(cells.get(`${lettersOf(column)}${row}`));
  const columns = Array.from({ length: right - left + 1 }, (_, index) => left + index);
  return Array.from({ length: bottom - top }, (_, index) =>
    Object.fromEntries(columns.map((column) => [String(at(column, top)), at(column, top + 1 + index)])),
  );
}

/** The figure of a rate, by the end of its defined name. */
export function rateOf(kept: Pick<KeptBook, "sheets" | "names">, name: string): number {
  const [, sheet = "", cell = ""] =
    /^='?(.+?)'?!(.+)$/.exec(kept.names.find((each) => each.name === `Rate_${name}`)?.refersTo ?? "") ?? [];
  return Number(valueIn(cellsOf(sheetOf(kept, sheet)).get(cell.replaceAll("$", ""))));
}

/** The cell in a given column of the first row that begins with a label. */
export function beside(kept: KeptBook, sheet: string, label: string, column = "B"): KeptValue {
  const cells = cellsOf(sheetOf(kept, sheet));
  const [address] = [...cells].find(([at, cell]) => /^A\d+$/.test(at) && valueIn(cell) === label) ?? [];
  if (address === undefined) throw new Error(`${sheet} has no row ${label}`);
  return valueIn(cells.get(address.replace("A", column)));
}

/** A formula that asks for the time says something else at another moment. */
const READS_THE_CLOCK = /\b(NOW|TODAY)\(/;

/**
 * The differences from the kept workbook, cell by cell: formulas, values, errors. Numbers are equal where their 15 significant
 * digits are, which is what Excel shows and saves. A formula that reads the clock only must not become an error.
 */
export function changesIn(kept: KeptSheet, now: KeptSheet): readonly string[] {
  const [before, after] = [cellsOf(kept), cellsOf(now)];
  return [...new Set([...before.keys(), ...after.keys()])]
    .filter((address) => !isSame(before.get(address), after.get(address)))
    .map(
      (address) => `${kept.name}!${address}: ${shownCell(before.get(address))}, now ${shownCell(after.get(address))}`,
    );
}

function isSame(kept: KeptCell | undefined, now: KeptCell | undefined): boolean {
  if (formulaOf(kept) !== formulaOf(now)) return false;
  const [before, after] = [valueIn(kept), valueIn(now)];
  if (READS_THE_CLOCK.test(formulaOf(kept) ?? "")) return typeof before === typeof after && !isError(after);
  return typeof before === "number" && typeof after === "number"
    ? before.toPrecision(15) === after.toPrecision(15)
    : before === after;
}

/** null for a value left by a formula of another cell, undefined where there is no formula. */
function formulaOf(cell: KeptCell | undefined): string | null | undefined {
  return typeof cell === "object" && cell !== null ? cell[0] : undefined;
}

export function isError(value: KeptValue): boolean {
  return typeof value === "string" && /^#(VALUE!|N\/A|NUM!|DIV\/0!|REF!|NAME\?|NULL!|SPILL!|CALC!|ERROR!)$/.test(value);
}

function shownCell(cell: KeptCell | undefined): string {
  return cell === undefined || cell === null ? "nothing" : JSON.stringify(cell);
}

function columnAndRow(address: string): [column: number, row: number] {
  const [, letters = "", row = ""] = /^([A-Z]+)(\d+)$/.exec(address) ?? [];
  return [[...letters].reduce((column, letter) => column * 26 + letter.charCodeAt(0) - 64, 0), Number(row)];
}

function lettersOf(column: number): string {
  return column > 26
    ? lettersOf(Math.floor((column - 1) / 26)) + lettersOf(((column - 1) % 26) + 1)
    : String.fromCharCode(64 + column);
}

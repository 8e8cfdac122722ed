import { PRICE_COLUMNS, type PriceColumn } from "../../../src/index";
import { columnLetters } from "../address";
import type { Designs } from "./designs";

/** A column that is added beside the designs. */
export interface AddedColumn {
  readonly column: PriceColumn;
  readonly header: string;
}

/** What is added beside each design: what it weighs, costs and brings. */
export const ADDED_COLUMNS: readonly AddedColumn[] = [
  { column: "links", header: PRICE_COLUMNS.links },
  ...(["finished", "cast", "fineGold"] as const).map((column) => ({ column, header: `${PRICE_COLUMNS[column]} (g)` })),
  ...(["landed", "price", "margin"] as const).map((column) => ({ column, header: PRICE_COLUMNS[column] })),
];

/** Where a formula finds the headers and the rates that it reads a design by. */
export interface ColumnsSource {
  readonly designs: Designs;
  /** The headers as the library understands them; "" for a column that is not used. */
  readonly headers: readonly string[];
  /** Whether the person's own headers say the same: then formulas read their cells, else our words. */
  readonly direct: boolean;
  /** The two columns of Rates, as a formula names them. */
  readonly rates: string;
}

/**
 * The formula of a column for a design: the library's own pricing of that row, which follows the row, its headers and Rates.
 * @param row the sheet's row, counted from 1
 */
export function columnFormula(column: PriceColumn, { designs, headers, direct, rates }: ColumnsSource, row: number) {
  const { column: first, cells } = designs;
  const [from, to] = [columnLetters(first), columnLetters(first + (cells[0]?.length ?? 1) - 1)];
  const head = direct ? `$${from}$${designs.row + 1}:$${to}$${designs.row + 1}` : constantOf(headers);
  return `=CURB.PRICELINE(${head},$${from}${row}:$${to}${row},${rates},"${PRICE_COLUMNS[column]}")`;
}

function constantOf(words: readonly string[]): string {
  return `{${words.map((word) => `"${word.replaceAll('"', '""')}"`).join(",")}}`;
}

import { isBlank } from "../../../src/index";
import { printOf } from "../tables/additions";
import { typedKeys } from "../tables/tableplan";
import type { AskingCells } from "./askingbook";
import { ASKING_PLAN, ASKING_TABLE, type AskingTableColumn as Column } from "./askingtable";

/** What a person types, or the pane for them; the last two columns are the pane's own. */
export const SAID = typedKeys(ASKING_PLAN).filter((key) => key !== "list" && key !== "taken");

/** Of what a row says: the same as long as nobody changed it. */
export async function printOfCells(row: Readonly<Partial<Record<Column, unknown>>>): Promise<string> {
  const said = SAID.map((key) => (isBlank(row[key]) ? "" : row[key]));
  return (await printOf(said)).slice(0, 12);
}

/** Where the rows of a list stand in the table. */
export function placesOf(rows: readonly AskingCells[], list: number): readonly number[] {
  return rows.flatMap((row, place) => (row.list === list ? [place] : []));
}

/** Rows that are deleted at once. */
const BLOCK = 200;

/** Deletes rows of the table, from the last one up. */
export async function deletePlaces(context: Excel.RequestContext, places: readonly number[]): Promise<void> {
  const { rows } = context.workbook.tables.getItem(ASKING_TABLE);
  const going = [...places].sort((a, b) => b - a);
  for (let at = 0; at < going.length; at += BLOCK) {
    for (const place of going.slice(at, at + BLOCK)) rows.getItemAt(place).delete();
    await context.sync();
  }
}

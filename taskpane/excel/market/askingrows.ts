import { isBlank } from "../../../src/index";
import { fingerprintOf } from "../tables/additions";
import { typedKeys } from "../tables/tableplan";
import type { AskingCells } from "./askingbook";
import { ASKING_PLAN, ASKING_TABLE, type AskingTableColumn as Column } from "./askingtable";

/** The columns that a person types into, or the pane for them; "list" and "taken" are for the pane alone. */
export const TYPED_KEYS = typedKeys(ASKING_PLAN).filter((key) => key !== "list" && key !== "taken");

/** A fingerprint of what a row says: it stays the same as long as nobody changes the row. */
export async function rowFingerprint(row: Readonly<Partial<Record<Column, unknown>>>): Promise<string> {
  const typed = TYPED_KEYS.map((key) => (isBlank(row[key]) ? "" : row[key]));
  return (await fingerprintOf(typed)).slice(0, 12);
}

/** The indexes of a list's rows in the table. */
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

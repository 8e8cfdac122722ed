import { type Currency, parseSeenAsking, type SeenAsking, seenKey } from "../../../src/index";
import type { AskingCells } from "./askingbook";

/** The asking prices of the table, read as the costing library reads them. */
export interface KeptAskings {
  readonly seen: readonly SeenAsking[];
  /** Rows that cannot be read. */
  readonly unread: number;
}

/** @param own the workbook's currency @param today ISO 8601 */
export function keptAskings(rows: readonly AskingCells[], own: Currency, today: string): KeptAskings {
  const read = rows.flatMap((row) => {
    const parsed = parseSeenAsking(row, own, today);
    return parsed.ok ? [parsed.value] : [];
  });
  return { seen: read, unread: rows.length - read.length };
}

/** Keys by which a row that is already in the table is recognized. */
export function keysOf({ seen }: KeptAskings): ReadonlySet<string> {
  return new Set(seen.map(seenKey));
}

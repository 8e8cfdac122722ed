import type { Book } from "./book";
import { readCells, textOf } from "./cells";
import { usedRect } from "./extent";
import { quoteOf } from "./quotesheets";

/** Formulas over the workshop's rates, or with the add-in's functions. */
const OVER_RATES = /\bRate_|\bCURB\./i;
const COST_WORDS = /\b(costs?|landed|margin|markup|surcharge|labour|fee)\b/i;

/**
 * Whether a sheet shows what the workshop pays. Quotes and tickets are made without cost. Any other sheet is searched for
 * formulas over the rates and for words such as "cost" and "margin".
 */
export function showsCost(book: Book, sheetId: string): boolean {
  const kind = quoteOf(book.sheet(sheetId).getSheetName())?.kind;
  if (kind === "quote" || kind === "tickets") return false;
  if (kind === "job") return true;
  const used = usedRect(book, sheetId, true);
  if (!used) return false;
  return readCells(book, sheetId, used).some((row) =>
    row.some((cell) => OVER_RATES.test(cell.formula) || COST_WORDS.test(textOf(cell))),
  );
}

import {
  CostingError,
  type Currency,
  type KeptOrder,
  type Money,
  money,
  parseCurrency,
  Quotient,
  readOrderText,
  showQuoteNumber,
} from "../../src/index";
import type { BookedQuote } from "../excel/quote/quotebook";
import { dateSerial } from "../excel/template/fields";
import { showCellDate, showMoney } from "../wording/display";
import { TEXTS } from "../wording/texts";

const { earlier } = TEXTS;

/** The order of a row as typed, with the spot it was quoted at and its terms; or a sentence on why it cannot be opened. */
export type Opened = ({ readonly ok: true } & KeptOrder) | { readonly ok: false; readonly sentence: string };

/**
 * Reads a row of the quotes table back into the form's texts.
 * @param currency of Rates: a spot of another currency would be taken for one of this
 */
export function openBooked({ number, cells }: BookedQuote, currency: Currency): Opened {
  const name = showQuoteNumber(number);
  const kept = readOrderText(cells.order);
  if (!kept) return { ok: false, sentence: earlier.unreadableOrder(name) };
  if (currencyOf(cells.currency) !== currency) {
    return { ok: false, sentence: earlier.otherCurrency(name, String(cells.currency), currency) };
  }
  const { typed, terms } = kept;
  const spot = typed.order.spot.trim() === "" ? spotOf(cells.spot) : typed.order.spot;
  if (spot === undefined) return { ok: false, sentence: earlier.unreadableSpot(name) };
  return { ok: true, typed: { ...typed, order: { ...typed.order, spot } }, terms };
}

/** The spot of the newest quote whose row says it. */
export function lastSpotOf(quotes: readonly BookedQuote[]): Money | undefined {
  for (const { cells } of newestFirst(quotes)) {
    const spot = spotOf(cells.spot);
    const currency = currencyOf(cells.currency);
    if (spot !== undefined && currency) return money(Quotient.of(spot), currency);
  }
  return undefined;
}

/** What the customer was asked in all, as money where it is money, else as it stands in the row. */
export function bookedTotal({ cells }: BookedQuote): string {
  const currency = currencyOf(cells.currency);
  if (typeof cells.total === "number" && currency) return showMoney(money(Quotient.of(cells.total), currency));
  return `${cells.currency} ${cells.total}`.trim();
}

/** How long it holds, and that it has ended where it has. @param today ISO 8601 */
export function bookedValidity({ cells: { validUntil } }: BookedQuote, today: string): string {
  const shown = showCellDate(validUntil);
  if (shown === "") return "";
  return typeof validUntil === "number" && validUntil < dateSerial(today)
    ? earlier.ended(shown)
    : earlier.validUntil(shown);
}

/** Newest first: by date, then by number and letter. The table itself may be sorted any way. */
export function newestFirst(quotes: readonly BookedQuote[]): readonly BookedQuote[] {
  const day = ({ cells: { date } }: BookedQuote) => (typeof date === "number" ? date : 0);
  return [...quotes].sort(
    (a, b) =>
      day(b) - day(a) ||
      b.number.number - a.number.number ||
      (b.number.revision < a.number.revision ? -1 : Number(b.number.revision > a.number.revision)),
  );
}

/** A number as its 15 significant digits say, which is what a person sees in the cell. */
function spotOf(cell: unknown): string | undefined {
  return typeof cell === "number" && cell > 0 ? String(Number(cell.toPrecision(15))) : undefined;
}

/** The currency that a cell names; undefined where it names none. */
export function currencyOf(cell: unknown): Currency | undefined {
  try {
    return parseCurrency(cell);
  } catch (error) {
    if (error instanceof CostingError) return undefined;
    throw error;
  }
}

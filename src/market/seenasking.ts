import { CostingError, found } from "../exact/errors";
import { SPOT_RULE } from "../exact/numberrule";
import { dateEvidence, readListDate } from "../reading/listdate";
import { isBlank, readNumber } from "../reading/number";
import { accepted, attempt, faultsOf, type Parsed, refused } from "../reading/parse";
import { readOptionalText } from "../reading/words";
import type { Currency } from "../units/currency";
import { type Money, money } from "../units/money";
import { splitMoney } from "../units/moneytext";
import { ASKING_LABELS, type Asking, parseAsking } from "./asking";

/** The fields of an asking price that was seen somewhere. */
export const SEEN_LABELS = {
  date: "Date",
  source: "Where seen",
  ...ASKING_LABELS,
  spot: "Spot",
} as const;
export type SeenKey = keyof typeof SEEN_LABELS;
export const SEEN_KEYS = Object.keys(SEEN_LABELS) as readonly SeenKey[];

/** An asking price with where and when it was seen. */
export interface SeenAsking extends Asking {
  /** ISO 8601, such as "2026-04-03"; "" where it is not said. */
  readonly date: string;
  /** A person's own words: a shop, an address. */
  readonly source: string;
  /** Of the day the price was seen, in the workbook's currency; undefined where it was not written down. */
  readonly spot: Money | undefined;
}

/**
 * Reads a row of a list of asking prices, or every fault in it.
 * @param own the workbook's currency @param today ISO 8601; nothing was seen after it
 */
export function parseSeenAsking(
  record: Readonly<Record<string, unknown>>,
  own: Currency,
  today: string,
): Parsed<SeenAsking> {
  const asking = parseAsking(record, own);
  const seen = attempt("date", () => ({ date: readDate(record.date, today) }));
  const source = attempt("source", () => ({ source: readOptionalText(record.source, SEEN_LABELS.source) }));
  const spot = attempt("spot", () => ({ spot: readSpot(record.spot, own) }));
  if (!asking.ok || !seen.ok || !source.ok || !spot.ok) return refused(faultsOf(seen, source, asking, spot));
  return accepted({ ...asking.value, ...seen.value, ...source.value, ...spot.value });
}

/**
 * A text that is equal for two rows that say the same of the same offer. Figures are compared exactly; case and extra spaces do
 * not count.
 */
export function seenKey({ date, source, kind, mark, hollow, weight, price, per, currency }: SeenAsking): string {
  return JSON.stringify([
    date,
    folded(source),
    folded(kind),
    mark.share.value().toFixed(),
    hollow ?? "",
    weight?.grams.value().toSignificantDigits(15).toFixed() ?? "",
    price.value().toFixed(),
    per,
    currency,
  ]);
}

function readDate(value: unknown, today: string): string {
  if (isBlank(value)) return "";
  const date = readListDate(value, undefined);
  const right = "give year, month and day, such as 2026-04-03";
  if (date === undefined) {
    const doubtful = typeof value === "string" && dateEvidence([value]).doubtful !== undefined;
    const why = doubtful ? ", which may be two days" : ", which is no date";
    throw new CostingError("unknownWord", SEEN_LABELS.date, `${found(value)}${why}; ${right}`);
  }
  if (date > today) {
    throw new CostingError("outOfRange", SEEN_LABELS.date, `${found(date)}, which is after today, ${today}; ${right}`);
  }
  return date;
}

function readSpot(value: unknown, own: Currency): Money | undefined {
  if (isBlank(value)) return undefined;
  const { figure, currency } = splitMoney(value);
  if (currency && currency !== own) {
    const said = `${found(value)}, and the workbook is in ${own}; give the spot of that day in ${own}`;
    throw new CostingError("currencyMismatch", SEEN_LABELS.spot, said);
  }
  return money(readNumber(figure, SEEN_LABELS.spot, SPOT_RULE), own);
}

function folded(text: string): string {
  return text.trim().replace(/\s+/g, " ").toLowerCase();
}

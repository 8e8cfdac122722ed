import type { QuoteNumber } from "../order/quotenumber";
import { type QuoteStatus, quoteStatusOf } from "../order/quotestatus";

/**
 * Where a quote stands while its gold is still to be bought, at whatever spot will be. From the caster on it has been paid for,
 * and for what was turned down nobody buys any. Source: common practice: the caster's invoice settles the metal.
 */
export const UNBOUGHT: readonly QuoteStatus[] = ["asked", "quoted", "agreed"];

/** Of a quote what tells whether its price binds. */
export interface BindingQuote {
  readonly number: QuoteNumber;
  /** The cell of where it stands. */
  readonly status: unknown;
  /** Past its last day. */
  readonly ended: boolean;
}

export interface OpenQuotes<Q extends BindingQuote> {
  /** Its price binds, and its gold is still to be bought. */
  readonly open: readonly Q[];
  /** Asked or quoted, and past its last day: it may be given a new price. */
  readonly ended: readonly Q[];
  /** Stands where words of a person's own say, or nothing does. */
  readonly unsaid: readonly Q[];
}

/**
 * Which quotes carry the risk of spot. Of a number's letters the last one speaks; one that was agreed before it binds as well,
 * until the last is agreed or further. What was agreed binds past its last day.
 */
export function openQuotes<Q extends BindingQuote>(quotes: readonly Q[]): OpenQuotes<Q> {
  const speaking = quotes.filter((quote) => speaks(quote, lastOf(quote, quotes)));
  const unbought = speaking.filter(({ status }) => isUnbought(quoteStatusOf(status)));
  const isEnded = ({ ended, status }: Q) => ended && quoteStatusOf(status) !== "agreed";
  return Object.freeze({
    open: unbought.filter((quote) => !isEnded(quote)),
    ended: unbought.filter(isEnded),
    unsaid: speaking.filter(({ status }) => quoteStatusOf(status) === undefined),
  });
}

function speaks<Q extends BindingQuote>(quote: Q, last: Q): boolean {
  if (quote.number.revision === last.number.revision) return true;
  if (quoteStatusOf(quote.status) !== "agreed") return false;
  const now = quoteStatusOf(last.status);
  return now === undefined || now === "asked" || now === "quoted" || now === "turned down";
}

/** The last letter of a quote's number. */
function lastOf<Q extends BindingQuote>(quote: Q, quotes: readonly Q[]): Q {
  return quotes
    .filter(({ number }) => number.number === quote.number.number)
    .reduce((last, other) => (other.number.revision > last.number.revision ? other : last), quote);
}

function isUnbought(status: QuoteStatus | undefined): boolean {
  return status !== undefined && UNBOUGHT.includes(status);
}

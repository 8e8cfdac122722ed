import type { QuoteNumber } from "../order/quotenumber";
import { type QuoteStatus, quoteStatusOf } from "../order/quotestatus";

/**
 * The statuses in which a quote's gold is still to be bought, at a spot that nobody knows yet. From "at the caster" on it has been
 * paid for, and a quote that was turned down needs none. Source: common practice: the caster's invoice settles the metal.
 */
export const UNBOUGHT: readonly QuoteStatus[] = ["asked", "quoted", "agreed"];

/** What decides whether a quote's price binds. */
export interface BindingQuote {
  readonly number: QuoteNumber;
  /** As its cell reads. */
  readonly status: unknown;
  /** Past its last day. */
  readonly ended: boolean;
}

export interface OpenQuotes<Q extends BindingQuote> {
  /** Its price binds, and its gold is still to be bought. */
  readonly open: readonly Q[];
  /** Asked or quoted, and past its last day: it may be given a new price. */
  readonly ended: readonly Q[];
  /** Their status is blank, or in the person's own words. */
  readonly unknownStatus: readonly Q[];
}

/**
 * Which quotes carry the risk of spot. Of one number's letters only the last counts; one that was agreed before it binds as well,
 * until the last is agreed or further. What was agreed binds past its last day.
 */
export function openQuotes<Q extends BindingQuote>(quotes: readonly Q[]): OpenQuotes<Q> {
  const counting = countingQuotes(quotes);
  const unbought = counting.filter(({ status }) => isUnbought(quoteStatusOf(status)));
  return Object.freeze({
    open: unbought.filter((quote) => !isEnded(quote)),
    ended: unbought.filter(isEnded),
    unknownStatus: counting.filter(({ status }) => quoteStatusOf(status) === undefined),
  });
}

/** Of each number the last letter, and one that was agreed before it as long as it binds. */
export function countingQuotes<Q extends BindingQuote>(quotes: readonly Q[]): readonly Q[] {
  return quotes.filter((quote) => counts(quote, lastOf(quote, quotes)));
}

/** Past its last day, and not agreed before. */
export function isEnded({ ended, status }: BindingQuote): boolean {
  return ended && quoteStatusOf(status) !== "agreed";
}

function counts<Q extends BindingQuote>(quote: Q, last: Q): boolean {
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

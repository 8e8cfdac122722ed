import { type Pricing, type QuotedTerms, RATE_ROWS, type RateKey, type Rates, termsOf } from "../../src/index";
import { showCellDate, showList, showRate, showShare } from "../wording/display";
import { TEXTS } from "../wording/texts";
import type { Typed } from "./reckoning";

const { terms: texts } = TEXTS;

type Shown = Partial<Record<RateKey, string>>;

/**
 * What Rates say otherwise than they did when a quote was made, where its order leaves it to them: "" where nothing.
 * @param terms undefined where the quote kept none
 */
export function termChanges(terms: QuotedTerms | undefined, rates: Rates, typed: Typed): string {
  if (!terms) return texts.notKept;
  const [then, now] = [shownTerms(terms, typed), shownTerms(termsOf(rates, terms.spotRead), typed)];
  const keys = Object.keys({ ...then, ...now }) as RateKey[];
  const changed = keys.filter((key) => then[key] !== now[key]);
  if (changed.length === 0) return "";
  return texts.changed(
    showList(changed.map((key) => texts.change(RATE_ROWS[key].label, then[key] ?? texts.none, now[key] ?? texts.none))),
  );
}

/** When and where the spot of a quote was read: "" where that was not kept. */
export function spotReadWords(terms: QuotedTerms | undefined): string {
  const { time, source } = terms?.spotRead ?? { time: undefined, source: "" };
  const said = [time === undefined ? "" : showCellDate(time), source].filter((part) => part !== "");
  return said.length === 0 ? "" : texts.spotRead(said.join(", "));
}

function shownTerms(terms: QuotedTerms, { order }: Typed): Shown {
  const isAsRates = (text: string) => text.trim() === "";
  const isPriced = !isAsRates(order.priceBy) && order.priceBy.trim().toLowerCase() !== "as rates";
  const isByWeight = order.settled.trim().toLowerCase() === "by final weight";
  return {
    tax: showShare(terms.tax, 4),
    ...(terms.tax.isZero() ? {} : { taxIs: terms.taxIncluded ? "in the price" : "on top" }),
    ...(terms.tax.isZero() || isAsRates(order.shipping) ? {} : { shippingTaxed: terms.shippingTaxed ? "yes" : "no" }),
    ...(isPriced ? {} : { priceBy: pricingWords(terms.pricing) }),
    ...(isAsRates(order.deposit) ? { deposit: showShare(terms.deposit, 4) } : {}),
    ...(isByWeight && isAsRates(order.tolerance) ? { tolerance: showShare(terms.tolerance, 4) } : {}),
    ...(!isAsRates(order.ownGoldWeight) && isAsRates(order.ownGoldShare)
      ? { ownGoldShare: showShare(terms.ownGoldShare, 4) }
      : {}),
  };
}

function pricingWords(pricing: Pricing): string {
  if (pricing.by === "premium") return `${pricing.by} ${texts.perGram(showRate(pricing.rate))}`;
  return pricing.by === "own price" ? pricing.by : `${pricing.by} ${showShare(pricing.share, 4)}`;
}

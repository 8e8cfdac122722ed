import type { NumberRule } from "../exact/numberrule";
import type { Quotient } from "../exact/quotient";
import { fieldsNamed } from "../reading/formfields";
import { accepted, type Parsed, parseForm } from "../reading/parse";
import { RATE_ROWS, type RateKey } from "./raterows";
import { pricingIn, type Rates, shapeFor } from "./rates";

/**
 * What Rates promised when a quote was made: its tax, its price rule, its terms. Whatever takes a quoted amount apart takes these,
 * and never today's Rates. The lowest margin is not among them: it is what the workshop wants today.
 */
export interface QuotedTerms extends Pick<Rates, (typeof TERMS)[number]> {
  readonly spotRead: SpotRead;
}

/** When and where the spot was read. */
export interface SpotRead {
  /** As Excel's serial number; undefined where it is not known. */
  readonly time: number | undefined;
  /** "" where it is not known. */
  readonly source: string;
}

export const NOT_KNOWN: SpotRead = Object.freeze({ time: undefined, source: "" });

const TERMS = [
  "currency",
  "taxName",
  "tax",
  "taxIncluded",
  "shippingTaxed",
  "pricing",
  "deposit",
  "tolerance",
  "ownGoldShare",
] as const satisfies readonly (keyof Rates)[];

/** The rows of Rates that say them. */
const TERM_KEYS = [
  "currency",
  "taxName",
  "tax",
  "taxIs",
  "shippingTaxed",
  "priceBy",
  "markup",
  "margin",
  "premium",
  "deposit",
  "tolerance",
  "ownGoldShare",
  "spotTime",
  "spotSource",
] as const satisfies readonly RateKey[];

/** Quoted terms as texts, for a quote to keep; what is nothing is left out. */
export type WrittenTerms = Readonly<Partial<Record<(typeof TERM_KEYS)[number], string>>>;

/** The terms of a quote that is made at these rates. @param spotRead of the spot that it is quoted at */
export function termsOf(rates: Rates, spotRead: SpotRead): QuotedTerms {
  const terms = Object.fromEntries(TERMS.map((term) => [term, rates[term]])) as Omit<QuotedTerms, "spotRead">;
  return Object.freeze({ ...terms, spotRead });
}

/** Today's rates with the terms of a quote: what its order is read at, for its price was promised at them. */
export function atTerms(rates: Rates, { spotRead, ...terms }: QuotedTerms): Rates {
  return { ...rates, ...terms };
}

export function writeTerms({
  pricing,
  tax,
  taxIncluded,
  shippingTaxed,
  spotRead,
  ...terms
}: QuotedTerms): WrittenTerms {
  const { by } = pricing;
  const figure = by === "premium" ? pricing.rate.perGram : by === "own price" ? pricing.price.amount : pricing.share;
  return {
    currency: terms.currency,
    ...(terms.taxName === "" ? {} : { taxName: terms.taxName }),
    tax: written(tax),
    taxIs: taxIncluded ? "in the price" : "on top",
    shippingTaxed: shippingTaxed ? "yes" : "no",
    priceBy: by,
    [by]: written(figure),
    deposit: written(terms.deposit),
    tolerance: written(terms.tolerance),
    ownGoldShare: written(terms.ownGoldShare),
    ...(spotRead.time === undefined ? {} : { spotTime: String(spotRead.time) }),
    ...(spotRead.source === "" ? {} : { spotSource: spotRead.source }),
  };
}

/** Reads what writeTerms wrote, as Rates are read. */
export function parseTerms(texts: Readonly<Record<string, unknown>>): Parsed<QuotedTerms> {
  const forms = shapeFor(texts.priceBy, false);
  const { currency, taxName, tax, taxIs, shippingTaxed, priceBy, markup, margin, premium } = forms;
  const { deposit, tolerance, ownGoldShare } = forms;
  const priced = { currency, priceBy, markup, margin, premium };
  const others = { taxName, tax, taxIs, shippingTaxed, deposit, tolerance, ownGoldShare, ...SPOT_READ };
  const read = parseForm({ ...priced, ...others }, texts);
  if (!read.ok) return read;
  const { value } = read;
  return accepted({
    currency: value.currency,
    taxName: value.taxName,
    tax: value.tax,
    taxIncluded: value.taxIs === "in the price",
    shippingTaxed: value.shippingTaxed === "yes",
    pricing: pricingIn(value),
    deposit: value.deposit,
    tolerance: value.tolerance,
    ownGoldShare: value.ownGoldShare,
    spotRead: Object.freeze({ time: value.spotTime?.toNumber(), source: value.spotSource }),
  });
}

const SERIAL: NumberRule = { least: "0", most: "2958466", right: "a date and time as Excel counts days" };
const { optional, optionalText } = fieldsNamed({
  spotTime: RATE_ROWS.spotTime.label,
  spotSource: RATE_ROWS.spotSource.label,
});
const SPOT_READ = { spotTime: optional("spotTime", SERIAL), spotSource: optionalText("spotSource") };

function written(figure: Quotient): string {
  return figure.value().toFixed();
}

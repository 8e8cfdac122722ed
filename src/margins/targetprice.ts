import type { NumberRule } from "../exact/numberrule";
import { Quotient } from "../exact/quotient";
import { perGram, type Rate } from "../gold/goldrate";
import { HEAVIER_BY, type HeavierBy } from "../makeorbuy/crossover";
import type { Rates } from "../rates/rates";
import { fieldsNamed } from "../reading/formfields";
import { accepted, type Parsed, parseForm } from "../reading/parse";

export const MUST_BRING_LABELS = {
  premium: "Market premium",
  margin: "Wanted margin",
  heavierBy: "Heavier by",
} as const;
export type MustBringKey = keyof typeof MUST_BRING_LABELS;

export interface MustBring {
  /** What the market pays, with the tax where prices hold it; undefined where the field is blank. */
  readonly premium: Rate | undefined;
  /** Share of the price. */
  readonly margin: Quotient;
  readonly heavierBy: HeavierBy;
}

const PREMIUM: NumberRule = {
  least: "0",
  most: "1000000000000",
  right: "what the market pays a gram over the metal rate, such as 8",
};
const MARGIN: NumberRule = {
  share: true,
  least: "0",
  below: "1",
  right: "a share of the price from 0 to below 1, such as 0.30 or 30 %",
};

const named = fieldsNamed(MUST_BRING_LABELS);
const shape = {
  premium: named.optional("premium", PREMIUM),
  margin: named.number("margin", MARGIN),
  heavierBy: named.wordOr("heavierBy", HEAVIER_BY, "heavier links"),
};

/** Reads what the market pays, where that is known, and the margin wanted from it, or every fault in them. */
export function parseMustBring(record: Readonly<Record<MustBringKey, string>>, { currency }: Rates): Parsed<MustBring> {
  const read = parseForm(shape, record);
  if (!read.ok) return read;
  const { premium, ...wanted } = read.value;
  return accepted({ ...wanted, premium: premium && perGram(premium, currency) });
}

/** The margin that Rates price at: their margin, or what their markup comes to; by premium the least margin. */
export function usualMargin({ pricing, leastMargin }: Rates): Quotient {
  if (pricing.by === "margin") return pricing.share;
  if (pricing.by === "markup") return pricing.share.dividedBy(Quotient.one.plus(pricing.share));
  return leastMargin;
}

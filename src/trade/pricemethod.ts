import { MARKUP_RULE, MONEY_AT_LEAST_0, type NumberRule, SHARE } from "../exact/numberrule";
import type { Quotient } from "../exact/quotient";
import { perGram, type Rate } from "../gold/goldrate";
import type { Currency } from "../units/currency";
import { type Money, money } from "../units/money";

export const PRICE_METHODS = ["markup", "margin", "premium"] as const;
export type PriceMethod = (typeof PRICE_METHODS)[number];

/** How a piece is priced: by markup on landed cost, by margin on price, by premium over the metal rate, or at a price set by hand. */
export type Pricing =
  | { readonly by: "markup"; readonly share: Quotient }
  | { readonly by: "margin"; readonly share: Quotient }
  | { readonly by: "premium"; readonly rate: Rate }
  | { readonly by: "own price"; readonly price: Money };

/** What the figure of each way of pricing may be. */
export const RULE_OF: Readonly<Record<Pricing["by"], NumberRule>> = {
  markup: MARKUP_RULE,
  margin: SHARE,
  premium: MONEY_AT_LEAST_0,
  "own price": MONEY_AT_LEAST_0,
};

/** @param figure a share for markup and margin, money per gram for a premium, money for a price set by hand */
export function pricingOf(by: Pricing["by"], figure: Quotient, currency: Currency): Pricing {
  if (by === "premium") return Object.freeze({ by, rate: perGram(figure, currency) });
  if (by === "own price") return Object.freeze({ by, price: money(figure, currency) });
  return Object.freeze({ by, share: figure });
}

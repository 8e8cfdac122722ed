import { Decimal } from "../exact/decimal";
import { maximum, Quotient } from "../exact/quotient";
import type { Rate } from "../gold/goldrate";
import type { Currency } from "../units/currency";
import { addMoney, type Money, money, roundUpToStep, timesMoney } from "../units/money";
import type { Weight } from "../units/weight";
import { priceAtMargin, priceAtMarkup, priceAtPremium } from "./price";
import type { Pricing } from "./pricemethod";
import { type SalesTax, shownFactor } from "./salestax";

/** What a piece is priced by: markup and margin look at its landed cost, a premium at its weight and what is apart from that. */
export interface PricedPiece<C extends Currency = Currency> {
  readonly landed: Money<C>;
  /** What does not go by the weight where a premium does: stones, plating, bought parts, engraving. */
  readonly apart: Money<NoInfer<C>>;
  readonly weight: Weight;
  readonly metalRate: Rate<NoInfer<C>>;
}

/** What a way of pricing asks for one piece, before tax and price step. */
export function askedPrice<C extends Currency>(
  { landed, apart, weight, metalRate }: PricedPiece<C>,
  pricing: Exclude<Pricing, { by: "own price" }>,
): Money<C> {
  switch (pricing.by) {
    case "markup":
      return priceAtMarkup(landed, pricing.share);
    case "margin":
      return priceAtMargin(landed, pricing.share);
    case "premium":
      return addMoney(priceAtPremium<Currency>(weight, metalRate, pricing.rate), apart) as Money<C>;
  }
}

/** A clasp or finding by its weight like the chain, but never for less than it cost: one without a weight is not given away. */
export function partAtPremium<C extends Currency>(
  weight: Weight,
  metalRate: Rate<C>,
  over: Rate<NoInfer<C>>,
  cost: Money<NoInfer<C>>,
): Money<C> {
  return money(maximum(priceAtPremium(weight, metalRate, over).amount, cost.amount), metalRate.currency);
}

/** A price as it is shown: with the tax where shown prices hold it. Not rounded. */
export function shownPrice<C extends Currency>(asked: Money<C>, tax: SalesTax): Money<C> {
  return timesMoney(asked, shownFactor(tax));
}

/**
 * A shown price rounded up to the price step. Without a step it goes up to the smallest coin, so that no piece is ever given away.
 * @param digits decimals of the currency
 */
export function priceUpToStep<C extends Currency>(shown: Money<C>, step: Quotient, digits: number): Money<C> {
  const coin = Quotient.one.dividedBy(Quotient.of(new Decimal(10).pow(digits)));
  const rounded = roundUpToStep(shown, maximum(step, coin));
  return money(rounded.amount.toDecimals(digits), rounded.currency);
}

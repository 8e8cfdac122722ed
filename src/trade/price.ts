import { CostingError } from "../exact/errors";
import { Quotient } from "../exact/quotient";
import { addRates, costOf, type MetalRate, metalRate, perGram, type Rate, subtractRates } from "../gold/goldrate";
import { fineShare, type Mark } from "../gold/mark";
import type { Currency } from "../units/currency";
import { type Money, money, sameCurrency, subtractMoney, timesMoney } from "../units/money";
import { GRAMS_PER, type Weight } from "../units/weight";

/** Profit as a share of cost. @param cost above zero */
export function markup(cost: Quotient, price: Quotient): Quotient {
  return price.minus(cost).dividedBy(cost);
}

/** Profit as a share of price. @param price above zero */
export function margin(cost: Quotient, price: Quotient): Quotient {
  return price.minus(cost).dividedBy(price);
}

/** Cost x (1 + markup), not yet rounded to a step. */
export function priceAtMarkup<C extends Currency>(cost: Money<C>, share: Quotient): Money<C> {
  return money(cost.amount.times(Quotient.one.plus(share)), cost.currency);
}

/** Cost / (1 - margin), not yet rounded to a step. @param share below 1 */
export function priceAtMargin<C extends Currency>(cost: Money<C>, share: Quotient): Money<C> {
  return money(cost.amount.dividedBy(Quotient.one.minus(share)), cost.currency);
}

/** Weight x (metal rate + premium), not yet rounded to a step. */
export function priceAtPremium<C extends Currency>(weight: Weight, metal: Rate<C>, over: Rate<NoInfer<C>>): Money<C> {
  return costOf(weight, addRates(metal, over));
}

/** A price per gram less the metal rate. */
export function premium<C extends Currency>(price: Rate<C>, metal: Rate<NoInfer<C>>): Rate<C> {
  return subtractRates(price, metal);
}

/** A price per gram less the metal rate of the mark: what a piece's premium is beside those that others ask. */
export function premiumOverMark(price: Rate, metal: MetalRate<"the mark">): Rate {
  return premium(price, metal);
}

/** What a weight brings at a premium that others ask: a market counts from the mark, whatever is in the pot. */
export function priceOverMark(weight: Weight, metal: MetalRate<"the mark">, over: Rate): Money {
  return priceAtPremium<Currency>(weight, metal, over);
}

export interface AskingCheck<C extends Currency = Currency> {
  readonly asked: Rate<C>;
  readonly melt: Rate<C>;
  readonly premium: Rate<C>;
  /** Premium as a share of melt. */
  readonly aboveMelt: Quotient;
  /** Asked per gram less our landed cost per gram. */
  readonly aboveLanded: Rate<C> | undefined;
}

/** What someone else's price says of a piece of this weight and mark. Asked below melt is a warning, never a bargain by itself. */
export function askingCheck<C extends Currency>(
  price: Money<C>,
  weight: Weight,
  mark: Mark,
  spot: Money<NoInfer<C>>,
  landed?: Rate<NoInfer<C>>,
): AskingCheck<C> {
  sameCurrency(price, spot);
  const asked = perGram(price.amount.dividedBy(weight.grams), price.currency);
  const melt = perGram(metalRate(spot, mark).perGram, price.currency);
  const over = premium(asked, melt);
  return Object.freeze({
    asked,
    melt,
    premium: over,
    aboveMelt: over.perGram.dividedBy(melt.perGram),
    aboveLanded: landed && subtractRates(asked, landed),
  });
}

/**
 * The spot above which the margin of a price falls below the least margin:
 * (price x (1 - least margin) - other costs) x 31.1034768 / (cast weight x share of fine gold). Per troy ounce of fine gold.
 * Errors: neverReached where the other costs alone leave no room for any gold.
 */
export function spotLimit<C extends Currency>(
  price: Money<C>,
  cast: Weight,
  mark: Mark,
  otherCosts: Money<NoInfer<C>>,
  leastMargin: Quotient,
): Money<C> {
  const forGold = subtractMoney(timesMoney(price, Quotient.one.minus(leastMargin)), otherCosts).amount;
  if (forGold.isNegative()) {
    throw new CostingError(
      "neverReached",
      "otherCosts",
      "found costs besides the gold that alone leave less than the least margin; no spot is low enough",
    );
  }
  return money(forGold.times(Quotient.of(GRAMS_PER.ozt)).dividedBy(cast.grams.times(fineShare(mark))), price.currency);
}

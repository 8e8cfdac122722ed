import { CostingError } from "../exact/errors";
import { Quotient } from "../exact/quotient";
import type { Currency } from "../units/currency";
import { addMoney, type Money, timesMoney } from "../units/money";
import { GRAMS_PER, grams, type Weight } from "../units/weight";

/** A price that the final weight settles is stated for a weight to a hundredth of a gram, which is what a scale shows. */
export const STATED_DECIMALS = 2;

/**
 * The gold in what lies on a scale: its weight there less that of its stones, 0.2 g a carat.
 * Errors: outOfRange where the stones alone weigh as much.
 */
export function goldOnScale(onScale: Weight, carats: Quotient): Weight {
  const gold = onScale.grams.minus(carats.times(Quotient.of(GRAMS_PER.ct)));
  if (gold.isPositive()) return grams(gold);
  throw new CostingError(
    "outOfRange",
    "carats",
    "found stones that weigh as much as all that lies on the scale; give the carats of its stones, 5 to a gram",
  );
}

/** What a quote says of a price that the final weight settles. */
export interface Settling<C extends Currency = Currency> {
  readonly price: Money<C>;
  /** What a gram more or less changes it by. */
  readonly perGram: Money<NoInfer<C>>;
  /** Of the gold alone. */
  readonly stated: Weight;
  /** The share of it by which a settled weight may differ. */
  readonly tolerance: Quotient;
}

/** The price at the gold's final weight, not rounded; undefined where that differs by more than the tolerance and the price is to be agreed. */
export function settledPrice<C extends Currency>(quoted: Settling<C>, gold: Weight): Money<C> | undefined {
  const { price, perGram, stated, tolerance } = quoted;
  const more = gold.grams.minus(stated.grams);
  const off = more.isNegative() ? Quotient.zero.minus(more) : more;
  if (off.isGreaterThan(stated.grams.times(tolerance))) return undefined;
  return addMoney<Currency>(price, timesMoney<Currency>(perGram, more)) as Money<C>;
}

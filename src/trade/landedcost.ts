import { maximum, Quotient } from "../exact/quotient";
import { addRates, costOf, type MetalRate, perGram, type Rate } from "../gold/goldrate";
import type { Currency } from "../units/currency";
import { addMoney, type Money, money, sameCurrency, timesMoney } from "../units/money";
import { grams, timesWeight, type Weight } from "../units/weight";
import { benchLoss, castWeight, type Loss } from "./polishloss";

/**
 * How loss is charged. `finished`: all metal cast is paid for. `quick`, the bench shorthand: metal and casting on the stated
 * weight, plus the lost grams at the metal rate without the casting fee.
 */
export const COST_BASES = ["finished", "quick"] as const;
export type CostBasis = (typeof COST_BASES)[number];

export interface Making<C extends Currency = Currency> {
  /** Finished, or stated, weight. */
  readonly weight: Weight;
  readonly metalRate: MetalRate<"the pot", C>;
  readonly castingFee: Rate<NoInfer<C>>;
  readonly labour: Money<NoInfer<C>>;
  readonly loss: Loss;
  readonly other: Money<NoInfer<C>>;
  readonly basis: CostBasis;
}

/**
 * Everything spent to have the finished piece in hand.
 * finished: cast weight x (metal rate + casting fee) + labour + other.
 * quick: weight x (metal rate + casting fee) + labour + lost grams x metal rate + other.
 * Source: definitions of the trade; the worked figures are common practice.
 */
export function landedCost<C extends Currency>(making: Making<C>): Money<C> {
  const { weight, metalRate, castingFee, labour, loss, other, basis } = making;
  const castRate = addRates(metalRate, castingFee);
  const metal =
    basis === "finished"
      ? costOf(castWeight(weight, loss), castRate)
      : addMoney(costOf(weight, castRate), costOf(benchLoss(weight, loss), metalRate));
  return addMoney(metal, labour, other);
}

/** Money over a weight, per gram. @param weight above zero */
export function perGramOf<C extends Currency>(cost: Money<C>, weight: Weight): Rate<C> {
  return perGram(cost.amount.dividedBy(weight.grams), cost.currency);
}

/** Labour for one piece: flat + per link + per gram, and not below the minimum. */
export function labourCost<C extends Currency>(
  labour: {
    readonly flat: Money<C>;
    readonly perLink: Money<NoInfer<C>>;
    readonly perGram: Rate<NoInfer<C>>;
    readonly minimum: Money<NoInfer<C>>;
  },
  links: Quotient,
  weight: Weight,
): Money<C> {
  const worked = addMoney(labour.flat, timesMoney(labour.perLink, links), costOf(weight, labour.perGram));
  sameCurrency(worked, labour.minimum);
  return money(maximum(worked.amount, labour.minimum.amount), worked.currency);
}

/** What is made of a piece, and what is cast for it. */
interface CastPiece {
  readonly finished: Weight;
  readonly cast: Weight;
}

/** The weight that the caster's fee is counted on: all that is cast; on the quick basis the finished, or stated, weight. */
export function chargedWeight({ finished, cast }: CastPiece, basis: CostBasis): Weight {
  return basis === "quick" ? finished : cast;
}

/** The grams lost in polishing as they are charged: cast less finished; on the quick basis as the bench counts them. */
export function lostWeight({ finished, cast }: CastPiece, loss: Loss, basis: CostBasis): Weight {
  return basis === "quick" ? benchLoss(finished, loss) : grams(cast.grams.minus(finished.grams));
}

/** What a caster charges. */
export interface CastingTerms<C extends Currency = Currency> {
  readonly fee: Rate<C>;
  /** Least for the pieces of one design, cast together. */
  readonly minimum: Money<NoInfer<C>>;
}

/** Casting of one piece; the caster's minimum is for all pieces cast together, shared by them. @param pieces above zero */
export function castingCost<C extends Currency>(
  charged: Weight,
  { fee, minimum }: CastingTerms<C>,
  pieces: Quotient,
): Money<C> {
  const all = castingOfAll(costOf(timesWeight(charged, pieces), fee), minimum);
  return money(all.amount.dividedBy(pieces), all.currency);
}

/** What the caster charges for pieces cast together: by weight, but not below the minimum. */
export function castingOfAll<C extends Currency>(byWeight: Money<C>, minimum: Money<NoInfer<C>>): Money<C> {
  sameCurrency(byWeight, minimum);
  return money(maximum(byWeight.amount, minimum.amount), byWeight.currency);
}

/** Stones set: count x (stone price x (1 + breakage) + setting fee). @param breakage share of stones broken in setting */
export function stoneCost<C extends Currency>(
  count: Quotient,
  stonePrice: Money<C>,
  settingFee: Money<NoInfer<C>>,
  breakage: Quotient,
): Money<C> {
  const each = addMoney(timesMoney(stonePrice, Quotient.one.plus(breakage)), settingFee);
  return timesMoney(each, count);
}

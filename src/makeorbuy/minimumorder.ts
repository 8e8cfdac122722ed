import { maximum, Quotient } from "../exact/quotient";
import type { Rate } from "../gold/goldrate";
import { type Money, sameCurrency, timesMoney } from "../units/money";
import { grams, timesWeight, type Weight } from "../units/weight";
import type { MinimumOrder } from "./makeroffer";

/** What has to be ordered at once from a maker, in whole pieces of one weight. */
export interface LeastOrder {
  readonly pieces: Quotient;
  readonly weight: Weight;
  /** What it costs at the metal rate and the surcharge: cash that goes out. */
  readonly cash: Money;
  /** Pieces beyond those wanted, and the cash tied up in them as stock. */
  readonly spare: Quotient;
  readonly tiedUp: Money;
}

/**
 * The smallest order of whole pieces that holds those wanted and reaches a maker's minimum.
 * @param each weight and cost of one piece, both above zero
 * Errors: currencyMismatch.
 */
export function leastOrder(
  minimum: MinimumOrder | undefined,
  each: { readonly weight: Weight; readonly cost: Money },
  wanted: Quotient,
): LeastOrder {
  const pieces = maximum(wanted, minimum ? piecesIn(minimum, each) : Quotient.zero);
  const spare = pieces.minus(wanted);
  return Object.freeze({
    pieces,
    weight: timesWeight(each.weight, pieces),
    cash: timesMoney(each.cost, pieces),
    spare,
    tiedUp: timesMoney(each.cost, spare),
  });
}

/** Whether so many pieces may be ordered at all: a maker who sells five cannot sell one. */
export function isSoldAtOnce(
  minimum: MinimumOrder | undefined,
  each: { readonly weight: Weight; readonly cost: Money },
  pieces: Quotient,
): boolean {
  return minimum === undefined || !piecesIn(minimum, each).isGreaterThan(pieces);
}

/** The weight of one piece from which on so many of them reach a minimum. @param cost of a gram, above zero where it counts money */
export function leastWeightOf(minimum: MinimumOrder, cost: Rate, pieces: Quotient): Weight {
  const all = minimum.kind === "weight" ? minimum.weight.grams : minimum.money.amount.dividedBy(cost.perGram);
  return grams(all.dividedBy(pieces));
}

/** Long fractions may miss a whole number by their last digits: a ratio is rounded to 40 decimals before it is made whole. */
function piecesIn(minimum: MinimumOrder, each: { readonly weight: Weight; readonly cost: Money }): Quotient {
  const whole = (ratio: Quotient) => Quotient.of(ratio.rounded(DECIMALS)).ceil();
  if (minimum.kind === "weight") return whole(minimum.weight.grams.dividedBy(each.weight.grams));
  sameCurrency(each.cost, minimum.money);
  return whole(minimum.money.amount.dividedBy(each.cost.amount));
}
const DECIMALS = 40;

import { maximum, Quotient } from "../exact/quotient";
import { type Money, sameCurrency, timesMoney } from "../units/money";
import { timesWeight, type Weight } from "../units/weight";
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

function piecesIn(minimum: MinimumOrder, each: { readonly weight: Weight; readonly cost: Money }): Quotient {
  if (minimum.kind === "weight") return minimum.weight.grams.dividedBy(each.weight.grams).ceil();
  sameCurrency(each.cost, minimum.money);
  return minimum.money.amount.dividedBy(each.cost.amount).ceil();
}

import { CostingError } from "../exact/errors";
import { Quotient } from "../exact/quotient";
import { grams, type Weight } from "../units/weight";

/** What a polish loss is counted from: a share of the cast weight, a share of the finished weight, or grams. */
export const LOSS_BASES = ["cast", "finished", "grams"] as const;
export type LossBasis = (typeof LOSS_BASES)[number];

/** Cast weight less finished weight: a share below 1, or grams. */
export type Loss =
  | { readonly basis: "cast" | "finished"; readonly share: Quotient }
  | { readonly basis: "grams"; readonly weight: Weight };

/**
 * The weight to cast for a finished weight. Share of cast: finished / (1 - share). Share of finished, as official wastage
 * norms are written: finished x (1 + share). Grams: finished + grams. 10 g at 2.5 % is 10.256 g or 10.25 g.
 * Source: definitions; the wastage norms of India's Handbook of Procedures are shares of the finished content.
 */
export function castWeight(finished: Weight, loss: Loss): Weight {
  if (loss.basis === "grams") return grams(finished.grams.plus(loss.weight.grams));
  if (loss.basis === "finished") return grams(finished.grams.times(Quotient.one.plus(loss.share)));
  return grams(finished.grams.dividedBy(Quotient.one.minus(loss.share)));
}

/** What is left of a cast weight after polishing. Errors: outOfRange where nothing would be left. */
export function finishedWeight(cast: Weight, loss: Loss): Weight {
  const finished = left(cast, loss);
  if (!finished.isPositive())
    throw new CostingError("outOfRange", "loss", "found a loss of the whole cast weight; give less than was cast");
  return grams(finished);
}

function left(cast: Weight, loss: Loss): Quotient {
  if (loss.basis === "grams") return cast.grams.minus(loss.weight.grams);
  if (loss.basis === "finished") return cast.grams.dividedBy(Quotient.one.plus(loss.share));
  return cast.grams.times(Quotient.one.minus(loss.share));
}

/** Lost grams as the bench counts them: the grams given, or the stated weight x the share. */
export function benchLoss(stated: Weight, loss: Loss): Weight {
  return loss.basis === "grams" ? loss.weight : grams(stated.grams.times(loss.share));
}

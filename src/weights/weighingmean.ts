import { Decimal } from "../exact/decimal";
import { Quotient, sum } from "../exact/quotient";
import { grams, timesWeight, type Weight } from "../units/weight";
import { isBeyondDigits } from "./lastdigit";
import { studentT95 } from "./studentt";

/** Equal pieces, weighed together. */
export interface Weighing {
  /** Above zero. */
  readonly pieces: Quotient;
  /** Of all of them. */
  readonly weight: Weight;
}

/** The weight of one piece, by its weighings. */
export interface MeanWeight {
  readonly weighings: number;
  readonly pieces: Quotient;
  /** Exact: all weight over all pieces. */
  readonly mean: Weight;
  /** How far single pieces are from the mean, one standard deviation; undefined for one weighing. To 15 digits. */
  readonly spread: Weight | undefined;
  /** The true mean is within this of `mean`, 19 times in 20; undefined for one weighing. To 15 digits. */
  readonly within: Weight | undefined;
}

/**
 * The mean weight of one piece and its spread, from weighings of one or more pieces each. A weighing counts for as many
 * as its pieces: variance of one piece = sum(pieces x (own mean - mean)²) / (weighings - 1).
 * Source: definition of the weighted mean and its variance.
 * @param weighings at least one
 */
export function meanWeight(weighings: readonly Weighing[]): MeanWeight {
  const pieces = sum(weighings.map((each) => each.pieces));
  const total = sum(weighings.map((each) => each.weight.grams));
  const mean = total.dividedBy(pieces);
  if (weighings.length < 2) {
    return Object.freeze({
      weighings: weighings.length,
      pieces,
      mean: grams(mean),
      spread: undefined,
      within: undefined,
    });
  }
  const squares = weighings.map((each) => {
    const apart = each.weight.grams.dividedBy(each.pieces).minus(mean).value();
    return apart.times(apart).times(each.pieces.value());
  });
  const variance = Decimal.sum(...squares).div(weighings.length - 1);
  return Object.freeze({
    weighings: weighings.length,
    pieces,
    mean: grams(mean),
    spread: gramsOf(variance.sqrt()),
    within: gramsOf(
      variance
        .div(pieces.value())
        .sqrt()
        .times(studentT95(weighings.length - 1)),
    ),
  });
}

/** A weighing this many spreads from the mean of the others is worth a second look. Common practice. */
const SPREADS = 3;
const FEWEST_OTHERS = 3;

/**
 * Whether a weighing is further from the others than chance explains: more than three of their spreads, for its number of
 * pieces and theirs, and more than the scale's last digits. False with fewer than three others.
 * @param digit what one in the scale's last digit is
 */
export function isFarOff(weighing: Weighing, others: readonly Weighing[], digit: Weight): boolean {
  if (others.length < FEWEST_OTHERS) return false;
  const { mean, spread, pieces } = meanWeight(others);
  if (!spread || !isBeyondDigits(weighing.weight, timesWeight(mean, weighing.pieces), digit)) return false;
  const apart = weighing.weight.grams.dividedBy(weighing.pieces).minus(mean.grams).value().abs();
  const expected = Quotient.one.dividedBy(weighing.pieces).plus(Quotient.one.dividedBy(pieces)).value().sqrt();
  return apart.gt(spread.grams.value().times(expected).times(SPREADS));
}

/** Metal that went out to a finisher and came back. */
export interface Passage {
  /** Above zero. */
  readonly out: Weight;
  readonly back: Weight;
}

/** The share of what went out that did not come back, over all passages; below zero where more came back. Exact. */
export function meanLossShare(passages: readonly Passage[]): Quotient {
  const out = sum(passages.map((each) => each.out.grams));
  const back = sum(passages.map((each) => each.back.grams));
  return out.minus(back).dividedBy(out);
}

function gramsOf(value: Decimal): Weight {
  return grams(Quotient.of(value.toSignificantDigits(15)));
}

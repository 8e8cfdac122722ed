import { Decimal } from "../exact/decimal";
import { Quotient } from "../exact/quotient";
import { GRAMS_PER, grams, type Weight } from "../units/weight";

/** A scale that shows grams shows no more decimals; a weight with more was read in another unit. */
const MOST_DECIMALS = 4;
/** A hundredth of a pennyweight, in grams: as finely as scales show them. Common practice. */
export const PENNYWEIGHT_DIGIT = GRAMS_PER.dwt.times("0.01");

/** What one in the last digit of a weight is, as its scale showed it: 0.01 g of 20.52 g; of a weight read in pennyweights 0.01 dwt. */
export function lastDigit({ grams: value }: Weight): Weight {
  const decimals = value.value().toSignificantDigits(15).decimalPlaces();
  return grams(Quotient.of(decimals > MOST_DECIMALS ? PENNYWEIGHT_DIGIT : new Decimal(10).pow(-decimals)));
}

/** The finest last digit among some weights: zeros at the end of a figure are not kept in a cell. */
export function finestDigit(weights: readonly [Weight, ...Weight[]]): Weight {
  return weights.map(lastDigit).reduce((finest, digit) => (digit.grams.isLessThan(finest.grams) ? digit : finest));
}

const DIGITS_APART = Quotient.of(2);

/** Whether two weights are further apart than a scale's last digits explain: more than two of them. Common practice. */
export function isBeyondDigits(one: Weight, other: Weight, digit: Weight): boolean {
  const apart = one.grams.minus(other.grams);
  const size = apart.isNegative() ? Quotient.zero.minus(apart) : apart;
  return size.isGreaterThan(digit.grams.times(DIGITS_APART));
}

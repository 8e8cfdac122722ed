import { Decimal } from "../exact/decimal";
import { Quotient, sum } from "../exact/quotient";

/** A weight, in grams. */
export interface Weight {
  readonly kind: "weight";
  readonly grams: Quotient;
}

/**
 * Grams in one of each unit, exact.
 * Source: UCUM 1.9, units [gr], [pwt_tr], [oz_tr], [oz_av], [car_m]. The tola is 180 grains (3/8 of a troy ounce),
 * the Indian standard tola: from memory.
 */
export const GRAMS_PER = {
  g: new Decimal("1"),
  kg: new Decimal("1000"),
  mg: new Decimal("0.001"),
  dwt: new Decimal("1.55517384"),
  ozt: new Decimal("31.1034768"),
  gr: new Decimal("0.06479891"),
  oz: new Decimal("28.349523125"),
  ct: new Decimal("0.2"),
  tola: new Decimal("11.6638038"),
} as const;
export type WeightUnit = keyof typeof GRAMS_PER;

export function grams(amount: Quotient): Weight {
  return Object.freeze({ kind: "weight", grams: amount });
}

export function weightIn(amount: Quotient, unit: WeightUnit): Weight {
  return grams(amount.times(Quotient.of(GRAMS_PER[unit])));
}

/** How many of the unit a weight is. */
export function inWeightUnit(weight: Weight, unit: WeightUnit): Quotient {
  return weight.grams.dividedBy(Quotient.of(GRAMS_PER[unit]));
}

export function addWeights(...weights: readonly Weight[]): Weight {
  return grams(sum(weights.map((weight) => weight.grams)));
}

export function timesWeight(weight: Weight, count: Quotient): Weight {
  return grams(weight.grams.times(count));
}

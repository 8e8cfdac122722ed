import { Decimal } from "../exact/decimal";
import { Quotient } from "../exact/quotient";

/** A length, in millimetres. */
export interface Length {
  readonly kind: "length";
  readonly millimetres: Quotient;
}

/** Millimetres in one of each unit, exact. Source: UCUM 1.9, units [in_i], [ft_i] (25.4 mm and 12 in). */
export const MILLIMETRES_PER = {
  mm: new Decimal("1"),
  cm: new Decimal("10"),
  m: new Decimal("1000"),
  in: new Decimal("25.4"),
  ft: new Decimal("304.8"),
} as const;
export type LengthUnit = keyof typeof MILLIMETRES_PER;

export function millimetres(amount: Quotient): Length {
  return Object.freeze({ kind: "length", millimetres: amount });
}

export function lengthIn(amount: Quotient, unit: LengthUnit): Length {
  return millimetres(amount.times(Quotient.of(MILLIMETRES_PER[unit])));
}

/** How many of the unit a length is. */
export function inLengthUnit(length: Length, unit: LengthUnit): Quotient {
  return length.millimetres.dividedBy(Quotient.of(MILLIMETRES_PER[unit]));
}

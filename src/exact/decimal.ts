import DecimalJs from "decimal.js";

/** The only decimal type of this library: 60 significant digits, half away from zero, never in exponent form. */
export const Decimal = DecimalJs.clone({
  defaults: true,
  precision: 60,
  rounding: DecimalJs.ROUND_HALF_UP,
  toExpNeg: -1e6,
  toExpPos: 1e6,
});
export type Decimal = DecimalJs;

/** Named roundings. `halfAway`: half away from zero, the default for money. `up`: away from zero. `down`: towards zero. */
export type Rounding = "halfAway" | "up" | "down";

const MODE: Record<Rounding, DecimalJs.Rounding> = {
  halfAway: DecimalJs.ROUND_HALF_UP,
  up: DecimalJs.ROUND_UP,
  down: DecimalJs.ROUND_DOWN,
};

/** The value rounded once to a number of decimals. */
export function roundTo(value: Decimal, decimals: number, rounding: Rounding = "halfAway"): Decimal {
  return value.toDecimalPlaces(decimals, MODE[rounding]);
}

const PLAIN_DECIMAL = /^[+-]?(\d+\.?\d*|\.\d+)$/;

/** Reads a plain decimal text; undefined for anything else (separators, exponents, two points, words). */
export function parseDecimal(text: string): Decimal | undefined {
  const trimmed = text.trim();
  return PLAIN_DECIMAL.test(trimmed) && trimmed.length <= 320 ? new Decimal(trimmed) : undefined;
}

/** The decimal that a double's 15 significant digits show, which is what a person sees in a cell. Shape: finite numbers only. */
export function decimalOfCell(value: number): Decimal {
  return new Decimal(value.toPrecision(15));
}

/**
 * The exact value of a double, to 60 digits; `new Decimal` would take the shortest text that reads as the same double. Shape:
 * finite numbers only.
 */
export function decimalOfDouble(value: number): Decimal {
  let whole = value;
  let halvings = 0;
  for (; !Number.isInteger(whole); halvings += 1) whole *= 2;
  return new Decimal(BigInt(whole).toString()).div(new Decimal(2).pow(halvings));
}

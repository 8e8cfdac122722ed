import { decimalOfDouble } from "../exact/decimal";
import type { Quotient } from "../exact/quotient";
import { type Line, UNDECIDED } from "./lines";

/*
 * Pairs of doubles, high + low, |low| <= u|high| (u = 2^-53): about 106 bits. What each operation loses at most is derived here to
 * first order; bounds.ts counts a little more. What a sum of two doubles loses to rounding is a double itself, and so is what a
 * product loses (Dekker 1971, with doubles split into halves of 26 bits). So only the roundings named here count.
 *
 * a + b   the sum of the lows u² and its sum with the error 2 u², over |a| + |b|: 3 u².
 * a x b   each cross product u², their sum 2 u², its sum with the error 3 u², low x low u²: 8 u².
 * a / b   the remainder a - q b is three sums of at most 4 u |a|: 11 u²; the second quotient 4 u², by high alone 4 u²: 19 u².
 *
 * The last sum, of high and a smaller low, loses nothing.
 */

/** Splits a double into two halves of 26 bits. */
const SPLITTER = 2 ** 27 + 1;

export interface Pairs {
  readonly high: Line;
  readonly low: Line;
}

/** a + b, or a - b. */
export function addPairs(a: Pairs, b: Pairs, sign: 1 | -1, out: Pairs, count: number): void {
  const { high: ah, low: al } = a;
  const { high: bh, low: bl } = b;
  const { high, low } = out;
  for (let i = 0; i < count; i += 1) {
    const x = ah[i] ?? 0;
    const y = (bh[i] ?? 0) * sign;
    const sum = x + y;
    const back = sum - x;
    const error = x - (sum - back) + (y - back);
    const rest = error + ((al[i] ?? 0) + (bl[i] ?? 0) * sign);
    const top = sum + rest;
    high[i] = top;
    low[i] = rest - (top - sum);
  }
}

export function multiplyPairs(a: Pairs, b: Pairs, out: Pairs, count: number): void {
  const { high: ah, low: al } = a;
  const { high: bh, low: bl } = b;
  const { high, low } = out;
  for (let i = 0; i < count; i += 1) {
    const x = ah[i] ?? 0;
    const y = bh[i] ?? 0;
    const product = x * y;
    const rest = lost(x, y, product) + (x * (bl[i] ?? 0) + (al[i] ?? 0) * y);
    const top = product + rest;
    high[i] = top;
    low[i] = rest - (top - product);
  }
}

export function dividePairs(a: Pairs, b: Pairs, out: Pairs, count: number): void {
  const { high: ah, low: al } = a;
  const { high: bh, low: bl } = b;
  const { high, low } = out;
  for (let i = 0; i < count; i += 1) {
    const x = ah[i] ?? 0;
    const y = bh[i] ?? 0;
    const first = x / y;
    const product = first * y;
    const remainder = x - product - lost(first, y, product) + (al[i] ?? 0) - first * (bl[i] ?? 0);
    const second = remainder / y;
    const top = first + second;
    high[i] = top;
    low[i] = second - (top - first);
  }
}

/** The larger of a and b, or with -1 the smaller. Where they are too near each other to tell, either: 4 u³ apart at most. */
export function choosePairs(a: Pairs, b: Pairs, sign: 1 | -1, out: Pairs, count: number): void {
  const { high: ah, low: al } = a;
  const { high: bh, low: bl } = b;
  const { high, low } = out;
  for (let i = 0; i < count; i += 1) {
    const x = ah[i] ?? 0;
    const y = bh[i] ?? 0;
    const isFirst = (x - y + ((al[i] ?? 0) - (bl[i] ?? 0))) * sign >= 0;
    high[i] = isFirst ? x : y;
    low[i] = isFirst ? (al[i] ?? 0) : (bl[i] ?? 0);
  }
}

/** What a product of doubles lost to rounding, exactly. */
export function lost(x: number, y: number, product: number): number {
  const xs = x * SPLITTER;
  const xh = xs - (xs - x);
  const xl = x - xh;
  const ys = y * SPLITTER;
  const yh = ys - (ys - y);
  const yl = y - yh;
  return xl * yl - (product - xh * yh - xl * yh - xh * yl);
}

/** The powers of ten that are doubles without error. */
export const EXACT_TENS: readonly number[] = Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));
const DIGITS = 15;
/** Added to a number below 2^51 and taken away again, it leaves the nearest whole number. */
export const WHOLE_MAKER = 2 ** 52 + 2 ** 51;
/** Below this, hundredths have at most 15 digits. */
const MOST_HUNDREDTHS = 1e15;
/** A cell nearer to the middle between two decimals than this is left to the exact way. */
const MIDDLE = 1 / 2 - 2 ** -40;

/**
 * Reads cells as the decimals of their 15 digits: digits / 10^power, and the pair nearest to it. What the pair misses comes of
 * dividing what the cell's double is off by: 92 u². A row whose cell is near the middle between two decimals is marked in `open`.
 * @param values zero or from LEAST_CELL to below MOST_CELL, of either sign
 */
export function readDecimals(
  values: Line,
  digits: Line,
  powers: Line,
  out: Pairs,
  count: number,
  open: Uint8Array,
): void {
  const { high, low } = out;
  let power = DIGITS - 1;
  let ten = EXACT_TENS[power] ?? 1;
  for (let i = 0; i < count; i += 1) {
    const value = values[i] ?? 0;
    const hundredfold = value * 100;
    const hundredths = hundredfold + WHOLE_MAKER - WHOLE_MAKER;
    // Most cells are the doubles nearest to decimals of two places, as people type them.
    if (hundredths / 100 === value && Math.abs(hundredths) < MOST_HUNDREDTHS) {
      digits[i] = hundredths;
      powers[i] = 2;
      high[i] = value;
      low[i] = (hundredths - hundredfold - lost(value, 100, hundredfold)) / 100;
      continue;
    }
    let product = value * ten;
    // Beside a power of ten either scale will do: the double rounds to that power from both sides.
    while (Math.abs(product) >= 1e15 && power > 0) {
      power -= 1;
      ten = EXACT_TENS[power] ?? 1;
      product = value * ten;
    }
    while (Math.abs(product) < 1e14 && power < 22 && value !== 0) {
      power += 1;
      ten = EXACT_TENS[power] ?? 1;
      product = value * ten;
    }
    let whole = product + WHOLE_MAKER - WHOLE_MAKER;
    let over = product - whole + lost(value, ten, product);
    if (!(Math.abs(over) < MIDDLE)) {
      if (Math.abs(over) < 1 - MIDDLE) open[i] = UNDECIDED;
      // The product stood at the middle; what it lost to rounding lies beyond.
      const next = over > 0 ? 1 : -1;
      whole += next;
      over -= next;
    }
    const rest = -over / ten;
    const top = value + rest;
    digits[i] = whole;
    powers[i] = power;
    high[i] = top;
    low[i] = rest - (top - value);
  }
}

/** By how much an exact value exceeds its nearest double, as a double: it misses by u² of the value at most. */
export function lowOf(value: Quotient, high: number): number {
  return value.value().minus(decimalOfDouble(high)).toNumber();
}

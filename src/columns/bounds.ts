import type { Quotient } from "../exact/quotient";
import { type Grain, grainOf } from "./denominators";
import { lowOf } from "./pairmath";
import type { Step } from "./trace";

/*
 * The proof. Let u = 2^-53; every operation of doubles gives fl(x) = x(1 + e), |e| <= u, while nothing leaves the range of
 * normal doubles (`least` and `most` see to it). For each step we keep one constant, its bound r: whatever the row,
 *
 *     exact value = computed value x (1 + e), |e| <= r.        So a computed zero is a true zero, and signs are true.
 *
 * input      a cell of double x counts as the decimal of its 15 digits, half a unit of the 15th away at most: 46 u; and two
 *            more for a mark's division.
 * constant   u, the nearest double.
 * a x b      ra + rb + u, and a / b the same; what this leaves out is below 2^-24 of it: the slack.
 * a + b      of one sign: the errors are at most max(ra, rb)(|a| + |b|) = max(ra, rb)|a + b|; then u.
 * larger     of a and b, or the smaller: max(ra, rb), whichever the computed values choose.
 * decimals   a rounded value is computed with as the nearest double of its decimal: u.
 * a - b      the same over |a - b|, which may be small: a row goes on only if |a - b| >= (|a| + |b|) / SPARE, so SPARE times it.
 *
 * A rounding is certain where the computed value is further from every tie than r times itself. The few other rows, and all
 * where the nearest double is owed, are computed as pairs of doubles (columnpair.ts); there the same holds with
 *
 * input      140 u²: the pair misses the decimal by three roundings of a part that is at most 46 u x; and 24 u² for a mark's division.
 * constant   2 u².    a + b: 4 u².    a x b: 10 u².    a / b: 24 u².   larger: u² more.   decimals: 2 u².   Derived in columnpair.ts.
 *
 * Ties are proved there by whole numbers: a row's value is a whole number over a known denominator (columngrain.ts), so one
 * that is nearer to a tie than the smallest step between two such values is the tie.
 */

const U = 2 ** -53;
/** How much smaller a difference may be than what it is taken from. */
export const SPARE = { double: 2 ** 5, pair: 2 ** 10 } as const;
/** More than bounds lose to rounding, and to products of two bounds, while they are computed and used. */
export const SLACK = 1 + 2 ** -20;
export const LARGEST_BOUND = 2 ** -24;

/** Cells of other sizes go to the exact reference. */
export const LEAST_CELL = 1e-8;
export const MOST_CELL = 1e15;
/** The farthest power of ten that a step may reach: pairs have parts u² as small, and are split by 2^27. */
export const FARTHEST = 230;

/** A constant as a pair of doubles, with its grain. */
export interface Constant {
  readonly high: number;
  readonly low: number;
  readonly grain: Grain;
}

/** What is known of a step whatever the row. */
export interface Place {
  /** Bounds as a double and as a pair. */
  readonly double: number;
  readonly pair: number;
  /** Powers of ten around every value but zero. */
  readonly least: number;
  readonly most: number;
  /** At most zero, or at least zero. */
  readonly sign: -1 | 1;
  /** A whole number, as a double without error while below 2^53. */
  readonly whole: boolean;
  /** A difference: it must not be too small beside its operands, and have the sign that it had in the trace. */
  readonly differs: boolean;
  readonly constant?: Constant;
}

/** What the cells of a column are read as. */
export interface Input {
  /** Never below zero. */
  readonly unsigned: boolean;
  readonly whole: boolean;
  /** One cell for all rows. */
  readonly shared?: boolean;
  /** The largest it may be, where that is less than of any cell. */
  readonly most?: number;
}

/** What is known of a step from what is known of its operands. @param sign that it had in the trace */
export function placeOf(step: Step, sign: -1 | 1, places: readonly Place[], inputs: readonly Input[]): Place {
  if (step.kind === "input") return inputPlace(inputs[step.input], sign);
  if (step.kind === "constant") return constantPlace(step.value, sign);
  const a = earlier(places, step.a);
  if (!("b" in step)) return roundedPlace(step.kind === "decimals" ? step.decimals : 0, a);
  const b = earlier(places, step.b);
  if (step.kind === "times") {
    const size = { least: a.least + b.least, most: a.most + b.most };
    return { ...product(a, b, 10), ...size, whole: a.whole && b.whole };
  }
  if (step.kind === "larger" || step.kind === "smaller") return chosenPlace(step.kind, a, b);
  if (step.kind === "dividedBy") return { ...product(a, b, 24), least: a.least - b.most, most: a.most - b.least };
  return sumPlace(a, b, step.kind === "minus" ? -b.sign : b.sign, sign);
}

function inputPlace({ whole = false, most = MOST_CELL }: Partial<Input> = {}, sign: -1 | 1): Place {
  // A mark's number may be parts per thousand of a cell: three powers of ten more.
  const size = { least: Math.log10(LEAST_CELL) - 3, most: Math.max(0, Math.ceil(Math.log10(most))) };
  const bound = whole ? { double: 0, pair: 0 } : { double: 48 * U, pair: 164 * U * U };
  return { ...bound, ...size, sign, whole, differs: false };
}

function constantPlace(value: Quotient, sign: -1 | 1): Place {
  const high = value.toNumber();
  const size = Math.abs(high);
  const power = size === 0 ? 0 : Math.log10(size);
  const whole = Number.isSafeInteger(size) && value.over.abs().eq(value.under.times(size));
  const bound = whole ? { double: 0, pair: 0 } : { double: U, pair: 2 * U * U };
  const constant = { high, low: lowOf(value, high), grain: grainOf(value) };
  return { ...bound, least: Math.floor(power), most: Math.ceil(power), sign, whole, differs: false, constant };
}

function roundedPlace(decimals: number, { sign, most }: Place): Place {
  const size = { least: -decimals, most: Math.max(0, most) + 1 };
  const bound = decimals === 0 ? { double: 0, pair: 0 } : { double: U, pair: 2 * U * U };
  return { ...bound, ...size, sign, whole: decimals === 0, differs: false };
}

function product(a: Place, b: Place, loss: number): Omit<Place, "least" | "most"> {
  return {
    double: (a.double + b.double + U) * SLACK,
    pair: (a.pair + b.pair + loss * U * U) * SLACK,
    sign: a.sign === b.sign ? 1 : -1,
    whole: false,
    differs: false,
  };
}

function sumPlace(a: Place, b: Place, added: number, sign: -1 | 1): Place {
  const differs = a.sign !== added;
  const bound = { double: Math.max(a.double, b.double), pair: Math.max(a.pair, b.pair) + 4 * U * U };
  return {
    double: (bound.double * (differs ? SPARE.double : 1) + U) * SLACK,
    pair: bound.pair * (differs ? SPARE.pair : 1) * SLACK,
    least: Math.min(a.least, b.least) - (differs ? Math.log10(SPARE.pair) : 0),
    most: Math.max(a.most, b.most) + 1,
    sign: differs ? sign : a.sign,
    whole: a.whole && b.whole,
    differs,
  };
}

/** One that is not below zero makes the larger so, and one that is not above it the smaller. */
function chosenPlace(kind: "larger" | "smaller", a: Place, b: Place): Place {
  const strong = kind === "larger" ? 1 : -1;
  const sign = a.sign === strong || b.sign === strong ? strong : a.sign;
  return {
    double: Math.max(a.double, b.double),
    pair: Math.max(a.pair, b.pair) + U * U,
    least: Math.min(a.least, b.least),
    most: Math.max(a.most, b.most),
    sign,
    whole: a.whole && b.whole,
    differs: false,
  };
}

export function earlier(places: readonly Place[], at: number): Place {
  const place = places[at];
  if (!place) throw new Error(`Column plan: step ${at} is not made yet`);
  return place;
}

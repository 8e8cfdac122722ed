import type { Quotient } from "../exact/quotient";
import { type Grain, grainOf } from "./denominators";
import { lowOf } from "./pairmath";
import type { Step } from "./trace";

/*
 * The proof that columns give the bits of the exact way. Let u = 2^-53. Every operation of doubles gives x(1 + e) with |e| <= u,
 * x being its exact result, as long as nothing leaves the range of normal doubles (`least` and `most` see to that). For each step
 * one constant is kept, its bound r. Whatever the row,
 *
 *     exact value = computed value x (1 + e), |e| <= r.        So a computed zero is a true zero, and signs are true.
 *
 * input      a cell stands for the decimal of its 15 digits, which is half a unit of the 15th away at most: 46 u; and two more for
 *            the division of a mark.
 * constant   u: it is the nearest double.
 * a x b      ra + rb + u, and the same for a / b. What this leaves out is below 2^-24 of it; SLACK covers it.
 * a + b      of one sign: the errors are at most max(ra, rb)(|a| + |b|) = max(ra, rb)|a + b|; then u.
 * larger     of a and b, or the smaller: max(ra, rb), whichever of the two the computed values choose.
 * decimals   a rounded value is computed with as the nearest double of its decimal: u.
 * a - b      as a + b, but over |a - b|, which may be small. A row is taken only where |a - b| >= (|a| + |b|) / SPARE: SPARE times as much.
 *
 * A rounding is certain where the computed value is further from every tie than r times itself. The few other rows, and all
 * rows of which the nearest double is to be given, are computed as pairs of doubles (pairmath.ts). There the same holds with
 *
 * input      140 u²: the pair misses the decimal by three roundings of a part that is at most 46 u x; 24 u² more for a mark's division.
 * constant   2 u².    a + b: 4 u².    a x b: 10 u².    a / b: 24 u².   larger: u² more.   decimals: 2 u².   Derived in pairmath.ts.
 *
 * Ties are proved there by whole numbers: a row's value is a whole number over a known denominator (denominators.ts), so a value
 * nearer to a tie than the smallest step between two such values is the tie itself.
 */

const U = 2 ** -53;
/** How many times smaller a difference may be than the two values together. */
export const SPARE = { double: 2 ** 5, pair: 2 ** 10 } as const;
/** Covers what bounds themselves lose to rounding, and the products of two bounds that are left out. */
export const SLACK = 1 + 2 ** -20;
/** What one operation on pairs loses at most, in u². Derived in pairmath.ts: 3, 8 and 19, to first order. */
export const PAIR_LOSS = { sum: 4, product: 10, quotient: 24 } as const;
/** Up to here SLACK covers the products of two bounds. */
export const LARGEST_BOUND = 2 ** -24;

/** Cells of other sizes go the exact way. */
export const LEAST_CELL = 1e-8;
export const MOST_CELL = 1e15;
/** The farthest power of ten that a step may reach: a pair's low part is smaller by u², and is split by 2^27, all within doubles. */
export const FARTHEST = 230;

/** A constant as a pair of doubles, with its grain. */
export interface Constant {
  readonly high: number;
  readonly low: number;
  readonly grain: Grain;
}

/** What is known of a step's value, whatever the row. */
export interface StepBound {
  /** The bounds r of the proof, computed as a double and as a pair. */
  readonly double: number;
  readonly pair: number;
  /** Every value but zero lies between these powers of ten. */
  readonly least: number;
  readonly most: number;
  /** 1: never below zero; -1: never above. */
  readonly sign: -1 | 1;
  /** A whole number: a double holds it without error below 2^53. */
  readonly whole: boolean;
  /** A difference: a row is taken only where it is not too small beside its operands and has the trace's sign. */
  readonly differs: boolean;
  /** Of a constant. */
  readonly constant?: Constant;
}

/** What is known of the cells of a column. */
export interface Input {
  /** Never below zero. */
  readonly unsigned: boolean;
  readonly whole: boolean;
  /** One cell for all rows. */
  readonly shared?: boolean;
  /** The largest that a cell may be, where less than MOST_CELL. */
  readonly most?: number;
}

/** What is known of a step, from what is known of its operands. @param sign the sign that it had in the trace */
export function boundOf(step: Step, sign: -1 | 1, bounds: readonly StepBound[], inputs: readonly Input[]): StepBound {
  if (step.kind === "input") return inputBound(inputs[step.input], sign);
  if (step.kind === "constant") return constantBound(step.value, sign);
  const a = earlier(bounds, step.a);
  if (!("b" in step)) return roundedBound(step.kind === "decimals" ? step.decimals : 0, a);
  const b = earlier(bounds, step.b);
  if (step.kind === "times") {
    const size = { least: a.least + b.least, most: a.most + b.most };
    return { ...product(a, b, PAIR_LOSS.product), ...size, whole: a.whole && b.whole };
  }
  if (step.kind === "larger" || step.kind === "smaller") return chosenBound(step.kind, a, b);
  if (step.kind === "dividedBy")
    return { ...product(a, b, PAIR_LOSS.quotient), least: a.least - b.most, most: a.most - b.least };
  return sumBound(a, b, step.kind === "minus" ? -b.sign : b.sign, sign);
}

function inputBound({ whole = false, most = MOST_CELL }: Partial<Input> = {}, sign: -1 | 1): StepBound {
  // A mark's number may be parts per thousand of a cell: three powers of ten more.
  const size = { least: Math.log10(LEAST_CELL) - 3, most: Math.max(0, Math.ceil(Math.log10(most))) };
  const bound = whole ? { double: 0, pair: 0 } : { double: 48 * U, pair: 164 * U * U };
  return { ...bound, ...size, sign, whole, differs: false };
}

function constantBound(value: Quotient, sign: -1 | 1): StepBound {
  const high = value.toNumber();
  const size = Math.abs(high);
  const power = size === 0 ? 0 : Math.log10(size);
  const whole = Number.isSafeInteger(size) && value.over.abs().eq(value.under.times(size));
  const bound = whole ? { double: 0, pair: 0 } : { double: U, pair: 2 * U * U };
  const constant = { high, low: lowOf(value, high), grain: grainOf(value) };
  return { ...bound, least: Math.floor(power), most: Math.ceil(power), sign, whole, differs: false, constant };
}

function roundedBound(decimals: number, { sign, most }: StepBound): StepBound {
  const size = { least: -decimals, most: Math.max(0, most) + 1 };
  const bound = decimals === 0 ? { double: 0, pair: 0 } : { double: U, pair: 2 * U * U };
  return { ...bound, ...size, sign, whole: decimals === 0, differs: false };
}

function product(a: StepBound, b: StepBound, loss: number): Omit<StepBound, "least" | "most"> {
  return {
    double: (a.double + b.double + U) * SLACK,
    pair: (a.pair + b.pair + loss * U * U) * SLACK,
    sign: a.sign === b.sign ? 1 : -1,
    whole: false,
    differs: false,
  };
}

function sumBound(a: StepBound, b: StepBound, added: number, sign: -1 | 1): StepBound {
  const differs = a.sign !== added;
  const bound = { double: Math.max(a.double, b.double), pair: Math.max(a.pair, b.pair) + PAIR_LOSS.sum * U * U };
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

/** The larger is not below zero where one of them is not; the smaller not above zero where one of them is not. */
function chosenBound(kind: "larger" | "smaller", a: StepBound, b: StepBound): StepBound {
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

export function earlier(bounds: readonly StepBound[], at: number): StepBound {
  const bound = bounds[at];
  if (!bound) throw new Error(`Columns: step ${at} has no bound yet`);
  return bound;
}

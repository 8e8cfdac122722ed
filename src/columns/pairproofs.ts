import { PAIR_LOSS, SLACK, SPARE } from "./bounds";
import { grainStep } from "./denominators";
import { OTHER_PATH, UNDECIDED } from "./lines";
import { EXACT_TENS, lost } from "./pairmath";
import type { PlannedComparison, PlannedStep } from "./plan";
import type { PairRows } from "./scratch";

/*
 * What pairs decide: by their bounds, and at ties by grains. A value may be so near a tie that its error does not tell on which
 * side it lies. Where its distance and its error are together less than the smallest step between two values of its grain, it is
 * the tie; half a step, where the tie lies in the middle between two such values. Rows that remain are marked in `open`.
 */

const WHOLE_LIMIT = 2 ** 52;
const U2 = 2 ** -106;

/** Rounds half away from zero to so many decimals; the high of `out` is the nearest double of the rounded decimal. */
export function roundPair(
  a: PairRows,
  { decimals, pair, used }: PlannedStep,
  out: PairRows,
  count: number,
  open: Uint8Array,
): void {
  const scale = EXACT_TENS[decimals] ?? Number.NaN;
  // One more product of pairs: that with the scale.
  const spread = (pair + PAIR_LOSS.product * U2) * SLACK;
  for (let i = 0; i < count; i += 1) {
    const high = Math.abs(a.high[i] ?? 0);
    const low = (a.high[i] ?? 0) < 0 ? -(a.low[i] ?? 0) : (a.low[i] ?? 0);
    const scaled = high * scale;
    const whole = Math.floor(scaled);
    const past = scaled - whole - 1 / 2 + (lost(high, scale, scaled) + low * scale);
    const reach = spread * scaled;
    const far = Math.abs(past);
    const isTie = far <= reach && far + reach < stepOf(a, i, decimals) / 2;
    const nearest = (past > 0 || isTie ? whole + 1 : whole) / scale;
    out.high[i] = (a.high[i] ?? 0) < 0 ? -nearest : nearest;
    out.low[i] = 0;
    if (!((far > reach || isTie) && scaled < WHOLE_LIMIT)) open[i] = UNDECIDED;
  }
  if (used) keepRounded(out, decimals, scale, count);
}

/** Completes a rounded decimal that other steps compute with: its rest beside its nearest double, and its grain. */
function keepRounded(out: PairRows, decimals: number, scale: number, count: number): void {
  for (let i = 0; i < count; i += 1) {
    const high = out.high[i] ?? 0;
    const product = high * scale;
    out.low[i] = (Math.round(product) - product - lost(high, scale, product)) / scale;
    if (!out.grains) continue;
    out.grains.power[i] = decimals;
    out.grains.count[i] = 1;
  }
}

/** The least whole number not below the value, or the greatest not above it. */
export function makePairWhole(
  a: PairRows,
  { kind, pair }: PlannedStep,
  out: PairRows,
  count: number,
  open: Uint8Array,
): void {
  const up = kind === "ceil";
  const spread = (pair + U2) * SLACK;
  for (let i = 0; i < count; i += 1) {
    const high = a.high[i] ?? 0;
    const near = Math.round(high);
    const past = high - near + (a.low[i] ?? 0);
    const reach = spread * Math.abs(high);
    const far = Math.abs(past);
    const isWhole = high === 0 || (far <= reach && far + reach < stepOf(a, i, 0));
    const beyond = up ? (past > 0 ? near + 1 : near) : past < 0 ? near - 1 : near;
    out.high[i] = isWhole ? near : beyond;
    out.low[i] = 0;
    if (out.grains) {
      out.grains.power[i] = 0;
      out.grains.count[i] = 1;
    }
    if (!((far > reach || isWhole) && Math.abs(high) < WHOLE_LIMIT)) open[i] = UNDECIDED;
  }
}

/** Takes a difference that is large enough beside its operands and has the trace's sign, or one that is proved to be zero. */
export function checkPairDifference(
  out: PairRows,
  a: PairRows,
  b: PairRows,
  { bound: { sign }, pair }: PlannedStep,
  count: number,
  open: Uint8Array,
): void {
  const least = SLACK / SPARE.pair;
  // Where the high part of the sum is smaller than the low, its last sum loses 3 u² more.
  const spread = (pair + 2 * PAIR_LOSS.sum * U2) * SLACK;
  for (let i = 0; i < count; i += 1) {
    const size = Math.abs(a.high[i] ?? 0) + Math.abs(b.high[i] ?? 0);
    const difference = (out.high[i] ?? 0) * sign;
    if (difference > 0 && difference >= size * least) continue;
    if (size === 0 || Math.abs(difference) + spread * size < stepOf(out, i, 0)) {
      out.high[i] = 0;
      out.low[i] = 0;
    } else open[i] = -difference >= size * least ? OTHER_PATH : UNDECIDED;
  }
}

export function checkPairSign({ high }: PairRows, sign: number, count: number, open: Uint8Array): void {
  for (let i = 0; i < count; i += 1) if (!((high[i] ?? 0) * sign >= 0)) open[i] = OTHER_PATH;
}

/** Whether a row answers as the plan does. */
export function checkPairComparison(
  { below, equal, above, pair }: PlannedComparison,
  a: PairRows,
  b: PairRows | undefined,
  count: number,
  open: Uint8Array,
): void {
  const spread = (pair + PAIR_LOSS.sum * U2) * SLACK;
  for (let i = 0; i < count; i += 1) {
    const x = a.high[i] ?? 0;
    const y = b?.high[i] ?? 0;
    const apart = x - y + ((a.low[i] ?? 0) - (b?.low[i] ?? 0));
    const reach = b ? spread * (Math.abs(x) + Math.abs(y)) : 0;
    if (apart > reach) {
      if (!above) open[i] = OTHER_PATH;
    } else if (apart < -reach) {
      if (!below) open[i] = OTHER_PATH;
    } else if (!isEqual(a, b, i, Math.abs(apart) + reach)) open[i] = UNDECIDED;
    else if (!equal) open[i] = OTHER_PATH;
  }
}

/** A row is decided where every value within the error of its pair has the same nearest double. */
export function nearestDouble(
  { high, low }: Pick<PairRows, "high" | "low">,
  bound: number,
  count: number,
  open: Uint8Array,
): void {
  // The sum of the low part and the error is rounded itself: u² of the high part at most.
  const spread = (bound + U2) * SLACK;
  for (let i = 0; i < count; i += 1) {
    const top = high[i] ?? 0;
    const rest = low[i] ?? 0;
    const reach = spread * Math.abs(top);
    if (!(top + (rest - reach) === top && top + (rest + reach) === top)) open[i] = UNDECIDED;
  }
}

function stepOf({ grains }: PairRows, row: number, decimals: number): number {
  return grains ? grainStep((grains.power[row] ?? 0) - decimals, grains.count[row] ?? 0) : 0;
}

function isEqual(a: PairRows, b: PairRows | undefined, row: number, within: number): boolean {
  if (within === 0) return true;
  if (!a.grains || !b?.grains) return false;
  const power = Math.max(a.grains.power[row] ?? 0, b.grains.power[row] ?? 0);
  const [x, y] = [a.grains.count[row] ?? 0, b.grains.count[row] ?? 0];
  return within < grainStep(power, x === y ? x : x * y);
}

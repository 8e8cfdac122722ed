import type { Quotient } from "../exact/quotient";
import type { Line } from "./lines";

/*
 * Grains tell how finely a value can lie: value x 10^power x count is a whole number. So two values of one grain are equal, or at
 * least 1 / (10^power x count) apart. Counts are kept as doubles, which may be a hair off the whole number: they tell a size only.
 */
export interface Grains {
  readonly power: Line;
  readonly count: Line;
}

/** The grain of one value. */
export interface Grain {
  readonly power: number;
  readonly count: number;
}

/** The smallest step between two values of the grain; 0 where no double is so small, and then nothing is proved by it. */
export function grainStep(power: number, count: number): number {
  return 1 / (tenTo(Math.max(0, power)) * count);
}

const TENS: readonly number[] = Array.from({ length: 309 }, (_, power) => Number(`1e${power}`));

function tenTo(power: number): number {
  return TENS[power] ?? Number.POSITIVE_INFINITY;
}

/** The grains of digits / 10^powers, without the zeros at the end of the digits. */
export function grainDecimals(digits: Line, powers: Line, out: Grains, count: number): void {
  const { power, count: counts } = out;
  for (let i = 0; i < count; i += 1) {
    let rest = digits[i] ?? 0;
    let places = powers[i] ?? 0;
    for (const zeros of [8, 4, 2, 1]) {
      // A whole number of 15 digits over a power of ten is whole as a double only where it divides.
      const shorter = rest / tenTo(zeros);
      if (places >= zeros && Number.isInteger(shorter)) {
        rest = shorter;
        places -= zeros;
      }
    }
    power[i] = places;
    counts[i] = 1;
  }
}

/** a + b, or the larger or smaller of them, which is one of them: both are whole numbers over the larger power of ten and the product of both counts. */
export function grainSum(a: Grains, b: Grains, out: Grains, count: number): void {
  for (let i = 0; i < count; i += 1) {
    const x = a.count[i] ?? 0;
    const y = b.count[i] ?? 0;
    out.power[i] = Math.max(a.power[i] ?? 0, b.power[i] ?? 0);
    out.count[i] = x === y && Number.isSafeInteger(x) ? x : x * y;
  }
}

export function grainProduct(a: Grains, b: Grains, out: Grains, count: number): void {
  for (let i = 0; i < count; i += 1) {
    out.power[i] = (a.power[i] ?? 0) + (b.power[i] ?? 0);
    out.count[i] = (a.count[i] ?? 0) * (b.count[i] ?? 0);
  }
}

/** a / b: b is a whole number B over 10^power and count. So a / b is a whole number over a's grain times B, less b's power of ten. */
export function grainQuotient(a: Grains, b: Grains, divisor: Line, out: Grains, count: number): void {
  for (let i = 0; i < count; i += 1) {
    const power = b.power[i] ?? 0;
    const whole = Math.abs(divisor[i] ?? 0) * tenTo(power) * (b.count[i] ?? 0);
    out.power[i] = Math.max(0, (a.power[i] ?? 0) - power);
    out.count[i] = (a.count[i] ?? 0) * whole;
  }
}

/** The grain of a constant: a decimal over another. */
export function grainOf(value: Quotient): Grain {
  const { over, under } = value;
  return { power: over.decimalPlaces(), count: under.times(`1e${under.decimalPlaces()}`).toNumber() };
}

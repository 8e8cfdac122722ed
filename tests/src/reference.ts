import fc from "fast-check";
import Fraction from "fraction.js";
import { expect } from "vitest";
import { CostingError, type CostingErrorCode } from "../../src/exact/errors";
import { Quotient } from "../../src/exact/quotient";

/** The same value twice: as the library takes it, and as fraction.js, the outside reference, holds it exactly. */
export interface Figure {
  readonly text: string;
  readonly quotient: Quotient;
  readonly fraction: Fraction;
}

export function figure(text: string): Figure {
  return { text, quotient: Quotient.of(text), fraction: new Fraction(text) };
}

/** Decimals of a fixed number of places between two whole numbers; zero only where the bounds allow it. */
export function figures(least: number, most: number, places: number): fc.Arbitrary<Figure> {
  const scale = 10 ** places;
  return fc
    .integer({ min: Math.ceil(least * scale), max: Math.floor(most * scale) })
    .map((count) => figure(pointed(BigInt(count), places)));
}

/** Figures above zero. */
export function positives(most: number, places: number): fc.Arbitrary<Figure> {
  return fc
    .integer({ min: 1, max: Math.floor(most * 10 ** places) })
    .map((count) => figure(pointed(BigInt(count), places)));
}

/** Karats and millesimal finenesses as texts, with their exact share. */
export const marks: fc.Arbitrary<{ readonly text: string; readonly share: Fraction }> = fc.oneof(
  fc.integer({ min: 1, max: 24 }).map((karat) => ({ text: `${karat}K`, share: new Fraction(karat, 24) })),
  fc
    .integer({ min: 25, max: 1000 })
    .map((thousandths) => ({ text: String(thousandths), share: new Fraction(thousandths, 1000) })),
);

/** A whole number of 10^-places as a plain decimal text. */
export function pointed(count: bigint, places: number): string {
  const digits = (count < 0n ? -count : count).toString().padStart(places + 1, "0");
  const text = places === 0 ? digits : `${digits.slice(0, -places)}.${digits.slice(-places)}`;
  return count < 0n ? `-${text}` : text;
}

/** A fraction rounded half away from zero, in whole numbers only. */
export function rounded(value: Fraction, places: number): string {
  const doubled = 2n * value.n * 10n ** BigInt(places) + value.d;
  const count = doubled / (2n * value.d);
  return pointed(value.s < 0n ? -count : count, places);
}

/** The smallest whole number of steps not below a fraction of zero or more. */
export function upToStep(value: Fraction, step: Fraction): Fraction {
  return step.n === 0n ? value : value.div(step).ceil().mul(step);
}

/**
 * Holds where the library's value agrees with the reference to 36 decimals: far past any double or 20-digit decimal.
 * @param places where the value itself is rounded to so many: rounding it again to fewer may go the other way
 */
export function expectExact(actual: Quotient, expected: Fraction, places = 36): void {
  expect(actual.rounded(places).toFixed(places)).toBe(rounded(expected, places));
}

/** The CostingError a call throws. */
export function faultOf(call: () => unknown): CostingError {
  try {
    call();
  } catch (error) {
    expect(error).toBeInstanceOf(CostingError);
    if (error instanceof CostingError) return error;
  }
  throw new Error("no error was thrown");
}

export function expectFault(call: () => unknown, code: CostingErrorCode, ...said: readonly string[]): void {
  const fault = faultOf(call);
  expect(fault.code).toBe(code);
  for (const part of said) expect(fault.message).toContain(part);
}

import type { NumberRule } from "../exact/numberrule";
import { type Operation, Quotient, type Rounded, type Witness, witnessed } from "../exact/quotient";
import type { Value } from "./answers";

/** A value that a formula makes. Steps are numbered in the order in which they are made; `a` and `b` are numbers of earlier ones. */
export type Step =
  | { readonly kind: "input"; readonly input: number }
  | { readonly kind: "constant"; readonly value: Quotient }
  | { readonly kind: Operation; readonly a: number; readonly b: number }
  | { readonly kind: "ceil" | "floor"; readonly a: number }
  | { readonly kind: "decimals"; readonly a: number; readonly decimals: number };

/** A question that a formula asks on its way. The answer: the sign of a - b, or of a alone, is one of these. */
export interface Comparison {
  readonly a: number;
  readonly b: number | undefined;
  readonly signs: readonly number[];
}

/** The inputs that a formula reads itself: their numbers, by the names of the fields that read them. */
export type Fields = ReadonlyMap<string, number>;

/** A formula's run for one row. The same steps give the exact value of every row that answers the comparisons alike. */
export interface Trace {
  readonly steps: readonly Step[];
  /** The sign of each step in this row: -1, or 1 for zero and above. */
  readonly signs: readonly number[];
  readonly comparisons: readonly Comparison[];
  /** The number of a step, or the text or boolean that these answers lead to. */
  readonly outputs: readonly (number | string | boolean)[];
  /** The rules by which the formula itself read inputs. */
  readonly rules: ReadonlyMap<number, NumberRule>;
  /** The same for two rows where they take the same way through the formula. */
  readonly path: string;
}

/**
 * Runs a formula over one row and writes down what it did with the row's quotients. The formula itself, in src/ and in
 * trade terms, stays the only place where it is written.
 * @param inputs an object for each, never one for two: they are known by identity; undefined for one that the formula reads itself
 * @param fields the inputs that the formula reads itself
 * @returns the run's result, and its trace; no trace where the formula read a value as a decimal or double
 */
export function traced<T extends Value | readonly Value[]>(
  inputs: readonly (Quotient | undefined)[],
  formula: () => T,
  fields: Fields = new Map(),
): { readonly result: T; readonly trace: Trace | undefined } {
  const scribe = new Scribe(inputs, fields);
  const result = witnessed(scribe, formula);
  return { result, trace: scribe.trace(Array.isArray(result) ? result : [result as Value]) };
}

class Scribe implements Witness {
  private readonly steps: Step[] = [];
  private readonly signs: number[] = [];
  private readonly comparisons: Comparison[] = [];
  private readonly numbers = new Map<Quotient, number>();
  private readonly rules = new Map<number, NumberRule>();
  private lost = false;

  constructor(
    inputs: readonly (Quotient | undefined)[],
    private readonly fields: Fields,
  ) {
    inputs.forEach((value, input) => {
      if (value) this.numbers.set(value, input);
      this.steps.push({ kind: "input", input });
      this.signs.push(value ? signOf(value) : 1);
    });
  }

  /** A cell may be read more than once: it is the same input each time. */
  given(field: string, rule: NumberRule, value: Quotient): void {
    const input = this.fields.get(field);
    if (input === undefined) return;
    const known = this.rules.get(input);
    // A row would have to pass both rules.
    if (known && known !== rule) this.lost = true;
    this.rules.set(input, rule);
    this.numbers.set(value, input);
    this.signs[input] = signOf(value);
  }

  /** Whether the cell is this row's own cannot be told. */
  givenWithin(field: string): void {
    if (this.fields.has(field)) this.lost = true;
  }

  computed(kind: Operation, a: Quotient, b: Quotient, result: Quotient): void {
    if (this.isKnown(a) || this.isKnown(b)) this.write(result, this.simplest(kind, a, b));
  }

  rounded(how: Rounded, value: Quotient, result: Quotient): void {
    if (!this.isKnown(value)) return;
    const a = this.numberOf(value);
    this.write(result, typeof how === "string" ? { kind: how, a } : { kind: "decimals", a, ...how });
  }

  compared(a: Quotient, b: Quotient | undefined, signs: readonly number[]): void {
    if (!this.isKnown(a) && !(b && this.isKnown(b))) return;
    this.comparisons.push({ a: this.numberOf(a), b: b && this.numberOf(b), signs });
  }

  read(value: Quotient): void {
    if (this.isKnown(value)) this.lost = true;
  }

  trace(results: readonly Value[]): Trace | undefined {
    if (this.lost) return undefined;
    const outputs = results.map((value) => (value instanceof Quotient ? this.numberOf(value) : value));
    const { steps, signs, comparisons, rules } = this;
    return { steps, signs, comparisons, outputs, rules, path: JSON.stringify([signs, comparisons, outputs]) };
  }

  /** To add zero, or to multiply or divide by one, is no step: the result is the operand's own step. */
  private simplest(kind: Operation, a: Quotient, b: Quotient): Step | number {
    const idle = (value: Quotient, neutral: number) =>
      !this.isKnown(value) && value.over.eq(value.under.times(neutral));
    const isSum = kind === "plus" || kind === "minus";
    if ((isSum || kind === "times" || kind === "dividedBy") && idle(b, isSum ? 0 : 1)) return this.numberOf(a);
    if (kind === "plus" && idle(a, 0)) return this.numberOf(b);
    if (kind === "times" && idle(a, 1)) return this.numberOf(b);
    return { kind, a: this.numberOf(a), b: this.numberOf(b) };
  }

  private isKnown(value: Quotient): boolean {
    return this.numbers.has(value);
  }

  /** A value that comes from no input is a constant of the formula. */
  private numberOf(value: Quotient): number {
    const known = this.numbers.get(value);
    if (known !== undefined) return known;
    const constant = this.steps.findIndex((step) => step.kind === "constant" && step.value === value);
    if (constant >= 0) return constant;
    this.steps.push({ kind: "constant", value });
    this.signs.push(signOf(value));
    return this.steps.length - 1;
  }

  private write(result: Quotient, step: Step | number): void {
    if (typeof step === "number") {
      this.numbers.set(result, step);
      return;
    }
    this.numbers.set(result, this.steps.length);
    this.steps.push(step);
    this.signs.push(signOf(result));
  }
}

function signOf(value: Quotient): -1 | 1 {
  return value.sign() < 0 ? -1 : 1;
}

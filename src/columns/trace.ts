import type { NumberRule } from "../exact/numberrule";
import { type Operation, Quotient, type Rounded, type Witness, witnessed } from "../exact/quotient";
import type { Value } from "./answers";

/** One value that a formula made, in the order it made them; `a` and `b` are places of earlier ones. */
export type Step =
  | { readonly kind: "input"; readonly input: number }
  | { readonly kind: "constant"; readonly value: Quotient }
  | { readonly kind: Operation; readonly a: number; readonly b: number }
  | { readonly kind: "ceil" | "floor"; readonly a: number }
  | { readonly kind: "decimals"; readonly a: number; readonly decimals: number };

/** What the formula asked on its way: the sign of a - b, or of a alone, was one of these. */
export interface Turn {
  readonly a: number;
  readonly b: number | undefined;
  readonly signs: readonly number[];
}

/** Which cells a row's figures stand in: the place among the inputs by the name of the field that reads it. */
export type Fields = ReadonlyMap<string, number>;

/** A formula's run over one row: the same steps and turns give the exact value of any row that takes the same turns. */
export interface Trace {
  readonly steps: readonly Step[];
  /** The sign that each step had in this row: -1, or 1 for zero and above. */
  readonly signs: readonly number[];
  readonly turns: readonly Turn[];
  /** A place among the steps, or the word or truth that these turns lead to. */
  readonly outputs: readonly (number | string | boolean)[];
  /** The rules by which cells were read on the way, by their inputs. */
  readonly rules: ReadonlyMap<number, NumberRule>;
  /** Told apart from every other run of the formula that went another way. */
  readonly path: string;
}

/**
 * Runs a formula over one row and writes down what it did with the row's quotients. The formula itself, in src/ and in
 * trade terms, stays the only place where it is written.
 * @param inputs one object each, never shared: they are told apart by identity; undefined for one that is read on the way
 * @param fields the inputs that are read on the way
 * @returns the run's result, and its trace unless a value was read on the way
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
  private readonly turns: Turn[] = [];
  private readonly places = new Map<Quotient, number>();
  private readonly rules = new Map<number, NumberRule>();
  private lost = false;

  constructor(
    inputs: readonly (Quotient | undefined)[],
    private readonly fields: Fields,
  ) {
    inputs.forEach((value, input) => {
      if (value) this.places.set(value, input);
      this.steps.push({ kind: "input", input });
      this.signs.push(value ? signOf(value) : 1);
    });
  }

  /** A cell may be read more than once: each time it is the same input. */
  given(field: string, rule: NumberRule, value: Quotient): void {
    const input = this.fields.get(field);
    if (input === undefined) return;
    const known = this.rules.get(input);
    // Of two rules for one cell a row would have to pass both.
    if (known && known !== rule) this.lost = true;
    this.rules.set(input, rule);
    this.places.set(value, input);
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
    const a = this.placeOf(value);
    this.write(result, typeof how === "string" ? { kind: how, a } : { kind: "decimals", a, ...how });
  }

  compared(a: Quotient, b: Quotient | undefined, signs: readonly number[]): void {
    if (!this.isKnown(a) && !(b && this.isKnown(b))) return;
    this.turns.push({ a: this.placeOf(a), b: b && this.placeOf(b), signs });
  }

  read(value: Quotient): void {
    if (this.isKnown(value)) this.lost = true;
  }

  trace(results: readonly Value[]): Trace | undefined {
    if (this.lost) return undefined;
    const outputs = results.map((value) => (value instanceof Quotient ? this.placeOf(value) : value));
    const { steps, signs, turns, rules } = this;
    return { steps, signs, turns, outputs, rules, path: JSON.stringify([signs, turns, outputs]) };
  }

  /** Adding nothing, and multiplying or dividing by one, are no steps: the place is the operand's own. */
  private simplest(kind: Operation, a: Quotient, b: Quotient): Step | number {
    const idle = (value: Quotient, neutral: number) =>
      !this.isKnown(value) && value.over.eq(value.under.times(neutral));
    const isSum = kind === "plus" || kind === "minus";
    if ((isSum || kind === "times" || kind === "dividedBy") && idle(b, isSum ? 0 : 1)) return this.placeOf(a);
    if (kind === "plus" && idle(a, 0)) return this.placeOf(b);
    if (kind === "times" && idle(a, 1)) return this.placeOf(b);
    return { kind, a: this.placeOf(a), b: this.placeOf(b) };
  }

  private isKnown(value: Quotient): boolean {
    return this.places.has(value);
  }

  /** A quotient that comes from no input is a constant of the formula. */
  private placeOf(value: Quotient): number {
    const place = this.places.get(value);
    if (place !== undefined) return place;
    const constant = this.steps.findIndex((step) => step.kind === "constant" && step.value === value);
    if (constant >= 0) return constant;
    this.steps.push({ kind: "constant", value });
    this.signs.push(signOf(value));
    return this.steps.length - 1;
  }

  private write(result: Quotient, step: Step | number): void {
    if (typeof step === "number") {
      this.places.set(result, step);
      return;
    }
    this.places.set(result, this.steps.length);
    this.steps.push(step);
    this.signs.push(signOf(result));
  }
}

function signOf(value: Quotient): -1 | 1 {
  return value.sign() < 0 ? -1 : 1;
}

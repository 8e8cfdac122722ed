import { Decimal, type Rounding, roundTo } from "./decimal";
import type { NumberRule } from "./numberrule";

const ONE = new Decimal(1);

/** Operations on two values, and roundings of one. */
export type Operation = "plus" | "minus" | "times" | "dividedBy" | "larger" | "smaller";
export type Rounded = "ceil" | "floor" | { readonly decimals: number };

/** Receives every step between quotients while a formula runs, to find out what the formula computes from what. */
export interface Witness {
  computed(operation: Operation, a: Quotient, b: Quotient, result: Quotient): void;
  rounded(how: Rounded, value: Quotient, result: Quotient): void;
  /** The formula asked for the sign of a - b, or of a alone, and goes on the same way for each of `signs`. */
  compared(a: Quotient, b: Quotient | undefined, signs: readonly number[]): void;
  /** A value was read as a decimal or a double, so what is done with it cannot be followed any more. */
  read(value: Quotient): void;
  /** A cell was read as a value, by the rule of the field named. */
  given(field: string, rule: NumberRule, value: Quotient): void;
  /** A formula run within this one read a cell under this field's name: of its own table, or of this one's. */
  givenWithin(field: string): void;
}

let witness: Witness | undefined;

/** Runs a formula and reports its steps to a witness. The witness of a formula that this one runs within receives them too. */
export function witnessed<T>(by: Witness, run: () => T): T {
  const outer = witness;
  witness = outer ? bothWitnesses(by, outer) : by;
  try {
    return run();
  } finally {
    witness = outer;
  }
}

function bothWitnesses(inner: Witness, outer: Witness): Witness {
  return {
    computed(...step) {
      inner.computed(...step);
      outer.computed(...step);
    },
    rounded(...step) {
      inner.rounded(...step);
      outer.rounded(...step);
    },
    compared(...question) {
      inner.compared(...question);
      outer.compared(...question);
    },
    read(value) {
      inner.read(value);
      outer.read(value);
    },
    given(field, rule, value) {
      inner.given(field, rule, value);
      outer.givenWithin(field);
    },
    givenWithin(field) {
      inner.givenWithin(field);
      outer.givenWithin(field);
    },
  };
}

/** Reports to the witness that a cell was read as a value. */
export function reportGiven(field: string, rule: NumberRule, value: Quotient): void {
  witness?.given(field, rule, value);
}

const SIGNS = [-1, 0, 1];

/**
 * An exact value kept as one decimal over another: everything is multiplied first and divided last, once, when the
 * value is rounded or read. 14K is 14/24, not 583.33…; 0.33 g at 15.5517384 per troy ounce is 0.165, a true half cent.
 *
 * Exact while numerator and denominator stay within 60 digits, which every quantity of the trade does by far.
 */
export class Quotient {
  static readonly zero = new Quotient(new Decimal(0));
  static readonly one = new Quotient(new Decimal(1));

  /** @param under above zero */
  private constructor(
    readonly over: Decimal,
    readonly under: Decimal = ONE,
  ) {}

  static of(value: Decimal | string | number): Quotient {
    return new Quotient(new Decimal(value));
  }

  plus(other: Quotient): Quotient {
    const result = this.sum(other.over, other.under);
    witness?.computed("plus", this, other, result);
    return result;
  }

  minus(other: Quotient): Quotient {
    const result = this.sum(other.over.negated(), other.under);
    witness?.computed("minus", this, other, result);
    return result;
  }

  times(other: Quotient): Quotient {
    const result = new Quotient(this.over.times(other.over), this.under.times(other.under));
    witness?.computed("times", this, other, result);
    return result;
  }

  /** @param other not zero: the caller refuses zero first, with its own sentence */
  dividedBy(other: Quotient): Quotient {
    if (other.over.isZero()) throw new Error("Quotient: divided by zero");
    const over = this.over.times(other.under);
    const under = this.under.times(other.over);
    const result = under.isNegative() ? new Quotient(over.negated(), under.negated()) : new Quotient(over, under);
    witness?.computed("dividedBy", this, other, result);
    return result;
  }

  /** The larger, or the smaller, of two values. */
  larger(other: Quotient): Quotient {
    return this.chosen("larger", other, this.order(other) < 0 ? other : this);
  }

  smaller(other: Quotient): Quotient {
    return this.chosen("smaller", other, this.order(other) > 0 ? other : this);
  }

  /** The least whole number not below the value. */
  ceil(): Quotient {
    return this.roundedBy("ceil", this.quotient().ceil());
  }

  /** The greatest whole number not above the value. */
  floor(): Quotient {
    return this.roundedBy("floor", this.quotient().floor());
  }

  /** Rounded once, exactly, half away from zero. */
  toDecimals(decimals: number): Quotient {
    return this.roundedBy({ decimals }, roundTo(this.quotient(), decimals));
  }

  compare(other: Quotient): number {
    const sign = this.order(other);
    witness?.compared(this, other, [sign]);
    return sign;
  }

  equals(other: Quotient): boolean {
    return this.holds(other, this.order(other), 0);
  }

  isGreaterThan(other: Quotient): boolean {
    return this.holds(other, this.order(other), 1);
  }

  isLessThan(other: Quotient): boolean {
    return this.holds(other, this.order(other), -1);
  }

  isZero(): boolean {
    return this.holds(undefined, this.sign(), 0);
  }

  isNegative(): boolean {
    return this.holds(undefined, this.sign(), -1);
  }

  isPositive(): boolean {
    return this.holds(undefined, this.sign(), 1);
  }

  /** -1, 0 or 1, reported to no witness. */
  sign(): number {
    return this.over.isZero() ? 0 : this.over.isNegative() ? -1 : 1;
  }

  /** The value as a decimal of at most 60 digits. */
  value(): Decimal {
    witness?.read(this);
    return this.quotient();
  }

  /** The value as digits in a sentence; reported to no witness, since nothing is computed from a sentence. */
  inWords(): string {
    return this.quotient().toString();
  }

  /** Rounds once, exactly. */
  rounded(decimals: number, rounding: Rounding = "halfAway"): Decimal {
    return roundTo(this.value(), decimals, rounding);
  }

  /** The double nearest to the value. */
  toNumber(): number {
    return this.value().toNumber();
  }

  private quotient(): Decimal {
    return this.over.div(this.under);
  }

  private sum(over: Decimal, under: Decimal): Quotient {
    if (this.under.eq(under)) return new Quotient(this.over.plus(over), this.under);
    return new Quotient(this.over.times(under).plus(over.times(this.under)), this.under.times(under));
  }

  private order(other: Quotient): number {
    return this.over.times(other.under).cmp(other.over.times(this.under));
  }

  private holds(other: Quotient | undefined, sign: number, asked: number): boolean {
    const outcome = sign === asked;
    if (witness) witness.compared(this, other, outcome ? [asked] : SIGNS.filter((each) => each !== asked));
    return outcome;
  }

  /** A new object, so that a witness can tell the result from the two values it was chosen from. */
  private chosen(how: "larger" | "smaller", other: Quotient, of: Quotient): Quotient {
    const result = new Quotient(of.over, of.under);
    witness?.computed(how, this, other, result);
    return result;
  }

  private roundedBy(how: Rounded, value: Decimal): Quotient {
    const result = new Quotient(value);
    witness?.rounded(how, this, result);
    return result;
  }
}

export function maximum(a: Quotient, b: Quotient): Quotient {
  return a.larger(b);
}

export function minimum(a: Quotient, b: Quotient): Quotient {
  return a.smaller(b);
}

export function sum(values: readonly Quotient[]): Quotient {
  return values.reduce((total, value) => total.plus(value), Quotient.zero);
}

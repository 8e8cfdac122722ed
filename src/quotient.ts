import { Decimal, type Rounding, roundTo } from "./decimal";

const ONE = new Decimal(1);

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
    private readonly over: Decimal,
    private readonly under: Decimal = ONE,
  ) {}

  static of(value: Decimal | string | number): Quotient {
    return new Quotient(new Decimal(value));
  }

  plus(other: Quotient): Quotient {
    if (this.under.eq(other.under)) return new Quotient(this.over.plus(other.over), this.under);
    return new Quotient(this.over.times(other.under).plus(other.over.times(this.under)), this.under.times(other.under));
  }

  minus(other: Quotient): Quotient {
    return this.plus(new Quotient(other.over.negated(), other.under));
  }

  times(other: Quotient): Quotient {
    return new Quotient(this.over.times(other.over), this.under.times(other.under));
  }

  /** @param other not zero: the caller has refused it with a sentence of its own */
  dividedBy(other: Quotient): Quotient {
    if (other.over.isZero()) throw new Error("Quotient: divided by zero");
    const over = this.over.times(other.under);
    const under = this.under.times(other.over);
    return under.isNegative() ? new Quotient(over.negated(), under.negated()) : new Quotient(over, under);
  }

  compare(other: Quotient): number {
    return this.over.times(other.under).cmp(other.over.times(this.under));
  }

  equals(other: Quotient): boolean {
    return this.compare(other) === 0;
  }

  isGreaterThan(other: Quotient): boolean {
    return this.compare(other) > 0;
  }

  isLessThan(other: Quotient): boolean {
    return this.compare(other) < 0;
  }

  isZero(): boolean {
    return this.over.isZero();
  }

  isNegative(): boolean {
    return this.over.isNegative() && !this.over.isZero();
  }

  isPositive(): boolean {
    return this.over.isPositive() && !this.over.isZero();
  }

  /** The value as a decimal of at most 60 digits. */
  value(): Decimal {
    return this.over.div(this.under);
  }

  /** Rounds once, exactly. */
  rounded(decimals: number, rounding: Rounding = "halfAway"): Decimal {
    return roundTo(this.value(), decimals, rounding);
  }

  /** The double nearest to the value. */
  toNumber(): number {
    return this.value().toNumber();
  }
}

export function maximum(a: Quotient, b: Quotient): Quotient {
  return a.isLessThan(b) ? b : a;
}

export function minimum(a: Quotient, b: Quotient): Quotient {
  return b.isLessThan(a) ? b : a;
}

export function sum(values: readonly Quotient[]): Quotient {
  return values.reduce((total, value) => total.plus(value), Quotient.zero);
}

import type { Rounding } from "../exact/decimal";
import { CostingError } from "../exact/errors";
import { Quotient } from "../exact/quotient";
import type { Currency } from "./currency";
import { minorDigits } from "./currency";

/** An exact amount of one currency; rounded only by roundToCurrency. */
export interface Money<C extends Currency = Currency> {
  readonly kind: "money";
  readonly amount: Quotient;
  readonly currency: C;
}

export function money<C extends Currency>(amount: Quotient, currency: C): Money<C> {
  return Object.freeze({ kind: "money", amount, currency });
}

/** The sum of amounts of one currency. Errors: currencyMismatch. */
export function addMoney<C extends Currency>(first: Money<C>, ...others: readonly Money<NoInfer<C>>[]): Money<C> {
  return others.reduce<Money<C>>((total, other) => {
    sameCurrency(total, other);
    return money(total.amount.plus(other.amount), total.currency);
  }, first);
}

export function subtractMoney<C extends Currency>(from: Money<C>, other: Money<NoInfer<C>>): Money<C> {
  sameCurrency(from, other);
  return money(from.amount.minus(other.amount), from.currency);
}

export function timesMoney<C extends Currency>(amount: Money<C>, factor: Quotient): Money<C> {
  return money(amount.amount.times(factor), amount.currency);
}

/** Rounded once to the currency's minor unit (ISO 4217), half away from zero unless said otherwise. */
export function roundToCurrency<C extends Currency>(amount: Money<C>, rounding: Rounding = "halfAway"): Money<C> {
  const digits = minorDigits(amount.currency);
  const { amount: exact, currency } = amount;
  return money(
    rounding === "halfAway" ? exact.toDecimals(digits) : Quotient.of(exact.rounded(digits, rounding)),
    currency,
  );
}

/** The amount rounded up to a whole number of steps; a step of zero leaves it as it is. */
export function roundUpToStep<C extends Currency>(amount: Money<C>, step: Quotient): Money<C> {
  if (step.isZero()) return amount;
  return money(amount.amount.dividedBy(step).ceil().times(step), amount.currency);
}

/** Stops amounts or rates of two currencies from meeting. Errors: currencyMismatch. */
export function sameCurrency(a: { readonly currency: Currency }, b: { readonly currency: Currency }): void {
  if (a.currency !== b.currency) {
    throw new CostingError(
      "currencyMismatch",
      "currency",
      `found ${b.currency} beside ${a.currency}; give every amount in one currency`,
    );
  }
}

import { Quotient, sum } from "../exact/quotient";
import type { Money } from "../units/money";

/**
 * Cash of more than this, in US dollars, from one buyer for one order or connected orders is reported on Form 8300; instalments
 * within a year add up. Source: 26 U.S.C. 6050I(a); IRS Publication 1544.
 */
export const CASH_UNREPORTED = "10000";

/** Whether what one buyer pays, if all of it were cash, would have to be reported. Only US dollars count. */
export function isCashReported(payments: readonly Money[]): boolean {
  const dollars = payments.filter(({ currency }) => currency === "USD").map(({ amount }) => amount);
  return sum(dollars).isGreaterThan(Quotient.of(CASH_UNREPORTED));
}

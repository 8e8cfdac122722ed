import type { Quotient } from "../exact/quotient";
import type { Currency } from "../units/currency";
import { type Money, timesMoney } from "../units/money";

/** What a share of an amount takes off it. Not rounded. */
export function discountOn<C extends Currency>(amount: Money<C>, share: Quotient): Money<C> {
  return timesMoney(amount, share);
}

/** Rent, tools and desk time: a share of the cost before it. */
export function overheadOn<C extends Currency>(cost: Money<C>, share: Quotient): Money<C> {
  return timesMoney(cost, share);
}

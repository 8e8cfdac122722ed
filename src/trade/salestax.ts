import { Quotient } from "../exact/quotient";
import type { Currency } from "../units/currency";
import { type Money, money, timesMoney } from "../units/money";

/** How tax on sales stands to the prices that are shown. */
export const TAX_IS = ["on top", "in the price"] as const;

export interface SalesTax {
  readonly share: Quotient;
  /** Whether the prices shown hold it already. */
  readonly isIncluded: boolean;
}

/** What an amount without tax is multiplied by to be shown: it holds the tax where shown prices do. */
export function shownFactor({ share, isIncluded }: SalesTax): Quotient {
  return isIncluded ? Quotient.one.plus(share) : Quotient.one;
}

/** What is left of a shown amount without the tax that it holds. */
export function withoutTax<C extends Currency>(shown: Money<C>, tax: SalesTax): Money<C> {
  return money(shown.amount.dividedBy(shownFactor(tax)), shown.currency);
}

/** What a shown price brings: without the discount, a share of it, and the tax that it holds. */
export function netPrice<C extends Currency>(shown: Money<C>, discount: Quotient, tax: SalesTax): Money<C> {
  return withoutTax(timesMoney(shown, Quotient.one.minus(discount)), tax);
}

/** The tax in a shown amount, or on top of it. Not rounded. */
export function taxOf<C extends Currency>(shown: Money<C>, tax: SalesTax): Money<C> {
  return money(shown.amount.times(tax.share).dividedBy(shownFactor(tax)), shown.currency);
}

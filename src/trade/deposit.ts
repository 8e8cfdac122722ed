import { maximum, Quotient } from "../exact/quotient";
import type { Currency } from "../units/currency";
import { type Money, money, sameCurrency, subtractMoney } from "../units/money";

/** When the tax in a deposit is to be paid on: then it pays for nothing before the sale. */
export const TAX_DUE = ["at delivery", "with the deposit"] as const;
export type TaxDue = (typeof TAX_DUE)[number];

/** What is left of a deposit for what goes out before the sale. @param tax in the deposit */
export function depositCovers<C extends Currency>(deposit: Money<C>, tax: Money<NoInfer<C>>, due: TaxDue): Money<C> {
  const left = due === "with the deposit" ? subtractMoney(deposit, tax) : deposit;
  return subtractMoney(left, paymentFeeOn(left));
}

/** What whoever carries the payment keeps of it: no rate says so yet. */
function paymentFeeOn<C extends Currency>({ currency }: Money<C>): Money<C> {
  return money(Quotient.zero, currency);
}

/** Cash of one's own before the first sale: what is paid once, and of what the pieces cost what deposits do not cover. */
export function cashBeforeSale<C extends Currency>(
  once: Money<C>,
  made: Money<NoInfer<C>>,
  deposits: Money<NoInfer<C>>,
): Money<C> {
  sameCurrency(once, made);
  return money(once.amount.plus(maximum(made.amount.minus(deposits.amount), Quotient.zero)), once.currency);
}

/**
 * The least deposit, as a share of the price of pieces, at which cash carries them; undefined where not even all of it does.
 * @param room the cash that is left when what is paid once is paid @param price of all the pieces, above zero
 */
export function depositWanted<C extends Currency>(
  room: Money<C>,
  made: Money<NoInfer<C>>,
  price: Money<NoInfer<C>>,
): Quotient | undefined {
  if (room.amount.isNegative()) return undefined;
  const share = cashBeforeSale(money(Quotient.zero, room.currency), made, room).amount.dividedBy(price.amount);
  return share.isGreaterThan(Quotient.one) ? undefined : share;
}

import { maximum, Quotient } from "../exact/quotient";
import type { Order } from "../order/order";
import type { GoldBalance } from "../order/owngold";
import type { Rates } from "../rates/rates";
import { cashBeforeSale, depositCovers, depositWanted } from "../trade/deposit";
import { type Money, money, roundToCurrency, roundUpToStep, timesMoney } from "../units/money";
import { GRAMS_PER } from "../units/weight";

/** What a customer pays in all, the tax in it, and what of it is still to be paid once their gold is credited. */
interface Payment {
  readonly total: Money;
  readonly tax: Money;
  readonly toPay: Money;
}

/** A deposit, and whether it pays for what goes out before the work is sold. */
export interface OrderDeposit {
  readonly deposit: Money;
  /** The tax in it. Not rounded. */
  readonly depositTax: Money;
  /** What of it is left for that: without its tax where that is due with it, and without what its payment costs. Not rounded. */
  readonly covers: Money;
  readonly isShort: boolean;
  /** The shares of what is to be paid, where it is more than was wanted. */
  readonly raised: { readonly from: Quotient; readonly to: Quotient } | undefined;
}

/** A deposit grows by twentieths of what is to be paid, so that it does not spell out to the customer what goes out. */
const TWENTIETHS = Quotient.of(20);

/**
 * The wanted share of what is to be paid, or where more cash goes out before the work is sold, the next twentieth that covers it;
 * one that was typed for the order stays as it was typed. Rounded up to the price step, at least to whole money, and never above
 * what is to be paid.
 */
export function orderDeposit(
  { deposit: wanted, isDepositTyped }: Order,
  paid: Payment,
  cashOut: Money,
  rates: Rates,
): OrderDeposit {
  const none = money(Quotient.zero, rates.currency);
  const coveredBy = (deposit: Money) => depositCovers(deposit, taxIn(deposit, paid), rates.taxDue);
  const isNone = wanted.isZero() || !paid.toPay.amount.isPositive();
  const share = isDepositTyped || isNone ? wanted : maximum(wanted, twentiethFor(cashOut, coveredBy(paid.toPay)));
  const deposit = isNone ? none : ofWhatIsPaid(share, paid.toPay, rates);
  const covers = coveredBy(deposit);
  return Object.freeze({
    deposit,
    depositTax: taxIn(deposit, paid),
    covers,
    isShort: cashBeforeSale(none, cashOut, covers).amount.isPositive(),
    raised: share.isGreaterThan(wanted) ? Object.freeze({ from: wanted, to: share }) : undefined,
  });
}

/** The tax in a payment is the share of it that is tax in the whole. */
function taxIn({ amount, currency }: Money, { total, tax }: Payment): Money {
  return money(total.amount.isPositive() ? amount.times(tax.amount).dividedBy(total.amount) : Quotient.zero, currency);
}

/** @param whole what all that is to be paid would cover */
function twentiethFor(cashOut: Money, whole: Money): Quotient {
  const share = depositWanted(money(Quotient.zero, cashOut.currency), cashOut, whole) ?? Quotient.one;
  return Quotient.of(share.times(TWENTIETHS).value().ceil()).dividedBy(TWENTIETHS);
}

function ofWhatIsPaid(share: Quotient, toPay: Money, { priceStep }: Rates): Money {
  const rounded = roundToCurrency(roundUpToStep(timesMoney(toPay, share), maximum(priceStep, Quotient.one)), "up");
  return rounded.amount.isGreaterThan(toPay.amount) ? toPay : rounded;
}

/** What the customer's gold spares of the metal that would be bought: nothing where it is taken in payment. */
export function sparedMetal(balance: GoldBalance | undefined, spot: Money): Money {
  const used = balance?.used.grams ?? Quotient.zero;
  return money(used.times(spot.amount).dividedBy(Quotient.of(GRAMS_PER.ozt)), spot.currency);
}

import { sum } from "../exact/quotient";
import { quoteStatusOf } from "../order/quotestatus";
import { isCashReported } from "../trade/cashreport";
import { type Money, money } from "../units/money";
import { type BindingQuote, countingQuotes, isEnded, UNBOUGHT } from "./openquotes";

/** A quote with who pays it, and how much. */
export interface PayableQuote extends BindingQuote {
  readonly customer: string;
  /** Undefined where its cell holds no amount of US dollars. */
  readonly total: Money | undefined;
  /** Made within the year before today, so that its payments may count together with others. */
  readonly isOfThisYear: boolean;
}

/** A customer whose quotes come to so much together that cash for them may have to be reported. */
export interface CashBuyer<Q extends PayableQuote> {
  readonly customer: string;
  readonly quotes: readonly Q[];
  readonly together: Money;
}

/**
 * The customers whose quotes of a year, what is already in work among them, pass what cash may come to unreported. A quote that
 * was turned down or has ended brings no payment.
 */
export function cashBuyers<Q extends PayableQuote>(quotes: readonly Q[]): readonly CashBuyer<Q>[] {
  const byCustomer = new Map<string, Q[]>();
  for (const quote of countingQuotes(quotes).filter(isPayable)) {
    // Nobody knows whether those without a name are one buyer.
    if (quote.customer.trim() === "") continue;
    const name = quote.customer.normalize("NFC").trim().toLowerCase();
    byCustomer.set(name, [...(byCustomer.get(name) ?? []), quote]);
  }
  return [...byCustomer.values()].flatMap((own) => {
    const payments = own.flatMap(({ total }) => (total ? [total] : []));
    const [first] = own;
    if (!first || !isCashReported(payments)) return [];
    return [
      {
        customer: first.customer.trim(),
        quotes: own,
        together: money(sum(payments.map(({ amount }) => amount)), "USD"),
      },
    ];
  });
}

function isPayable(quote: PayableQuote): boolean {
  const status = quoteStatusOf(quote.status);
  const isOpen = status !== undefined && UNBOUGHT.includes(status);
  return (
    quote.isOfThisYear && quote.total?.currency === "USD" && status !== "turned down" && !(isOpen && isEnded(quote))
  );
}

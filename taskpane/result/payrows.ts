import { type CostSheet, showMark, subtractMoney } from "../../src/index";
import type { Costed } from "../order/reckoning";
import { showGrams, showMoney, showNumber, showShare } from "../wording/display";
import { TEXTS } from "../wording/texts";
import { negative, type Row } from "./resultrows";

const { result } = TEXTS;

/** Whether an order is one design and nothing else: then the price of a piece is enough. */
export function isPlain({ sheets, quote }: Costed): boolean {
  return sheets.length === 1 && quote.extras.length === 0;
}

/** The lines of an order of several lines: what each is, its amount, and how that is calculated. */
export function lineRows({ quote, sheets }: Costed): readonly Row[] {
  return quote.lines.map((line, index) => {
    const { finishedWeight } = sheets[index] ?? {};
    return {
      term: `${index + 1} ${line.design}`,
      value: showMoney(line.amount),
      remark: result.lineRemark(
        result.pricedEach(showNumber(line.quantity), showMoney(line.price)),
        showNumber(line.links),
        finishedWeight ? showGrams(finishedWeight, 1) : "",
        line.hollow,
      ),
    };
  });
}

/** What the customer pays beyond the price of one piece; the total and its parts only where they differ from that price. */
export function payRows(costed: Costed): readonly Row[] {
  const { order, quote } = costed;
  const only = isPlain(costed) ? costed.sheets[0] : undefined;
  return [
    ...piecesRow(costed, only),
    ...(order.discount.isZero()
      ? []
      : [{ term: result.discount(showShare(order.discount)), value: showMoney(negative(quote.discount)) }]),
    ...quote.extras.map(({ text, amount }) => ({ term: text, value: showMoney(amount) })),
    ...(quote.shipping.amount.isZero() ? [] : [{ term: result.shipping, value: showMoney(quote.shipping) }]),
    ...(quote.taxIncluded ? [] : taxRow(costed)),
    ...(only && quote.total.amount.equals(only.price.amount)
      ? []
      : [{ term: result.total, value: showMoney(quote.total) }]),
    ...(quote.taxIncluded ? taxRow(costed) : []),
    ...goldRows(costed),
    // Where nothing is left to pay there is nothing to split into deposit and balance.
    ...(quote.ownGold && !quote.toPay.amount.isPositive()
      ? []
      : [
          { term: result.deposit, value: showMoney(quote.deposit), ...raisedOf(costed) },
          { term: result.balance, value: showMoney(quote.balance) },
        ]),
  ];
}

/** Why a deposit is more than was wanted. */
function raisedOf({ watch: { depositRaised, cashOut } }: Costed): { readonly remark?: string } {
  if (!depositRaised) return {};
  const { from, to } = depositRaised;
  return { remark: result.depositRaised(showShare(from), showShare(to), showMoney(cashOut)) };
}

function piecesRow({ quote }: Costed, only: CostSheet | undefined): readonly Row[] {
  if (only) {
    if (quote.subtotal.amount.equals(only.price.amount)) return [];
    return [{ term: result.subtotal(showNumber(only.line.quantity)), value: showMoney(quote.subtotal) }];
  }
  const pieces = quote.extras.reduce((rest, { amount }) => subtractMoney(rest, amount), quote.subtotal);
  return [{ term: result.pieces, value: showMoney(pieces) }];
}

function taxRow({ quote }: Costed): readonly Row[] {
  if (quote.tax.amount.isZero()) return [];
  const name = quote.taxName || result.tax;
  return [{ term: quote.taxIncluded ? result.taxIn(name) : name, value: showMoney(quote.tax) }];
}

/** The credit for the customer's own gold, and what is left to pay. */
function goldRows({ quote }: Costed): readonly Row[] {
  if (!quote.ownGold) return [];
  const { given, credit } = quote.ownGold;
  const back = quote.toPay.amount.isNegative();
  return [
    {
      term: result.gold,
      value: showMoney(negative(credit)),
      remark: `${showGrams(given.weight, 2)} ${showMark(given.mark)}`,
    },
    {
      term: back ? result.toPayBack : result.toPay,
      value: showMoney(back ? negative(quote.toPay) : quote.toPay),
    },
  ];
}

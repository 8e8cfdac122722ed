import { maximum, minimum, Quotient, sum } from "../exact/quotient";
import type { Order } from "../order/order";
import { type CostSheet, forAll, salesTax } from "../quote/costsheet";
import { sparedMetal } from "../quote/deposit";
import { type CostLine, costPiece, stonesToBuy } from "../quote/piececosts";
import type { Quote, QuoteWatch } from "../quote/quote";
import type { Rates } from "../rates/rates";
import { withoutTax } from "../trade/salestax";
import { money, subtractMoney, timesMoney } from "../units/money";
import type { BudgetKey, EachKey } from "./budget";

/** The figures of a budget that an order gives. It does not give marks, shipping and the cash at hand. */
export type OrderBudgetKey =
  | Exclude<EachKey, "assay" | "shipping">
  | "models"
  | "castingMinimum"
  | "price"
  | "deposit"
  | "pieces";

/** An order as it was costed and quoted. */
interface Quoted {
  readonly order: Order;
  readonly sheets: readonly CostSheet[];
  readonly quote: Quote;
  readonly watch: QuoteWatch;
}

/** Where the cost lines of a piece go that are paid out before it is sold; stones go in whole ones, the model once. */
const LINES = {
  metal: ["metal", "lost"],
  casting: ["casting"],
  labour: ["labour"],
  findings: ["clasp", "findings"],
  stones: ["setting"],
  plating: ["plating"],
  other: ["engraving"],
} as const satisfies Partial<Record<BudgetKey, readonly CostLine[]>>;

/**
 * A line of an order as figures of a budget, exact: what goes out for one piece as on its cost sheet, the caster's minimum apart,
 * without metal that the customer brings; and what of the deposit quoted covers it, as a share of what the order brings.
 */
export function orderBudget(
  sheet: CostSheet,
  { order, sheets, quote, watch }: Quoted,
  rates: Rates,
): Readonly<Record<OrderBudgetKey, Quotient>> {
  const { line } = sheet;
  const none = money(Quotient.zero, rates.currency);
  const { costs } = costPiece(line, order.spot, { ...rates, castingMinimum: none });
  const of = (lines: readonly CostLine[]) => sum(lines.map((each) => costs[each].amount));
  const bought = sum(line.stones.map((set) => set.price.amount.times(stonesToBuy(set, line.quantity))));
  return Object.freeze({
    metal: maximum(of(LINES.metal).minus(sparedOf(sheet, order, watch)), Quotient.zero),
    casting: of(LINES.casting),
    labour: of(LINES.labour),
    findings: of(LINES.findings),
    stones: bought.dividedBy(line.quantity).plus(of(LINES.stones)),
    plating: of(LINES.plating),
    other: of(LINES.other),
    models: forAll(line.setup, line).amount,
    castingMinimum: rates.castingMinimum.amount,
    price: priceOf(sheets.indexOf(sheet), quote, rates).dividedBy(line.quantity),
    deposit: watch.net.amount.isPositive()
      ? minimum(watch.depositCovers.amount.dividedBy(watch.net.amount), Quotient.one)
      : Quotient.zero,
    pieces: line.quantity,
  });
}

/** What the customer's gold spares of the metal of one piece: as much of it as of the fine gold that the order needs. */
function sparedOf({ fineGoldCast }: CostSheet, { spot }: Order, { goldBalance }: QuoteWatch): Quotient {
  const spared = sparedMetal(goldBalance, spot).amount;
  if (!goldBalance || spared.isZero()) return Quotient.zero;
  return spared.times(fineGoldCast.grams).dividedBy(goldBalance.needed.grams);
}

/** What the pieces of a line bring: their amount, without their share of the discount as it was rounded, and without the tax in it. */
function priceOf(index: number, { lines, discount }: Quote, rates: Rates): Quotient {
  const amount = lines[index]?.amount ?? money(Quotient.zero, rates.currency);
  const pieces = sum(lines.map((line) => line.amount.amount));
  const off = pieces.isZero() ? discount : timesMoney(discount, amount.amount.dividedBy(pieces));
  return withoutTax(subtractMoney(amount, off), salesTax(rates)).amount;
}

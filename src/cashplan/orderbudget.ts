import { Quotient, sum } from "../exact/quotient";
import type { Order } from "../order/order";
import type { CostSheet } from "../quote/costsheet";
import { type CostLine, costPiece } from "../quote/piececosts";
import type { Rates } from "../rates/rates";
import { money } from "../units/money";
import type { BudgetKey, EachKey } from "./budget";

/** The figures of a budget that an order gives. It does not give what is paid once, marks, shipping and the cash at hand. */
export type OrderBudgetKey = Exclude<EachKey, "assay" | "shipping"> | "castingMinimum" | "price" | "deposit" | "pieces";

/** Where the cost lines of a piece go; its share of the model is left out, since a budget holds the model whole. */
const LINES = {
  metal: ["metal", "lost"],
  casting: ["casting"],
  labour: ["labour"],
  findings: ["clasp", "findings"],
  stones: ["stones", "setting"],
  plating: ["plating"],
  other: ["engraving", "overhead"],
} as const satisfies Partial<Record<BudgetKey, readonly CostLine[]>>;

/** A line of an order as figures of a budget, exact: one piece costed as on its cost sheet, the caster's minimum apart. */
export function orderBudget(
  { line, netPrice }: CostSheet,
  { spot, discount, deposit }: Pick<Order, "spot" | "discount" | "deposit">,
  rates: Rates,
): Readonly<Record<OrderBudgetKey, Quotient>> {
  const none = money(Quotient.zero, rates.currency);
  const { costs } = costPiece({ ...line, setup: none }, spot, { ...rates, castingMinimum: none });
  const of = (lines: readonly CostLine[]) => sum(lines.map((each) => costs[each].amount));
  return Object.freeze({
    metal: of(LINES.metal),
    casting: of(LINES.casting),
    labour: of(LINES.labour),
    findings: of(LINES.findings),
    stones: of(LINES.stones),
    plating: of(LINES.plating),
    other: of(LINES.other),
    castingMinimum: rates.castingMinimum.amount,
    price: netPrice.amount.times(Quotient.one.minus(discount)),
    deposit,
    pieces: line.quantity,
  });
}

import { Quotient, sum } from "../exact/quotient";
import type { Order } from "../order/order";
import type { OrderLine } from "../order/orderline";
import type { Rates } from "../rates/rates";
import { netPrice } from "../trade/salestax";
import { type Money, subtractMoney } from "../units/money";
import { grams, timesWeight, type Weight } from "../units/weight";
import { type CostSheet, salesTax } from "./costsheet";
import { costPiece } from "./piececosts";
import { settlingRate } from "./quoteline";

/** What one gram more in the links of a piece brings and costs where its final weight settles the price. */
export interface HeavierGram {
  /** After the discount, without the tax. */
  readonly brings: Money;
  /** Landed: the metal with what polishing takes of it, casting, labour by the gram, overhead. */
  readonly costs: Money;
}

/** One gram more of gold in one piece: as many links, each heavier. Exact. */
export function heavierGram(sheet: CostSheet, { spot, discount }: Order, rates: Rates): HeavierGram {
  const heavier = lineOfLinkWeight(sheet.line, grams(sheet.chainWeight.grams.plus(Quotient.one)));
  return Object.freeze({
    brings: netPrice(settlingRate(sheet, rates), discount, salesTax(rates)),
    costs: subtractMoney(costPiece(heavier, spot, rates).landed, sheet.landed),
  });
}

/**
 * The line with the same number of links, heavier or lighter so that the chain has this weight.
 * @param chain weight of all links, above zero
 */
export function lineOfLinkWeight(line: OrderLine, chain: Weight): OrderLine {
  const now = sum(line.linkGroups.map(({ links, linkWeight }) => linkWeight.grams.times(links)));
  return {
    ...line,
    linkGroups: line.linkGroups.map((group) => ({
      ...group,
      linkWeight: timesWeight(group.linkWeight, chain.grams.dividedBy(now)),
    })),
  };
}

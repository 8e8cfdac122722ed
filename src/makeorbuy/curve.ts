import { CostingError } from "../exact/errors";
import { Quotient } from "../exact/quotient";
import type { Rate } from "../gold/goldrate";
import type { Order } from "../order/order";
import type { OrderLine } from "../order/orderline";
import { type CostSheet, costLine } from "../quote/costsheet";
import { costPiece } from "../quote/piececosts";
import type { Rates } from "../rates/rates";
import { margin, spotLimit } from "../trade/price";
import { type Money, subtractMoney, timesMoney } from "../units/money";
import { grams, type Weight } from "../units/weight";
import { chainWeightOf, type HeavierBy, plainChainAt } from "./crossover";

/** A plain chain at one weight: what a gram of it costs made, and bought. */
export interface SourcingPoint {
  readonly weight: Weight;
  readonly make: Rate;
  readonly buy: Rate;
}

/**
 * Cost per gram made and bought, at each weight of the plain chain; the rest is costed as on its cost sheet. Exact at the given weights.
 * @param weights above zero
 */
export function sourcingCurve(
  line: OrderLine,
  spot: Money,
  rates: Rates,
  weights: readonly Weight[],
  heavier: HeavierBy,
): readonly SourcingPoint[] {
  return weights.map((weight) => {
    const { makePerGram, buyPerGram } = plainChainAt(line, weight, heavier, spot, rates);
    return { weight, make: makePerGram, buy: buyPerGram };
  });
}

/** The share of a fixed price that is profit at one spot. */
export interface MarginPoint {
  readonly spot: Money;
  readonly margin: Quotient;
}

/** The margin that a price of one piece leaves at each spot. Exact at the given spots. @param price above zero */
export function marginCurve(
  line: OrderLine,
  price: Money,
  rates: Rates,
  spots: readonly Money[],
): readonly MarginPoint[] {
  return spots.map((spot) => ({
    spot,
    margin: margin(costPiece(line, spot, rates).landed.amount, price.amount),
  }));
}

/** The spot at which the margin of a price is the least margin; undefined where no spot is low enough. */
export function floorSpot(cost: CostSheet, price: Money, rates: Rates): Money | undefined {
  const { goldAtSpot, landed, line, metalRate } = cost;
  // Overhead is also a share of the cost of gold, so this part of it moves with spot.
  const gold = timesMoney(goldAtSpot, Quotient.one.plus(rates.overhead));
  // The weight whose gold is paid for, with that of bought parts: on the quick basis it is not the cast weight.
  const charged = grams(gold.amount.dividedBy(metalRate.perGram));
  try {
    return spotLimit(price, charged, line.gold, subtractMoney(landed, gold), rates.leastMargin);
  } catch (error) {
    if (error instanceof CostingError && error.code === "neverReached") return undefined;
    throw error;
  }
}

/** A piece of links alone at one weight, costed and priced as a line of an order is. */
export interface PricePoint {
  readonly weight: Weight;
  readonly sheet: CostSheet;
}

/**
 * What a line of links alone, of one colour, costs and is priced at, at each weight. A heavier line has more links (not always
 * whole). Exact at the given weights; prices are rounded up to the price step as on a quote.
 * @param weights above zero
 */
export function priceCurve(
  line: OrderLine,
  terms: Pick<Order, "spot" | "pricing">,
  rates: Rates,
  weights: readonly Weight[],
): readonly PricePoint[] {
  return weights.map((weight) => ({ weight, sheet: costLine(grownTo(line, weight), terms, rates) }));
}

/**
 * The line with as many links as have this weight. They are weighed as one body: the number of links times the weight of one would
 * be a long fraction of what is a plain weight, and a price on its step might miss the step by the last of 60 digits.
 */
function grownTo(line: OrderLine, weight: Weight): OrderLine {
  const [group, ...others] = line.linkGroups;
  if (!group || others.length > 0) throw new Error("Links of several colours do not grow by weight alone");
  const links = line.links.times(weight.grams).dividedBy(chainWeightOf(line).grams);
  const body = { ...group, links: Quotient.one, closed: Quotient.one, open: Quotient.zero, linkWeight: weight };
  return { ...line, links, linkGroups: [body] };
}

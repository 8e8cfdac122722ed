import { type Quotient, sum } from "../exact/quotient";
import type { Rate } from "../gold/goldrate";
import type { Order } from "../order/order";
import type { OrderLine } from "../order/orderline";
import type { Rates } from "../rates/rates";
import { perGramOf } from "../trade/landedcost";
import { chainLength } from "../trade/link";
import type { MakeOrBuy } from "../trade/makeorbuy";
import { margin, markup, premium, priceAtMargin } from "../trade/price";
import type { Pricing } from "../trade/pricemethod";
import { type SalesTax, shownFactor, withoutTax } from "../trade/salestax";
import { askedPrice, partAtPremium, priceUpToStep, shownPrice } from "../trade/sellingprice";
import { minorDigits } from "../units/currency";
import { type Length, millimetres } from "../units/length";
import { addMoney, type Money, money, roundToCurrency, timesMoney } from "../units/money";
import type { Weight } from "../units/weight";
import {
  CASH_LINES,
  costPiece,
  fineGoldCast,
  fineGoldIn,
  type PieceCosts,
  plainChainSourcing,
  stonesToBuy,
} from "./piececosts";

/** One line of an order, costed: weights, costs and price of one piece. */
export interface CostSheet extends PieceCosts {
  readonly line: OrderLine;
  /** How it was priced. */
  readonly pricing: Pricing;
  /** Length really reached, and how far it is from the length asked. */
  readonly reached: Length;
  readonly difference: Length;
  /** Fine gold in the finished piece with its bought parts, and in what is cast. */
  readonly fineGold: Weight;
  readonly fineGoldCast: Weight;
  readonly landedPerGram: Rate;
  /** As the customer reads it: with the tax where Rates say that prices hold it. */
  readonly price: Money;
  /** What is left of it without the tax; not rounded. */
  readonly netPrice: Money;
  readonly markup: Quotient | undefined;
  readonly margin: Quotient | undefined;
  readonly premium: Rate;
  /** The least net price: landed cost at the least margin. */
  readonly floor: Money;
  /** The plain chain made, against ready chain of its weight; computed when it is asked for. */
  readonly sourcing: MakeOrBuy;
  /** Cash out for all pieces of the line before they are sold: all that they cost but overhead, and stones in whole ones. */
  readonly cashOut: Money;
}

/** Costs every line of an order at the order's spot and the workshop's rates. Exact throughout; only prices are rounded. */
export function costOrder(order: Order, rates: Rates): readonly CostSheet[] {
  return Object.freeze(order.lines.map((line) => costLine(line, order, rates)));
}

/** Costs and prices one line. @param terms the spot, and how a line without a pricing of its own is priced */
export function costLine(line: OrderLine, terms: Pick<Order, "spot" | "pricing">, rates: Rates): CostSheet {
  const piece = costPiece(line, terms.spot, rates);
  const { metalRate: rate, finishedWeight: finished, landed } = piece;
  const pricing = line.pricing ?? terms.pricing;
  const price = priceOf(piece, line, pricing, rates);
  const netPrice = withoutTax(price, salesTax(rates));
  const reached = chainLength(line.links, line.pitch, line.clasp.length);
  return Object.freeze({
    ...piece,
    line,
    pricing,
    reached,
    difference: millimetres(reached.millimetres.minus(line.length.millimetres)),
    fineGold: fineGoldIn(piece, line),
    fineGoldCast: fineGoldCast(piece, line),
    landedPerGram: perGramOf(landed, finished),
    price,
    netPrice,
    markup: landed.amount.isZero() ? undefined : markup(landed.amount, netPrice.amount),
    margin: netPrice.amount.isZero() ? undefined : margin(landed.amount, netPrice.amount),
    premium: premium(perGramOf(netPrice, finished), rate),
    floor: priceAtMargin(landed, rates.leastMargin),
    cashOut: cashOutOf(piece, line, rates),
    get sourcing() {
      return plainChainSourcing(line, piece.chainWeight, line.links, terms.spot, rates);
    },
  });
}

/** A stone that breaks is bought whole: the cost of one piece holds a share of it, the cash that goes out all of it. */
function cashOutOf({ costs }: PieceCosts, line: OrderLine, rates: Rates): Money {
  return addMoney(
    forAll(money(sum(CASH_LINES.map((key) => costs[key].amount)), rates.currency), line),
    ...line.stones.map((set) => timesMoney(set.price, stonesToBuy(set, line.quantity))),
  );
}

/** How tax stands to the prices shown. */
export function salesTax({ tax, taxIncluded }: Pick<Rates, "tax" | "taxIncluded">): SalesTax {
  return { share: tax, isIncluded: taxIncluded };
}

/** What a net amount is multiplied by to hold the tax where shown prices do; 1 where tax comes on top. */
export function taxFactor(rates: Rates): Quotient {
  return shownFactor(salesTax(rates));
}

/** The price of a piece, rounded up to the price step; a price set by hand stands as it was set. */
function priceOf(piece: PieceCosts, line: OrderLine, pricing: Pricing, rates: Rates): Money {
  if (pricing.by === "own price") return roundToCurrency(pricing.price);
  const { chainWeight: weight, metalRate, landed } = piece;
  const apart = pricing.by === "premium" ? apartAt(pricing.rate, piece, line) : landed;
  const asked = askedPrice({ landed, apart, weight, metalRate }, pricing);
  return priceUpToStep(shownPrice(asked, salesTax(rates)), rates.priceStep, minorDigits(rates.currency));
}

/** What is apart from the weight of the links where a premium prices them. */
function apartAt(over: Rate, { metalRate, costs }: PieceCosts, { clasp, findings }: OrderLine): Money {
  return addMoney(
    partAtPremium(clasp.weight, metalRate, over, costs.clasp),
    partAtPremium(findings.weight, metalRate, over, costs.findings),
    costs.stones,
    costs.setting,
    costs.engraving,
    costs.plating,
  );
}

/** A money amount for so many pieces. */
export function forAll(each: Money, line: OrderLine): Money {
  return timesMoney(each, line.quantity);
}

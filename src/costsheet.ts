import { labourCost, type Making, perGramOf, stoneCost } from "./costing";
import { minorUnit } from "./currency";
import { type Length, millimetres } from "./length";
import { chainLength, chainWeight } from "./link";
import { addMoney, type Money, money, roundToCurrency, roundUpToStep, timesMoney } from "./money";
import type { Order, OrderLine } from "./order";
import { benchLoss, castWeight } from "./piece";
import { margin, markup, premium, priceAtMargin, priceAtMarkup, priceAtPremium } from "./price";
import { maximum, Quotient, sum } from "./quotient";
import { costOf, fineGold, metalRate, type Rate } from "./rate";
import type { Rates } from "./rates";
import { type MakeOrBuy, makeOrBuy } from "./sourcing";
import { addWeights, grams, timesWeight, type Weight } from "./weight";

/** The cost lines of one piece, in the order of a cost sheet. */
export const COST_LINES = {
  metal: "Metal in the links",
  lost: "Metal lost in polishing",
  casting: "Casting",
  labour: "Labour",
  clasp: "Clasp",
  stones: "Stones",
  setting: "Setting",
  plating: "Plating",
} as const;
export type CostLine = keyof typeof COST_LINES;

/** Weights and costs of one piece at a spot: what a cost sheet rests on, and the curves over other weights and spots too. */
export interface PieceCosts {
  readonly metalRate: Rate;
  /** The links alone, finished. */
  readonly chainWeight: Weight;
  /** Links and clasp, finished. */
  readonly finishedWeight: Weight;
  /** What the caster casts: the links, with what polishing takes. */
  readonly castWeight: Weight;
  readonly costs: Readonly<Record<CostLine, Money>>;
  readonly landed: Money;
  /** The plain chain made, against ready chain of its weight. */
  readonly sourcing: MakeOrBuy;
}

/** One line of an order, costed: weights, costs and price of one piece. */
export interface CostSheet extends PieceCosts {
  readonly line: OrderLine;
  /** Length really reached, and how far it is from the length asked. */
  readonly reached: Length;
  readonly difference: Length;
  /** Fine gold in the finished piece, and in what is cast. */
  readonly fineGold: Weight;
  readonly fineGoldCast: Weight;
  readonly landedPerGram: Rate;
  readonly price: Money;
  readonly markup: Quotient | undefined;
  readonly margin: Quotient;
  readonly premium: Rate;
  /** The least price: landed cost at the least margin. */
  readonly floor: Money;
  /** Cash out before the piece is sold: metal, casting, clasp, stones. */
  readonly cashOut: Money;
}

/** Costs every line of an order at the order's spot and the workshop's rates. Exact throughout; only prices are rounded. */
export function costOrder(order: Order, rates: Rates): readonly CostSheet[] {
  return Object.freeze(order.lines.map((line) => costLine(line, order.spot, rates)));
}

/** Costs one piece of a line. Exact; nothing is rounded. */
export function costPiece(line: OrderLine, spot: Money, rates: Rates): PieceCosts {
  const rate = metalRate(spot, line.mark);
  const chain = chainWeight(line.links, line.linkWeight, grams(Quotient.zero));
  const cast = castWeight(chain, rates.loss);
  const costs = costsOf(line, rates, rate, chain, cast);
  return {
    metalRate: rate,
    chainWeight: chain,
    finishedWeight: addWeights(chain, line.claspWeight),
    castWeight: cast,
    costs,
    landed: money(sum(Object.values(costs).map((cost) => cost.amount)), spot.currency),
    sourcing: makeOrBuy(makingOf(rates, rate, chain, costs), rates.surcharge),
  };
}

function costLine(line: OrderLine, spot: Money, rates: Rates): CostSheet {
  const piece = costPiece(line, spot, rates);
  const { metalRate: rate, finishedWeight: finished, costs, landed } = piece;
  const price = priceOf(rates, rate, piece.chainWeight, line.claspWeight, landed, costs);
  const reached = chainLength(line.links, line.pitch, line.claspLength);
  return Object.freeze({
    ...piece,
    line,
    reached,
    difference: millimetres(reached.millimetres.minus(line.length.millimetres)),
    fineGold: fineGold(finished, line.mark),
    fineGoldCast: fineGold(piece.castWeight, line.mark),
    landedPerGram: perGramOf(landed, finished),
    price,
    markup: landed.amount.isZero() ? undefined : markup(landed.amount, price.amount),
    margin: margin(landed.amount, price.amount),
    premium: premium(perGramOf(price, finished), rate),
    floor: priceAtMargin(landed, rates.leastMargin),
    cashOut: addMoney(costs.metal, costs.lost, costs.casting, costs.clasp, costs.stones),
  });
}

function costsOf(line: OrderLine, rates: Rates, rate: Rate, chain: Weight, cast: Weight): Record<CostLine, Money> {
  const quick = rates.costBasis === "quick";
  const lost = quick ? benchLoss(chain, rates.loss) : grams(cast.grams.minus(chain.grams));
  const none = money(Quotient.zero, rates.currency);
  return Object.freeze({
    metal: costOf(chain, rate),
    lost: costOf(lost, rate),
    casting: castingCost(quick ? chain : cast, line.quantity, rates),
    labour: labourCost(
      {
        flat: rates.labourFlat,
        perLink: rates.labourPerLink,
        perGram: rates.labourPerGram,
        minimum: rates.labourMinimum,
      },
      line.links,
      chain,
    ),
    clasp: line.claspCost,
    stones: stoneCost(line.stoneCount, line.stonePrice, none, Quotient.zero),
    setting: stoneCost(line.stoneCount, none, line.settingFee, Quotient.zero),
    plating: line.plated && rates.plating ? rates.plating : none,
  });
}

/** Casting of one piece; the caster's minimum is for all pieces of the line, shared by them. */
function castingCost(each: Weight, quantity: Quotient, rates: Rates): Money {
  const all = costOf(timesWeight(each, quantity), rates.castingFee);
  return money(maximum(all.amount, rates.castingMinimum.amount).dividedBy(quantity), rates.currency);
}

function makingOf(rates: Rates, rate: Rate, chain: Weight, costs: Record<CostLine, Money>): Making {
  const plainCasting = costOf(rates.costBasis === "quick" ? chain : castWeight(chain, rates.loss), rates.castingFee);
  return {
    weight: chain,
    metalRate: rate,
    castingFee: rates.castingFee,
    labour: costs.labour,
    loss: rates.loss,
    other: money(costs.casting.amount.minus(plainCasting.amount), rates.currency),
    basis: rates.costBasis,
  };
}

function priceOf(
  rates: Rates,
  rate: Rate,
  chain: Weight,
  clasp: Weight,
  landed: Money,
  costs: Record<CostLine, Money>,
): Money {
  const asked = (() => {
    switch (rates.pricing.by) {
      case "markup":
        return priceAtMarkup(landed, rates.pricing.share);
      case "margin":
        return priceAtMargin(landed, rates.pricing.share);
      case "premium":
        return addMoney(
          priceAtPremium(chain, rate, rates.pricing.rate),
          claspAtPremium(clasp, rate, rates.pricing.rate, costs.clasp),
          costs.stones,
          costs.setting,
          costs.plating,
        );
    }
  })();
  // Without a step a price goes up to the smallest coin, so that no piece is ever given away.
  const step = maximum(rates.priceStep, minorUnit(rates.currency));
  return roundToCurrency(roundUpToStep(asked, step));
}

/** A clasp by its weight like the chain, but never for less than it cost: one without a weight is not given away. */
function claspAtPremium(clasp: Weight, rate: Rate, over: Rate, cost: Money): Money {
  return money(maximum(priceAtPremium(clasp, rate, over).amount, cost.amount), cost.currency);
}

/** A money amount for so many pieces. */
export function forAll(each: Money, line: OrderLine): Money {
  return timesMoney(each, line.quantity);
}

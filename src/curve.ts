import { type CostSheet, costLine } from "./costsheet";
import { CostingError } from "./errors";
import { addMoney, type Money, money, subtractMoney, timesMoney } from "./money";
import type { Order } from "./order";
import type { OrderLine } from "./orderline";
import { chainOf } from "./otherweight";
import { costPiece, plainChainSourcing } from "./piececosts";
import { margin, spotLimit } from "./price";
import { Quotient } from "./quotient";
import { perGram, type Rate } from "./rate";
import type { Rates } from "./rates";
import type { MakeOrBuy } from "./sourcing";
import { grams, type Weight } from "./weight";

/** A plain chain at one weight: what a gram of it costs made, and bought. */
export interface SourcingPoint {
  readonly weight: Weight;
  readonly make: Rate;
  readonly buy: Rate;
}

/**
 * Cost per gram made and bought, at each weight of the plain chain. Its links grow in number with it, in fractions too; the rest is costed as its cost sheet is. Exact at the given weights.
 * @param weights above zero
 */
export function sourcingCurve(
  line: OrderLine,
  spot: Money,
  rates: Rates,
  weights: readonly Weight[],
): readonly SourcingPoint[] {
  return weights.map((weight) => {
    const { makePerGram, buyPerGram } = sourcingAt(line, spot, rates, weight);
    return { weight, make: makePerGram, buy: buyPerGram };
  });
}

/**
 * The weight of the plain chain above which making costs less than buying; zero where it does at any weight, undefined
 * where it never does. Without a search; money is taken to 40 decimals, so that level costs stay level.
 *
 * With a minimum for labour or for casting, the cost of making is the greatest of four straight lines: labour as worked
 * or at its minimum, with casting by weight or at its minimum. Making wins where each of them lies below the cost of
 * buying. None starts below zero, so each is below from one weight on or never, and the last of these weights is it.
 */
export function crossingWeight(line: OrderLine, spot: Money, rates: Rates): Weight | undefined {
  const crossings = straightRates(rates).map((straight) => crossingOfStraight(line, spot, straight));
  return crossings.reduce((last, crossing) => {
    if (!last || !crossing) return undefined;
    return crossing.grams.isGreaterThan(last.grams) ? crossing : last;
  });
}

/** A price kept while spot moves: the share of it that is profit. */
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
export function floorSpot(sheet: CostSheet, price: Money, rates: Rates): Money | undefined {
  const { costs, landed, line, metalRate } = sheet;
  // Overhead is a share of what the gold costs too: it moves with spot.
  const gold = timesMoney(addMoney(costs.metal, costs.lost), Quotient.one.plus(rates.overhead));
  // The weight whose gold is paid for: on the quick basis it is not the cast weight.
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
 * What a line of links alone, of one colour, costs and is priced at, at each weight: its links grow in number, in fractions too.
 * Exact at the given weights; prices are rounded up to the price step as on a quote.
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
 * The line with as many links as weigh so much. They are counted apart and weighed as one body: so many links times the weight of
 * one would be a long fraction of what is a plain weight, and a price on its step might miss it by the last of 60 digits.
 */
function grownTo(line: OrderLine, weight: Weight): OrderLine {
  const [group, ...others] = line.linkGroups;
  if (!group || others.length > 0) throw new Error("Links of several colours do not grow by weight alone");
  const links = line.links.times(weight.grams).dividedBy(chainOf(line).grams);
  const body = { ...group, links: Quotient.one, closed: Quotient.one, open: Quotient.zero, linkWeight: weight };
  return { ...line, links, linkGroups: [body] };
}

function sourcingAt(line: OrderLine, spot: Money, rates: Rates, weight: Weight): MakeOrBuy {
  const links = line.links.times(weight.grams).dividedBy(chainOf(line).grams);
  return plainChainSourcing(line, weight, links, spot, rates);
}

/** The four rates, without a minimum that bends, of which the greatest cost is the cost at these rates. */
export function straightRates(rates: Rates): readonly Rates[] {
  const none = nothing(rates);
  const noRate = perGram(Quotient.zero, rates.currency);
  const labours = [
    { ...rates, labourMinimum: none },
    { ...rates, labourFlat: none, labourPerLink: none, labourPerGram: noRate },
  ];
  return labours.flatMap((labour) => [
    { ...labour, castingMinimum: none },
    { ...labour, castingFee: noRate },
  ]);
}

/** Where making at costs that grow straight with the weight starts to win, from its saving at two weights. */
function crossingOfStraight(line: OrderLine, spot: Money, straight: Rates): Weight | undefined {
  const savingAt = (weight: Quotient) => sourcingAt(line, spot, straight, grams(weight)).saving.amount;
  const first = savingAt(Quotient.one);
  const gained = closed(savingAt(Quotient.of(2)).minus(first));
  return gained.isPositive() ? grams(closed(gained.minus(first)).dividedBy(gained)) : undefined;
}

/** A difference of long fractions, which may miss zero by its last digits, as a decimal that does not. */
export function closed(difference: Quotient): Quotient {
  return Quotient.of(difference.rounded(40));
}

function nothing(rates: Rates): Money {
  return money(Quotient.zero, rates.currency);
}

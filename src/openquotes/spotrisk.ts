import { minimum, Quotient, sum } from "../exact/quotient";
import { roundedDifference } from "../makeorbuy/crossover";
import type { Order } from "../order/order";
import { goldBalance } from "../order/owngold";
import { forAll, salesTax } from "../quote/costsheet";
import { costPiece, fineGoldCast } from "../quote/piececosts";
import type { QuotedTerms } from "../rates/quotedterms";
import type { Rates } from "../rates/rates";
import { margin } from "../trade/price";
import { withoutTax } from "../trade/salestax";
import { addMoney, type Money, money, roundToCurrency, subtractMoney } from "../units/money";
import { GRAMS_PER, grams, type Weight } from "../units/weight";

/**
 * The spots at which a fixed price leaves a margin. `upTo`, `downTo`: as far as this spot, money per troy ounce of fine gold.
 * `always`, `never`: at any spot, at none.
 */
export type SpotLimit =
  | { readonly kind: "upTo" | "downTo"; readonly spot: Money }
  | { readonly kind: "always" | "never" };

/** What another spot does to a price that was given. */
export interface SpotRisk {
  /** What the work brings, without tax and shipping. */
  readonly net: Money;
  /** What it costs at today's spot and rates; gold that is the customer's at the spot of the quote. */
  readonly landed: Money;
  /** Today's, of what it brings; undefined where that is nothing. */
  readonly margin: Quotient | undefined;
  readonly losesMoney: boolean;
  /** The margin is below the least margin. */
  readonly belowFloor: boolean;
  /** Where the least margin is kept, and where no money is lost. */
  readonly floor: SpotLimit;
  readonly zero: SpotLimit;
  /** Fine gold in the work, and the fine gold of the customer's that counts for it. */
  readonly needed: Weight;
  readonly covered: Weight;
}

/**
 * What an order's fixed price leaves, with costs at today's rates.
 *
 * Landed cost is a straight line over spot: gold that is cast and lost, with its share of overhead, and costs that spot does not
 * change. So two evaluations give it exactly. A customer's own gold is settled at the spot of the quote. Used, it need not be
 * bought, so it stays in the cost as it was quoted. Credited, it is worth today's spot to the workshop at the share it was
 * credited at, and what it gains or loses goes against the gold to be bought. A price settled by final weight follows the grams,
 * not spot: it is calculated at the weight stated.
 * @param order as it was quoted, at its spot and its terms @param total what the customer pays in all
 */
export function spotRisk(order: Order, total: Money, rates: Rates, terms: QuotedTerms): SpotRisk {
  const net = netOf(order, total, terms);
  const quoted = landedAt(order, order.spot, rates);
  const twice = landedAt(order, addMoney(order.spot, order.spot), rates);
  const bySpot = subtractMoney(twice, quoted).amount.dividedBy(order.spot.amount);
  const own = coverOf(order, bySpot, rates);
  const open = bySpot.minus(own.slope);
  // The difference of equal long fractions may miss zero by its last digits.
  const slope = roundedDifference(open).isZero() ? Quotient.zero : open;
  const costAt = (spot: Money) =>
    money(quoted.amount.plus(slope.times(spot.amount.minus(order.spot.amount))), quoted.currency);
  const landed = costAt(rates.spot);
  const keeping = (share: Quotient) => limitOf(order.spot, net.amount.times(Quotient.one.minus(share)), quoted, slope);
  const isShort = (share: Quotient) =>
    roundedDifference(net.amount.times(Quotient.one.minus(share)).minus(landed.amount)).isNegative();
  return Object.freeze({
    net,
    landed,
    margin: net.amount.isPositive() ? margin(landed.amount, net.amount) : undefined,
    losesMoney: isShort(Quotient.zero),
    belowFloor: isShort(rates.leastMargin),
    floor: keeping(rates.leastMargin),
    zero: keeping(Quotient.zero),
    needed: own.needed,
    covered: own.covered,
  });
}

/**
 * What the work brings, from what the customer pays in all: makeQuote's sum backwards. Tax on top was rounded once to the
 * currency, and the work is a sum of rounded amounts, so rounding what comes of dividing gives it back exactly.
 */
function netOf({ shipping }: Order, total: Money, terms: QuotedTerms): Money {
  const sent = roundToCurrency(shipping);
  const besides = subtractMoney(total, sent);
  if (terms.taxIncluded) return withoutTax(besides, salesTax(terms));
  const onTop = Quotient.one.plus(terms.tax);
  if (terms.shippingTaxed)
    return subtractMoney(roundToCurrency(money(total.amount.dividedBy(onTop), total.currency)), sent);
  return roundToCurrency(money(besides.amount.dividedBy(onTop), total.currency));
}

/** Everything that the order costs at a spot, its gold all bought. */
function landedAt(order: Order, spot: Money, rates: Rates): Money {
  const pieces = order.lines.map((line) => forAll(costPiece(line, spot, rates).landed, line).amount);
  return money(sum([...pieces, ...order.extras.map(({ cost }) => cost.amount)]), rates.currency);
}

/** How much of the gold to be bought the customer's gold covers. @param bySpot how much the cost rises where spot rises by one */
function coverOf(
  { ownGold, lines, spot }: Order,
  bySpot: Quotient,
  rates: Rates,
): { readonly needed: Weight; readonly covered: Weight; readonly slope: Quotient } {
  const needed = grams(
    sum(lines.map((line) => fineGoldCast(costPiece(line, spot, rates), line).grams.times(line.quantity))),
  );
  if (!ownGold) return { needed, covered: grams(Quotient.zero), slope: Quotient.zero };
  const { brought, used } = goldBalance(ownGold, needed, spot);
  const ounce = Quotient.of(GRAMS_PER.ozt);
  if (ownGold.use === "credited") {
    const covered = brought.grams.times(ownGold.share);
    return { needed, covered: grams(covered), slope: covered.dividedBy(ounce) };
  }
  // On the quick basis less gold is charged than is cast, and no more can be spared than was charged.
  const spared = used.grams.times(Quotient.one.plus(rates.overhead)).dividedBy(ounce);
  return { needed, covered: used, slope: minimum(spared, bySpot) };
}

/** The spot at which the part of the price that is kept equals the cost. */
function limitOf(quotedAt: Money, kept: Quotient, quoted: Money, slope: Quotient): SpotLimit {
  const room = kept.minus(quoted.amount);
  if (slope.isZero()) return { kind: room.isNegative() ? "never" : "always" };
  const spot = money(quotedAt.amount.plus(room.dividedBy(slope)), quotedAt.currency);
  const isThere = !spot.amount.isNegative();
  if (slope.isPositive()) return isThere ? { kind: "upTo", spot } : { kind: "never" };
  return isThere ? { kind: "downTo", spot } : { kind: "always" };
}

import { Quotient } from "../exact/quotient";
import { costOf, markRate, type Rate } from "../gold/goldrate";
import type { OrderLine } from "../order/orderline";
import { lineOfLinkWeight } from "../quote/heaviergram";
import { plainChainMaking } from "../quote/piececosts";
import type { Rates } from "../rates/rates";
import { landedCost, perGramOf } from "../trade/landedcost";
import { againstReady } from "../trade/makeorbuy";
import { type Money, timesMoney } from "../units/money";
import { grams, type Weight } from "../units/weight";
import { chainWeightOf, type HeavierBy } from "./crossover";
import type { MakerOffer } from "./makeroffer";
import { classAt, faultsAbout, type MakerFault, type PriceLists, type Seller, sellersOf } from "./makers";
import { isSoldAtOnce } from "./minimumorder";

/** A plain chain that may be made or bought: the links of a line, and who sells ready chain of its mark. */
export interface ChainChoice {
  readonly line: OrderLine;
  readonly sellers: readonly Seller[];
  readonly spot: Money;
  readonly rates: Rates;
}

/** What one maker asks for one such chain. */
export interface Bid {
  readonly seller: Seller;
  readonly offer: MakerOffer;
  readonly perGram: Rate;
  readonly cost: Money;
  /** What making saves on one piece against this maker; below zero where buying is cheaper. */
  readonly saving: Money;
}

/** One chain made, against all who sell its weight. */
export interface Comparison {
  readonly choice: ChainChoice;
  readonly weight: Weight;
  readonly quantity: Quotient;
  readonly makePerGram: Rate;
  readonly makeCost: Money;
  /** What these pieces can have, cheapest first; of two that ask the same the first of the price lists. */
  readonly bids: readonly Bid[];
  /** What only a larger order can have, since these pieces do not reach the maker's minimum; cheapest first. */
  readonly larger: readonly Bid[];
  /** Undefined where nobody sells these pieces: then they are made. */
  readonly best: Bid | undefined;
  readonly verdict: "make" | "buy";
}

/** The maker of Rates: without a name, with one surcharge for every weight. */
export const MAKER_OF_RATES = "";

/**
 * Where the makers come from: price lists, or the surcharge on Rates where there is no list, or no row for the mark. Both are prices of
 * solid chain, so that a hollow piece is compared with none.
 */
export type SellersFrom = "price lists" | "no price list" | "no row for the mark" | "nowhere: the piece is hollow";

/** Who may be asked for a line's chain, and what of the price lists could not be read. */
export interface AskedSellers {
  readonly sellers: readonly Seller[];
  readonly from: SellersFrom;
  /** Rows about the mark that cannot be read: an answer without them may be another, and says so. */
  readonly unread: readonly MakerFault[];
}

/** Who sells ready chain like a line's; the maker of Rates where no price list has its mark; nobody where it is hollow. */
export function sellersFor(lists: PriceLists | undefined, line: OrderLine, rates: Rates): AskedSellers {
  if (line.hollow) return { sellers: [], unread: [], from: "nowhere: the piece is hollow" };
  const listed = lists ? sellersOf(lists, line.mark) : [];
  const unread = lists ? faultsAbout(lists.faults, line.mark) : [];
  if (listed.length > 0) return { sellers: listed, unread, from: "price lists" };
  const isEmpty = !lists || (lists.offers.length === 0 && lists.faults.length === 0);
  return { sellers: [makerOfRates(rates)], unread, from: isEmpty ? "no price list" : "no row for the mark" };
}

/**
 * A plain chain made at its landed cost, against the metal rate of its mark and each maker's surcharge for its weight: the sums of the
 * order's own cost sheet. At equal cost it says buy.
 */
export function compareSources(choice: ChainChoice): Comparison {
  const { line, sellers, spot, rates } = choice;
  const weight = chainWeightOf(line);
  const making = plainChainMaking(line, weight, line.links, spot, rates);
  const make = perGramOf(landedCost(making), weight);
  const metalRate = markRate(spot, line);
  const bids = sellers.flatMap((seller): Bid[] => {
    const offer = classAt(seller, weight);
    if (!offer) return [];
    const { buyPerGram, saving } = againstReady(make, weight, { metalRate, surcharge: offer.surcharge });
    return [{ seller, offer, perGram: buyPerGram, cost: costOf(weight, buyPerGram), saving }];
  });
  const sorted = [...bids].sort((a, b) => a.perGram.perGram.compare(b.perGram.perGram));
  const isSold = ({ offer, cost }: Bid) => isSoldAtOnce(offer.minimum, { weight, cost }, line.quantity);
  const sold = sorted.filter(isSold);
  const best = sold[0];
  return Object.freeze({
    choice,
    weight,
    quantity: line.quantity,
    makePerGram: make,
    makeCost: costOf(weight, make),
    bids: Object.freeze(sold),
    larger: Object.freeze(sorted.filter((bid) => !isSold(bid))),
    best,
    verdict: !best || best.saving.amount.isPositive() ? "make" : "buy",
  });
}

/** What one piece costs the way the answer says. */
export function costByChoice({ best, verdict, makeCost }: Comparison): Money {
  return verdict === "buy" && best ? best.cost : makeCost;
}

/** The cheapest offer to a larger order, where it is cheaper than the answer for these pieces. */
export function cheaperLarger(said: Comparison): Bid | undefined {
  const [first] = said.larger;
  return first?.cost.amount.isLessThan(costByChoice(said).amount) ? first : undefined;
}

/** What the cheaper way saves on all pieces; undefined where there is only one way. */
export function savedByChoice({ best, quantity }: Comparison): Money | undefined {
  if (!best) return undefined;
  const size = best.saving.amount.isNegative() ? Quotient.of(-1) : Quotient.one;
  return timesMoney(best.saving, quantity.times(size));
}

/**
 * The line with heavier or lighter links, or with more or fewer of them (not always whole), so that its plain chain has this
 * weight.
 * @param weight above zero
 */
export function lineOfWeight(line: OrderLine, weight: Weight, heavier: HeavierBy): OrderLine {
  if (heavier === "heavier links") return lineOfLinkWeight(line, weight);
  const growth = weight.grams.dividedBy(chainWeightOf(line).grams);
  const grown = (count: Quotient) => count.times(growth);
  return Object.freeze({
    ...line,
    links: grown(line.links),
    linkGroups: Object.freeze(
      line.linkGroups.map((group) =>
        Object.freeze({ ...group, links: grown(group.links), closed: grown(group.closed), open: grown(group.open) }),
      ),
    ),
  });
}

function makerOfRates(rates: Rates): Seller {
  const offer: MakerOffer = {
    maker: MAKER_OF_RATES,
    mark: undefined,
    from: grams(Quotient.zero),
    surcharge: rates.surcharge,
    minimum: undefined,
    lead: "",
    note: "",
  };
  return Object.freeze({ maker: MAKER_OF_RATES, classes: Object.freeze([offer]) });
}

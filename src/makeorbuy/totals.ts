import { Quotient } from "../exact/quotient";
import type { Rates } from "../rates/rates";
import { addMoney, type Money, money, sameCurrency, subtractMoney, timesMoney } from "../units/money";
import { addWeights, grams, timesWeight, type Weight } from "../units/weight";
import { type Bid, type Comparison, cheaperLarger, costByChoice, savedByChoice } from "./chainchoice";
import type { MinimumOrder } from "./makeroffer";

/** Totals of many chains when each is made or bought, whichever is cheaper. */
export interface SourcingTotal {
  readonly made: number;
  readonly bought: number;
  /** Of those made: how many nobody sells. */
  readonly onlyMade: number;
  readonly cost: Money;
  /** What that saves against making all of them, and against buying all that are sold. */
  readonly underMaking: Money;
  readonly underBuying: Money;
  /** What is to be bought, maker by maker, the dearest order first. */
  readonly orders: readonly MakerOrder[];
  /** What could be had for less by ordering more at once, the largest saving first. */
  readonly larger: readonly LargerOrder[];
}

/** All that is to be bought from one maker. */
export interface MakerOrder {
  readonly maker: string;
  readonly chains: number;
  readonly pieces: Quotient;
  readonly weight: Weight;
  readonly cost: Money;
}

/** Chains that one maker sells for less, but only in a larger order than each of them is. */
export interface LargerOrder extends MakerOrder {
  /** What that saves, beyond the answers for each. */
  readonly saving: Money;
  /** How far all of them together, with what is bought from the maker already, are below the minimum; undefined where they reach it. */
  readonly short: ShortOfMinimum | undefined;
}

export interface ShortOfMinimum {
  readonly minimum: MinimumOrder;
  /** In the unit of the minimum. */
  readonly missing: MinimumOrder;
  /** The cash that the missing part takes at the order's mean price per gram. Without other orders it is tied up in stock. */
  readonly cash: Money;
}

/** Adds up comparisons, for all pieces of each. */
export function totalOf(comparisons: readonly Comparison[], rates: Rates): SourcingTotal {
  const none = money(Quotient.zero, rates.currency);
  const made = comparisons.filter(({ verdict }) => verdict === "make");
  const bought = comparisons.filter(({ verdict }) => verdict === "buy");
  const saved = (which: readonly Comparison[]) => addMoney(none, ...which.map((each) => savedByChoice(each) ?? none));
  return Object.freeze({
    made: made.length,
    bought: bought.length,
    onlyMade: made.filter(({ best }) => best === undefined).length,
    cost: addMoney(
      none,
      ...made.map(({ makeCost, quantity }) => timesMoney(makeCost, quantity)),
      ...bought.map(({ best, quantity }) => (best ? timesMoney(best.cost, quantity) : none)),
    ),
    underMaking: saved(bought),
    underBuying: saved(made),
    orders: Object.freeze(ordersOf(bought.flatMap((said) => (said.best ? [{ said, bid: said.best }] : [])))),
    larger: Object.freeze(largerOrders(comparisons)),
  });
}

/** A chain, and the offer to be taken for it. */
interface Taken {
  readonly said: Comparison;
  readonly bid: Bid;
}

function ordersOf(taken: readonly Taken[]): readonly MakerOrder[] {
  return byMaker(taken)
    .map(orderOf)
    .sort((a, b) => b.cost.amount.compare(a.cost.amount));
}

function byMaker(taken: readonly Taken[]): readonly (readonly Taken[])[] {
  const makers = [...new Set(taken.map(({ bid }) => bid.seller.maker))];
  return makers.map((maker) => taken.filter(({ bid }) => bid.seller.maker === maker));
}

function orderOf(taken: readonly Taken[]): MakerOrder {
  const [first, ...others] = taken.map(({ said, bid }) => timesMoney(bid.cost, said.quantity));
  if (!first) throw new Error("An order without a bid");
  return Object.freeze({
    maker: taken[0]?.bid.seller.maker ?? "",
    chains: taken.length,
    pieces: taken.reduce((total, { said }) => total.plus(said.quantity), Quotient.zero),
    weight: addWeights(...taken.map(({ said }) => timesWeight(said.weight, said.quantity))),
    cost: addMoney(first, ...others),
  });
}

function largerOrders(comparisons: readonly Comparison[]): readonly LargerOrder[] {
  const cheaper = comparisons.flatMap((said): readonly Taken[] => {
    const bid = cheaperLarger(said);
    return bid ? [{ said, bid }] : [];
  });
  return byMaker(cheaper)
    .map((taken) => {
      const order = orderOf(taken);
      const bought = comparisons.flatMap((said) =>
        said.verdict === "buy" &&
        said.best?.seller.maker === order.maker &&
        cheaperLarger(said)?.seller.maker !== order.maker
          ? [{ said, bid: said.best }]
          : [],
      );
      const all = orderOf([...taken, ...bought]);
      // Several classes may have minimums: the one that takes the most cash counts.
      const short = taken
        .flatMap(({ bid }) => (bid.offer.minimum && shortOf(bid.offer.minimum, all.weight, all.cost)) ?? [])
        .reduce<ShortOfMinimum | undefined>(
          (most, each) => (most && !each.cash.amount.isGreaterThan(most.cash.amount) ? most : each),
          undefined,
        );
      const answered = taken.map(({ said }) => timesMoney(costByChoice(said), said.quantity));
      const saving = subtractMoney(addMoney(money(Quotient.zero, order.cost.currency), ...answered), order.cost);
      return Object.freeze({ ...order, saving, short });
    })
    .sort((a, b) => b.saving.amount.compare(a.saving.amount));
}

function shortOf(minimum: MinimumOrder, weight: Weight, cost: Money): ShortOfMinimum | undefined {
  if (minimum.kind === "money") {
    sameCurrency(cost, minimum.money);
    const missing = money(minimum.money.amount.minus(cost.amount), cost.currency);
    if (!missing.amount.isPositive()) return undefined;
    return Object.freeze({ minimum, missing: Object.freeze({ kind: "money", money: missing }), cash: missing });
  }
  const missing = grams(minimum.weight.grams.minus(weight.grams));
  if (!missing.grams.isPositive()) return undefined;
  const cash = timesMoney(cost, missing.grams.dividedBy(weight.grams));
  return Object.freeze({ minimum, missing: Object.freeze({ kind: "weight", weight: missing }), cash });
}

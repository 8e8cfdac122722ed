import { Quotient } from "../exact/quotient";
import type { Rates } from "../rates/rates";
import { addMoney, type Money, money, sameCurrency, timesMoney } from "../units/money";
import { addWeights, grams, timesWeight, type Weight } from "../units/weight";
import { type Comparison, savedByChoice } from "./chainchoice";
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
}

/** All that is to be bought from one maker. */
export interface MakerOrder {
  readonly maker: string;
  readonly chains: number;
  readonly pieces: Quotient;
  readonly weight: Weight;
  readonly cost: Money;
  /** How far the order is below the maker's minimum; undefined where that is reached or there is none. */
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
    orders: Object.freeze(ordersOf(bought)),
  });
}

function ordersOf(bought: readonly Comparison[]): readonly MakerOrder[] {
  const makers = [...new Set(bought.flatMap(({ best }) => best?.seller.maker ?? []))];
  return makers
    .map((maker) =>
      orderOf(
        maker,
        bought.filter(({ best }) => best?.seller.maker === maker),
      ),
    )
    .sort((a, b) => b.cost.amount.compare(a.cost.amount));
}

function orderOf(maker: string, from: readonly Comparison[]): MakerOrder {
  const weight = addWeights(...from.map((each) => timesWeight(each.weight, each.quantity)));
  const [first, ...others] = from.flatMap(({ best, quantity }) => (best ? [timesMoney(best.cost, quantity)] : []));
  if (!first) throw new Error("An order without a bid");
  const cost = addMoney(first, ...others);
  const minimums = from.flatMap(({ best }) => best?.offer.minimum ?? []);
  const shorts = minimums.flatMap((minimum) => shortOf(minimum, weight, cost) ?? []);
  return Object.freeze({
    maker,
    chains: from.length,
    pieces: from.reduce((total, { quantity }) => total.plus(quantity), Quotient.zero),
    weight,
    cost,
    // Several classes may have minimums: the one that takes the most cash counts.
    short: shorts.reduce<ShortOfMinimum | undefined>(
      (most, short) => (most && !short.cash.amount.isGreaterThan(most.cash.amount) ? most : short),
      undefined,
    ),
  });
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

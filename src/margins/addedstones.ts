import { MONEY_AT_LEAST_0, type NumberRule, SHARE } from "../exact/numberrule";
import { Quotient } from "../exact/quotient";
import { LINE_LABELS } from "../order/fields";
import type { Order } from "../order/order";
import type { OrderLine } from "../order/orderline";
import type { StoneSet } from "../order/stones";
import { type CostSheet, costLine, salesTax } from "../quote/costsheet";
import type { Rates } from "../rates/rates";
import { fieldsNamed } from "../reading/formfields";
import { readNumber } from "../reading/number";
import { accepted, attempt, type Parsed, parseForm } from "../reading/parse";
import { margin } from "../trade/price";
import { netPrice } from "../trade/salestax";
import { type Money, money, roundToCurrency, subtractMoney } from "../units/money";

export const ADDED_STONES_LABELS = {
  where: "Stones go",
  count: "How many stones",
  price: LINE_LABELS.stonePrice,
  settingFee: LINE_LABELS.settingFee,
  breakage: LINE_LABELS.breakage,
  riseBy: "The price rises",
  rise: "Rise of the price",
} as const;
export type AddedStonesKey = keyof typeof ADDED_STONES_LABELS;

/** Where stones may be added, and how the price is to follow. */
export const ADDED_STONES_WHERE = ["on the clasp", "on every link"] as const;
export const RISE_BY = ["as the order is priced", "by an amount of mine"] as const;

/** Stones alike to be added to one piece. */
export interface AddedStones {
  readonly where: (typeof ADDED_STONES_WHERE)[number];
  /** On the clasp, or on each link. */
  readonly count: Quotient;
  readonly price: Money;
  readonly settingFee: Money;
  /** Share of the stones broken in setting. */
  readonly breakage: Quotient;
  /** As the customer reads it, with the tax where prices hold it; undefined where the price follows the order's pricing. */
  readonly rise: Money | undefined;
}

/** Whether stones pay, for one piece. */
export interface StonesPay {
  /** On one piece. */
  readonly stones: Quotient;
  /** What the piece costs more: stones, broken ones, setting, and their share of overhead. */
  readonly cost: Money;
  /** As the customer reads them. */
  readonly priceBefore: Money;
  readonly priceAfter: Money;
  readonly rise: Money;
  /** After the discount, without the tax; undefined where nothing is left of the price. */
  readonly marginBefore: Quotient | undefined;
  readonly marginAfter: Quotient | undefined;
  /** The least rise, to the smallest coin, that leaves the margin no less than before; undefined where no rise does. */
  readonly leastRise: Money | undefined;
}

const COUNT: NumberRule = { least: "1", most: "10000", whole: true, right: "a whole number from 1, such as 12" };

const named = fieldsNamed(ADDED_STONES_LABELS);
const shape = {
  where: named.wordOr("where", ADDED_STONES_WHERE, "on the clasp"),
  count: named.number("count", COUNT),
  price: named.number("price", MONEY_AT_LEAST_0),
  settingFee: named.optional("settingFee", MONEY_AT_LEAST_0),
  breakage: named.optional("breakage", SHARE),
  riseBy: named.wordOr("riseBy", RISE_BY, "as the order is priced"),
};

/** Reads stones to be added, or every fault in them. A blank setting fee or breakage is that of Rates. */
export function parseAddedStones(record: Readonly<Record<AddedStonesKey, string>>, rates: Rates): Parsed<AddedStones> {
  const read = parseForm(shape, record);
  const cash = (amount: Quotient) => money(amount, rates.currency);
  const byHand = record.riseBy.trim().toLowerCase() === RISE_BY[1];
  const rise = attempt("rise", () => ({
    amount: byHand ? cash(readNumber(record.rise, ADDED_STONES_LABELS.rise, MONEY_AT_LEAST_0)) : undefined,
  }));
  if (!read.ok || !rise.ok) {
    return Object.freeze({ ok: false, faults: [...(read.ok ? [] : read.faults), ...(rise.ok ? [] : rise.faults)] });
  }
  const { where, count, price, settingFee, breakage } = read.value;
  return accepted({
    where,
    count,
    price: cash(price),
    settingFee: settingFee ? cash(settingFee) : rates.settingFee,
    breakage: breakage ?? rates.breakage,
    rise: rise.value.amount,
  });
}

/**
 * What stones added to a piece cost and bring. The piece is costed with and without them, as a line of an order.
 *
 * The margin stays the same where the price grows by the same factor as the cost, price x cost with / cost without: the least
 * rise is price x added cost / cost without. Discount and tax, shares of the price, change nothing in that. Rounds: the least
 * rise up to the smallest coin.
 */
export function stonesPay(
  cost: CostSheet,
  added: AddedStones,
  terms: Pick<Order, "spot" | "pricing" | "discount">,
  rates: Rates,
): StonesPay {
  const set = stoneSet(added, cost.line);
  const after = costLine({ ...cost.line, stones: [...cost.line.stones, set] }, terms, rates);
  const addedCost = subtractMoney(after.landed, cost.landed);
  const rise = added.rise ?? subtractMoney(after.price, cost.price);
  const priceAfter = money(cost.price.amount.plus(rise.amount), rates.currency);
  const net = (price: Money) => netPrice(price, terms.discount, salesTax(rates)).amount;
  const marginOf = (landed: Money, price: Money) =>
    price.amount.isZero() ? undefined : margin(landed.amount, net(price));
  return Object.freeze({
    stones: set.count,
    cost: addedCost,
    priceBefore: cost.price,
    priceAfter,
    rise,
    marginBefore: marginOf(cost.landed, cost.price),
    marginAfter: marginOf(after.landed, priceAfter),
    leastRise: leastRise(cost, addedCost),
  });
}

function stoneSet({ where, count, price, settingFee, breakage }: AddedStones, line: OrderLine): StoneSet {
  const onLinks = where === "on every link";
  return {
    where: onLinks ? "links" : "clasp",
    which: onLinks ? "all links" : "",
    links: onLinks ? line.links : Quotient.zero,
    count: onLinks ? count.times(line.links) : count,
    follows: onLinks ? { every: Quotient.one, each: count } : undefined,
    kind: "",
    origin: "not said",
    cut: "other cut",
    sides: [],
    size: "",
    carat: undefined,
    caratBySize: undefined,
    caratFrom: "scale",
    price,
    settingFee,
    breakage,
  };
}

function leastRise({ price, landed }: CostSheet, addedCost: Money): Money | undefined {
  if (landed.amount.isZero()) return addedCost.amount.isZero() ? addedCost : undefined;
  return roundToCurrency(money(price.amount.times(addedCost.amount).dividedBy(landed.amount), price.currency), "up");
}

import { MONEY_AT_LEAST_0, type NumberRule, WHOLE_SHARE } from "../exact/numberrule";
import { Quotient } from "../exact/quotient";
import type { Rates } from "../rates/rates";
import { fieldsNamed } from "../reading/formfields";
import { accepted, type Parsed, parseForm } from "../reading/parse";
import { type Money, money } from "../units/money";

/** What is paid once, before the first piece. */
export const ONCE_LABELS = {
  models: "Models",
  moulds: "Masters and moulds",
  marking: "Registration and mark punch",
} as const;

/** What is paid for each piece before it is sold. */
export const EACH_LABELS = {
  metal: "Metal",
  casting: "Casting",
  labour: "Labour",
  findings: "Clasp and findings",
  stones: "Stones and setting",
  plating: "Plating",
  assay: "Marks and assay",
  shipping: "Shipping",
  other: "Other",
} as const;

export const BUDGET_LABELS = {
  ...ONCE_LABELS,
  ...EACH_LABELS,
  castingMinimum: "Casting minimum",
  price: "Price of one piece",
  deposit: "Deposit",
  pieces: "Pieces at a time",
  cash: "Cash at hand",
} as const;
export type OnceKey = keyof typeof ONCE_LABELS;
export type EachKey = keyof typeof EACH_LABELS;
export type BudgetKey = keyof typeof BUDGET_LABELS;
export const ONCE_KEYS = Object.keys(ONCE_LABELS) as readonly OnceKey[];
export const EACH_KEYS = Object.keys(EACH_LABELS) as readonly EachKey[];

/** A plan of what goes out before it comes in. */
export interface Budget {
  readonly once: Readonly<Record<OnceKey, Money>>;
  /** For one piece; casting by its weight, without the minimum. */
  readonly each: Readonly<Record<EachKey, Money>>;
  /** The least that the caster charges for pieces cast together. */
  readonly castingMinimum: Money;
  /** Without tax: that is never the workshop's. */
  readonly price: Money;
  /** Share of the price that comes in before the work. */
  readonly deposit: Quotient;
  readonly pieces: Quotient;
  readonly cash: Money;
}

/** More pieces than anybody makes at a time: a larger figure was mistyped. */
export const MOST_PIECES = 1000;

const PIECES: NumberRule = {
  least: "1",
  most: String(MOST_PIECES),
  whole: true,
  right: `a whole number of pieces from 1 to ${MOST_PIECES}`,
};
const PRICE: NumberRule = {
  above: "0",
  most: "1000000000000",
  right: "what one piece brings, without tax, such as 4200",
};

const named = fieldsNamed(BUDGET_LABELS);
const paid = (key: BudgetKey) => named.numberOr(key, MONEY_AT_LEAST_0, Quotient.zero);
const shape = {
  models: paid("models"),
  moulds: paid("moulds"),
  marking: paid("marking"),
  metal: paid("metal"),
  casting: paid("casting"),
  labour: paid("labour"),
  findings: paid("findings"),
  stones: paid("stones"),
  plating: paid("plating"),
  assay: paid("assay"),
  shipping: paid("shipping"),
  other: paid("other"),
  castingMinimum: paid("castingMinimum"),
  price: named.number("price", PRICE),
  deposit: named.numberOr("deposit", WHOLE_SHARE, Quotient.zero),
  pieces: named.number("pieces", PIECES),
  cash: paid("cash"),
};

/** Reads a plan from its texts, or every fault in them. What is left blank costs nothing. */
export function parseBudget(
  record: Readonly<Record<BudgetKey, string>>,
  { currency }: Pick<Rates, "currency">,
): Parsed<Budget> {
  const read = parseForm(shape, record);
  if (!read.ok) return read;
  const figures = read.value;
  const cash = <K extends BudgetKey>(keys: readonly K[]) =>
    Object.freeze(Object.fromEntries(keys.map((key) => [key, money(figures[key], currency)]))) as Record<K, Money>;
  return accepted({
    once: cash(ONCE_KEYS),
    each: cash(EACH_KEYS),
    castingMinimum: money(figures.castingMinimum, currency),
    price: money(figures.price, currency),
    deposit: figures.deposit,
    pieces: figures.pieces,
    cash: money(figures.cash, currency),
  });
}

import {
  type Budget,
  type BudgetKey,
  grams,
  type Money,
  minorDigits,
  money,
  type OrderBudgetKey,
  orderBudget,
  Quotient,
} from "../../src/index";
import type { MetalByWeight } from "../excel/cashplan/budgetpaper";
import type { AskedPiece } from "../views/askedpiece";
import { shareText } from "../wording/sharetext";

/** What an order fills into a budget, as the library reads it, and the metal of one piece by weight. */
export interface TakenBudget {
  readonly texts: Readonly<Record<OrderBudgetKey, string>>;
  /** The same, exact: a budget that stands as it was filled comes to the order's own cents. */
  readonly figures: Readonly<Record<OrderBudgetKey, Quotient>>;
  /** Undefined where the order has a spot of its own: the sheet would follow another. */
  readonly metal: MetalByWeight | undefined;
}

/** The open line of an order as a budget: money to the smallest coin, what costs nothing left empty. */
export function takenBudget({ costed, sheet }: AskedPiece): TakenBudget {
  const { order, rates } = costed;
  const figures = orderBudget(sheet, costed, rates);
  const digits = minorDigits(rates.currency);
  const textOf = (key: OrderBudgetKey): string => {
    if (key === "deposit") return shareText(figures.deposit);
    if (key === "pieces") return figures.pieces.value().toFixed();
    return figures[key].isZero() ? "" : figures[key].rounded(digits).toFixed(digits);
  };
  const keys = Object.keys(figures) as OrderBudgetKey[];
  const isOnRates = order.spot.amount.equals(rates.spot.amount);
  const charged = Quotient.of(figures.metal.dividedBy(sheet.metalRate.perGram).rounded(GRAM_DECIMALS));
  return {
    texts: Object.fromEntries(keys.map((key) => [key, textOf(key)])) as Record<OrderBudgetKey, string>,
    figures,
    metal: isOnRates
      ? { weight: grams(charged), mark: sheet.line.gold, isStruck: sheet.line.composition === undefined }
      : undefined,
  };
}

/** As fine as a cell holds a weight, so that its metal comes to the same cent. */
const GRAM_DECIMALS = 10;

type Typed = Readonly<Record<BudgetKey, string>>;

/** Whether a figure still stands as the order filled it. */
export function isAsTaken(taken: TakenBudget | undefined, typed: Typed, key: OrderBudgetKey): boolean {
  return taken !== undefined && taken.texts[key] === typed[key].trim();
}

/** A budget with the order's exact figures where they still stand as it filled them. */
export function withTaken(budget: Budget, taken: TakenBudget | undefined, typed: Typed): Budget {
  if (!taken) return budget;
  const exact = (key: string, read: Quotient) =>
    isOrders(taken, key) && isAsTaken(taken, typed, key) ? taken.figures[key] : read;
  const amount = (key: string, { amount: read, currency }: Money) => money(exact(key, read), currency);
  const amounts = <K extends string>(read: Readonly<Record<K, Money>>) =>
    Object.fromEntries((Object.keys(read) as K[]).map((key) => [key, amount(key, read[key])])) as Record<K, Money>;
  return {
    ...budget,
    once: amounts(budget.once),
    each: amounts(budget.each),
    castingMinimum: amount("castingMinimum", budget.castingMinimum),
    price: amount("price", budget.price),
    deposit: exact("deposit", budget.deposit),
  };
}

function isOrders(taken: TakenBudget, key: string): key is OrderBudgetKey {
  return Object.hasOwn(taken.figures, key);
}

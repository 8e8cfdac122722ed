import { type BudgetKey, grams, minorDigits, type OrderBudgetKey, orderBudget, Quotient } from "../../src/index";
import type { MetalByWeight } from "../excel/cashplan/budgetpaper";
import type { AskedPiece } from "../views/askedpiece";
import { shareText } from "../wording/sharetext";

/** What an order fills into a budget, as the library reads it, and the metal of one piece by weight. */
export interface TakenBudget {
  readonly texts: Readonly<Record<OrderBudgetKey, string>>;
  /** Undefined where the order has a spot of its own: the sheet would follow another. */
  readonly metal: MetalByWeight | undefined;
}

/** The open line of an order as a budget: money to the smallest coin, what costs nothing left empty. */
export function takenBudget({ costed: { order, rates }, sheet }: AskedPiece): TakenBudget {
  const figures = orderBudget(sheet, order, rates);
  const digits = minorDigits(rates.currency);
  const textOf = (key: OrderBudgetKey): string => {
    if (key === "deposit") return shareText(figures.deposit);
    if (key === "pieces") return figures.pieces.value().toFixed();
    return figures[key].isZero() ? "" : figures[key].rounded(digits).toFixed(digits);
  };
  const keys = Object.keys(figures) as OrderBudgetKey[];
  const isOnRates = order.spot.amount.equals(rates.spot.amount);
  const charged = Quotient.of(figures.metal.dividedBy(sheet.metalRate.perGram).rounded(6));
  return {
    texts: Object.fromEntries(keys.map((key) => [key, textOf(key)])) as Record<OrderBudgetKey, string>,
    metal: isOnRates
      ? { weight: grams(charged), mark: sheet.line.gold, isStruck: sheet.line.composition === undefined }
      : undefined,
  };
}

/** Whether a figure still stands as the order filled it. */
export function isAsTaken(
  taken: TakenBudget | undefined,
  typed: Readonly<Record<BudgetKey, string>>,
  key: OrderBudgetKey,
): boolean {
  return taken !== undefined && taken.texts[key] === typed[key].trim();
}

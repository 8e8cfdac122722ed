import { Quotient } from "../exact/quotient";
import { addRates, costOf, meltValue, metalRate, type Rate } from "../gold/goldrate";
import type { Mark } from "../gold/mark";
import { type Money, timesMoney } from "../units/money";
import type { Weight } from "../units/weight";

/**
 * How a bought part of gold is paid for. `money`: so much each, which spot does not move. `premium`: by its weight, at the metal rate
 * of its own mark and so much a gram over it, which follows spot.
 */
export type PartCost =
  | { readonly by: "money"; readonly each: Money }
  | { readonly by: "premium"; readonly premium: Rate };

/** A part that is bought, not cast: a clasp, jump rings. */
export interface BoughtPart {
  readonly weight: Weight;
  /** Its own; undefined for that of the piece. */
  readonly mark: Mark | undefined;
  readonly cost: PartCost;
}

/** @param piece the mark of the piece it is for */
export function markOfPart({ mark }: Pick<BoughtPart, "mark">, piece: Mark): Mark {
  return mark ?? piece;
}

/** What a part costs at a spot. @param piece the mark of the piece it is for */
export function costOfPart(part: BoughtPart, piece: Mark, spot: Money): Money {
  const { weight, cost } = part;
  if (cost.by === "money") return cost.each;
  return costOf(weight, addRates(metalRate(spot, markOfPart(part, piece)), cost.premium));
}

/** What of its cost is gold at spot, and rises and falls with it: nothing of what is paid for by money each. */
export function goldOfPart(part: BoughtPart, piece: Mark, spot: Money): Money {
  if (part.cost.by === "money") return timesMoney(part.cost.each, Quotient.zero);
  return meltValue(part.weight, markOfPart(part, piece), spot);
}

/** What it costs with its money, or its premium, so many times as much; as it is where it is paid for the other way. */
export function timesPartCost(cost: PartCost, by: PartCost["by"], factor: Quotient): PartCost {
  if (cost.by !== by) return cost;
  if (cost.by === "money") return { by: "money", each: timesMoney(cost.each, factor) };
  const { premium } = cost;
  return { by: "premium", premium: { ...premium, perGram: premium.perGram.times(factor) } };
}

export function moneyEach(each: Money): PartCost {
  return { by: "money", each };
}

/** The money each; undefined for a part that is paid for by its weight. */
export function moneyOf(cost: PartCost): Quotient | undefined {
  return cost.by === "money" ? cost.each.amount : undefined;
}

/** The premium a gram; undefined for a part that is paid for by money each. */
export function premiumOf(cost: PartCost): Quotient | undefined {
  return cost.by === "premium" ? cost.premium.perGram : undefined;
}

import { Quotient } from "../exact/quotient";
import { perGram } from "../gold/goldrate";
import type { OrderLine } from "../order/orderline";
import { plainChainSourcing } from "../quote/piececosts";
import type { Rates } from "../rates/rates";
import type { MakeOrBuy } from "../trade/makeorbuy";
import { type Money, money } from "../units/money";
import { addWeights, grams, timesWeight, type Weight } from "../units/weight";

/**
 * How a piece grows heavier: of the same length, by heavier links, or longer, by more links of the same (not always whole).
 * Answers differ, by a factor of two where labour goes by the link: whatever speaks of other weights names one of them.
 */
export const HEAVIER_BY = ["heavier links", "more links"] as const;
export type HeavierBy = (typeof HEAVIER_BY)[number];

/** The finished links of a line, without clasp and findings. */
export function chainWeightOf(line: OrderLine): Weight {
  return addWeights(...line.linkGroups.map(({ links, linkWeight }) => timesWeight(linkWeight, links)));
}

/** The plain chain of a line at another weight, made and bought. @param weight above zero */
export function plainChainAt(
  line: OrderLine,
  weight: Weight,
  heavier: HeavierBy,
  spot: Money,
  rates: Rates,
): MakeOrBuy {
  const growth = heavier === "more links" ? weight.grams.dividedBy(chainWeightOf(line).grams) : Quotient.one;
  return plainChainSourcing(line, weight, line.links.times(growth), spot, rates);
}

/**
 * The weight of the plain chain above which making costs less than buying; zero where it does at any weight, undefined
 * where it never does. No search is needed. Money is rounded to 40 decimals, so that equal costs stay equal.
 *
 * With a minimum for labour or for casting, the cost of making is the greatest of four straight lines: labour as worked
 * or at its minimum, with casting by weight or at its minimum. Making wins where each of them is below the cost of
 * buying. None starts below zero, so each is below from one weight on or never, and the last of these weights is it.
 */
export function crossingWeight(line: OrderLine, spot: Money, rates: Rates, heavier: HeavierBy): Weight | undefined {
  const crossings = straightRates(rates).map((straight) => crossingOfStraight(line, spot, straight, heavier));
  return crossings.reduce((last, crossing) => {
    if (!last || !crossing) return undefined;
    return crossing.grams.isGreaterThan(last.grams) ? crossing : last;
  });
}

/** Four sets of rates without minimums. The greatest of their four costs is the cost at the given rates. */
export function straightRates(rates: Rates): readonly Rates[] {
  const none = money(Quotient.zero, rates.currency);
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

/** A difference rounded to 40 decimals. Long fractions that are equal may differ in their last digits; rounded, they give zero. */
export function roundedDifference(difference: Quotient): Quotient {
  return Quotient.of(difference.rounded(40));
}

/** The weight at which making starts to win where costs are a straight line over weight, from the saving at two weights. */
function crossingOfStraight(line: OrderLine, spot: Money, straight: Rates, heavier: HeavierBy): Weight | undefined {
  const savingAt = (weight: Quotient) => plainChainAt(line, grams(weight), heavier, spot, straight).saving.amount;
  const first = savingAt(Quotient.one);
  const gained = roundedDifference(savingAt(Quotient.of(2)).minus(first));
  return gained.isPositive() ? grams(roundedDifference(gained.minus(first)).dividedBy(gained)) : undefined;
}

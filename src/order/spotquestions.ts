import { Quotient } from "../exact/quotient";
import { minorDigits } from "../units/currency";
import type { Money } from "../units/money";
import { GRAMS_PER } from "../units/weight";
import { goTo, keep, type Place, type Question, question } from "./question";

/** Below this an ounce is no price of this century, where it is counted in one of these. Source: gold fixings since 2009. */
const LOWEST = Quotient.of(1000);
const COUNTED_ALIKE = ["USD", "EUR", "GBP", "CHF"];
const SHARE = Quotient.of("0.15");

/**
 * What is asked of a spot that looks like a price per gram, or that moved by more than 15 % since the last quote.
 * @param last the spot of the last quote, in any currency; undefined where there is none
 */
export function spotQuestions(spot: Money, last: Money | undefined, place: Place): readonly Question[] {
  const before = last?.currency === spot.currency && last.amount.isPositive() ? last.amount : undefined;
  const shown = `${spot.currency} ${digits(spot)}`;
  const said = saidOf(spot, before, shown);
  if (said === undefined) return [];
  return [
    question(
      ["spot", spot.currency, spot.amount.inWords()],
      said,
      goTo(place.on === "Rates" ? "Correct it on the Rates sheet" : "Correct it", place),
      keep(`Yes, ${shown}`),
    ),
  ];
}

function saidOf({ amount, currency }: Money, before: Quotient | undefined, shown: string): string | undefined {
  const perGram = `Spot is ${shown} per troy ounce, which looks like a price per gram. Is it right?`;
  if (!before) return COUNTED_ALIKE.includes(currency) && amount.isLessThan(LOWEST) ? perGram : undefined;
  if (isNear(amount, before.dividedBy(Quotient.of(GRAMS_PER.ozt)))) return perGram;
  if (isNear(amount, before)) return undefined;
  const moved = amount.dividedBy(before).minus(Quotient.one).times(Quotient.of(100)).rounded(0);
  const way = moved.isNegative() ? "below" : "above";
  return `Spot is ${shown}, ${moved.abs()}% ${way} that of your last quote. Is it right?`;
}

/** Within 15 % of the other, and at 15 % too. */
function isNear(amount: Quotient, other: Quotient): boolean {
  const off = amount.minus(other);
  const size = off.isNegative() ? Quotient.zero.minus(off) : off;
  return !size.isGreaterThan(other.times(SHARE));
}

function digits({ amount, currency }: Money): string {
  const decimals = minorDigits(currency);
  return amount.rounded(decimals).toFixed(decimals);
}

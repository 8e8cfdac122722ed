import { Quotient } from "../exact/quotient";
import { addRates, markRate } from "../gold/goldrate";
import type { Currency } from "../units/currency";
import { grams, type Weight } from "../units/weight";
import type { ChainChoice } from "./chainchoice";
import { crossingWeight, type HeavierBy, roundedDifference } from "./crossover";
import type { MakerOffer } from "./makeroffer";
import { classAt, classStarts, type Seller } from "./makers";
import { leastWeightOf } from "./minimumorder";

/** Who is cheapest over a range of weights of the plain chain. */
export interface WinningRange {
  /** Zero for the lightest. */
  readonly from: Weight;
  /** Undefined for any heavier one. */
  readonly to: Weight | undefined;
  readonly winner: Winner;
}

/** `only make`: nobody sells so many pieces of such a weight. */
export type Winner =
  | { readonly kind: "make" }
  | { readonly kind: "only make" }
  | { readonly kind: "buy"; readonly seller: Seller };

/**
 * All ranges of weight with their cheapest way, lightest first. Price lists with steps may give several ranges in which making
 * wins. Between two weights at which some maker's offer to these pieces begins, the cheapest price per gram stays the same; there making wins
 * from one weight on or never (see crossingWeight). Exact, no search is needed. Where two ranges meet at a crossing, both ways
 * cost the same there; where they meet at the start of a class, that weight belongs to the heavier range. A single weight at
 * which both ways cost the same, between two ranges of making, is not reported.
 */
export function winningRanges(choice: ChainChoice, heavier: HeavierBy): readonly WinningRange[] {
  const starts = offerStarts(choice);
  const bounds = starts[0]?.isZero() ? starts : [Quotient.zero, ...starts];
  const ranges: WinningRange[] = [];
  bounds.forEach((from, at) => {
    for (const next of rangesBetween(choice, heavier, from, bounds[at + 1])) {
      const last = ranges.at(-1);
      if (last && isSameWinner(last.winner, next.winner)) ranges[ranges.length - 1] = { ...last, to: next.to };
      else ranges.push(next);
    }
  });
  return Object.freeze(ranges);
}

/** The weights at which an offer to these pieces begins: a class of weight, or a minimum order that they then reach; each once. */
export function offerStarts(choice: ChainChoice): readonly Quotient[] {
  const { sellers, line } = choice;
  const metal = markRate(choice.spot, line);
  const minimums = sellers.flatMap(({ classes }) =>
    classes.flatMap(({ minimum, surcharge }) =>
      minimum ? [leastWeightOf(minimum, addRates<Currency>(metal, surcharge), line.quantity).grams] : [],
    ),
  );
  const starts = [...classStarts(sellers), ...minimums].sort((a, b) => a.compare(b));
  return starts.filter((start, at, all) => !all[at - 1]?.equals(start));
}

/** The ranges in which making wins, or is the only way; ranges that meet are one. */
export function makingRanges(ranges: readonly WinningRange[]): readonly Pick<WinningRange, "from" | "to">[] {
  const making: Pick<WinningRange, "from" | "to">[] = [];
  for (const { from, to, winner } of ranges) {
    if (winner.kind === "buy") continue;
    const last = making.at(-1);
    if (last?.to?.grams.equals(from.grams)) making[making.length - 1] = { from: last.from, to };
    else making.push({ from, to });
  }
  return making;
}

function rangesBetween(
  choice: ChainChoice,
  heavier: HeavierBy,
  from: Quotient,
  to: Quotient | undefined,
): readonly WinningRange[] {
  const range = (start: Quotient, end: Quotient | undefined, winner: Winner): WinningRange => ({
    from: grams(start),
    to: end && grams(end),
    winner,
  });
  const cheapest = cheapestAt(choice, grams(from));
  if (!cheapest) return [range(from, to, { kind: "only make" })];
  const { seller, offer } = cheapest;
  const { line, spot, rates } = choice;
  const crossing = crossingWeight(line, spot, { ...rates, surcharge: offer.surcharge }, heavier)?.grams;
  if (!crossing || (to && !crossing.isLessThan(to))) return [range(from, to, { kind: "buy", seller })];
  if (!crossing.isGreaterThan(from)) return [range(from, to, { kind: "make" })];
  return [range(from, crossing, { kind: "buy", seller }), range(crossing, to, { kind: "make" })];
}

/** Of the classes that a weight falls into and that these pieces can have, the one with the least surcharge; of equal ones the first. */
function cheapestAt(
  { sellers, line, spot }: ChainChoice,
  weight: Weight,
): { readonly seller: Seller; readonly offer: MakerOffer } | undefined {
  const metal = markRate(spot, line);
  return sellers.reduce<{ seller: Seller; offer: MakerOffer } | undefined>((least, seller) => {
    const offer = classAt(seller, weight);
    if (!offer) return least;
    if (offer.minimum) {
      const lightest = leastWeightOf(offer.minimum, addRates<Currency>(metal, offer.surcharge), line.quantity);
      if (roundedDifference(weight.grams.minus(lightest.grams)).isNegative()) return least;
    }
    return least && !offer.surcharge.perGram.isLessThan(least.offer.surcharge.perGram) ? least : { seller, offer };
  }, undefined);
}

function isSameWinner(one: Winner, other: Winner): boolean {
  if (one.kind === "buy" && other.kind === "buy") return one.seller === other.seller;
  return one.kind === other.kind;
}

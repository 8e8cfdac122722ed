import { Quotient } from "../exact/quotient";
import type { Rate } from "../gold/goldrate";
import { lineOfWeight } from "../makeorbuy/chainchoice";
import { roundedDifference, straightRates } from "../makeorbuy/crossover";
import { MOST_LINKS } from "../order/chain";
import type { OrderLine } from "../order/orderline";
import { salesTax, taxFactor } from "../quote/costsheet";
import { costPiece, type PieceCosts } from "../quote/piececosts";
import type { Rates } from "../rates/rates";
import { perGramOf } from "../trade/landedcost";
import { margin, premiumOverMark, priceAtMargin, priceOverMark } from "../trade/price";
import { withoutTax } from "../trade/salestax";
import { type Money, timesMoney } from "../units/money";
import { addWeights, grams, type Weight } from "../units/weight";
import { type OtherLengths, otherLengths } from "./otherlengths";

/** What the market pays, and the margin wanted from it. */
export interface Wanted {
  /** Of the whole piece, over the metal rate, as a customer pays it: with the tax where prices hold it. */
  readonly premium: Rate;
  /** Share of the price. */
  readonly margin: Quotient;
}

/** Finished weights at which the wanted margin is earned, one interval; both ends belong to it. */
export interface EarningSpan {
  /** Undefined where every lighter piece earns it too. */
  readonly from: Weight | undefined;
  /** Undefined where every heavier piece earns it too. */
  readonly to: Weight | undefined;
  /** Links of its lightest and its heaviest piece, where pieces differ by their number. */
  readonly links: { readonly from: number; readonly to: number } | undefined;
}

/** What a premium on every gram of the finished piece brings, without the tax that prices may hold. */
export function broughtAt(piece: PieceCosts, premium: Rate, rates: Rates): Money {
  const price = priceOverMark(piece.finishedWeight, piece.markRate, premium);
  return withoutTax(price, salesTax(rates));
}

/** The share of that price that is profit. */
export function marginAt(piece: PieceCosts, premium: Rate, rates: Rates): Quotient {
  return margin(piece.landed.amount, broughtAt(piece, premium, rates).amount);
}

/** The premium a gram, as a customer pays it, at which a piece leaves a margin. @param share below 1 */
export function premiumFor(piece: PieceCosts, share: Quotient, rates: Rates): Rate {
  const price = timesMoney(priceAtMargin(piece.landed, share), taxFactor(rates));
  return premiumOverMark(perGramOf(price, piece.finishedWeight), piece.markRate);
}

/**
 * The weights at which the piece earns the wanted margin when its links are lighter or heavier, as many as now.
 * Exact, no search is needed. What is earned beyond the margin is the least of four straight lines (see crossingWeight). So the
 * interval begins at the heaviest weight at which one of them rises above zero, and ends at the lightest at which one falls
 * below. At most one interval.
 */
export function earningByLinkWeight(
  line: OrderLine,
  spot: Money,
  wanted: Wanted,
  rates: Rates,
): readonly EarningSpan[] {
  let [least, most]: [Quotient, Quotient | undefined] = [Quotient.zero, undefined];
  for (const straight of straightRates(rates)) {
    const beyond = (chain: number) =>
      earnedBeyond(
        costPiece(lineOfWeight(line, grams(Quotient.of(chain)), "heavier links"), spot, straight),
        wanted,
        rates,
      );
    const first = beyond(1);
    const gained = roundedDifference(beyond(2).minus(first));
    const atZero = roundedDifference(first.minus(gained));
    if (gained.isZero()) {
      if (atZero.isNegative()) return [];
      continue;
    }
    const edge = Quotient.zero.minus(atZero).dividedBy(gained);
    if (gained.isPositive()) least = edge.isGreaterThan(least) ? edge : least;
    else if (!most || edge.isLessThan(most)) most = edge;
  }
  if (most && (!most.isPositive() || most.isLessThan(least))) return [];
  const whole = (chain: Quotient) => addWeights(grams(chain), line.clasp.weight, line.findings.weight);
  return [
    Object.freeze({ from: least.isZero() ? undefined : whole(least), to: most && whole(most), links: undefined }),
  ];
}

/**
 * The weights at which the piece earns the wanted margin when it has fewer or more links of the same, whole ones only.
 *
 * Colours and stones repeat after a period of links. Of the numbers that are alike within it, what is earned beyond the margin
 * rises ever less and then falls (costs are straight lines and the greater of two of them), so each kind has one run, found by
 * halving on exact costs; together they may leave gaps. Up to MOST_LINKS links.
 */
export function earningByLinks(line: OrderLine, spot: Money, wanted: Wanted, rates: Rates): readonly EarningSpan[] {
  const lengths = otherLengths(line);
  const fewest = fewestLinks(lengths);
  if (fewest === undefined) return [];
  const earned = new Map<number, Quotient>();
  const beyond = (links: number): Quotient => {
    const known = earned.get(links);
    if (known) return known;
    const other = lengths.at(links);
    if (!other) throw new Error(`A piece of ${links} links has no room for its stones`);
    const found = earnedBeyond(costPiece(other, spot, rates), wanted, rates);
    earned.set(links, found);
    return found;
  };
  const runs = Array.from({ length: lengths.period }, (_, kind) =>
    runOf(
      (step) => beyond(fewest + kind + step * lengths.period),
      Math.floor((MOST_LINKS - fewest - kind) / lengths.period),
    ),
  );
  const earns = (links: number) => {
    const run = runs[(links - fewest) % lengths.period];
    const step = Math.floor((links - fewest) / lengths.period);
    return run !== undefined && step >= run.from && step <= run.to;
  };
  return spansOf(fewest, earns).map(({ from, to }) => {
    const weighed = (links: number) => costPiece(lengths.at(links) ?? line, spot, rates).finishedWeight;
    return Object.freeze({
      from: from === fewest ? undefined : weighed(from),
      to: to === MOST_LINKS ? undefined : weighed(to),
      links: Object.freeze({ from, to }),
    });
  });
}

/** What a piece brings beyond cost and the wanted margin, rounded so that equal amounts give zero. */
function earnedBeyond(piece: PieceCosts, { premium, margin: share }: Wanted, rates: Rates): Quotient {
  const kept = broughtAt(piece, premium, rates).amount.times(Quotient.one.minus(share));
  return roundedDifference(kept.minus(piece.landed.amount));
}

/** The fewest links that have room for the stones; more always have. */
function fewestLinks(lengths: OtherLengths): number | undefined {
  if (lengths.at(1)) return 1;
  return least(1, MOST_LINKS, (links) => lengths.at(links) !== undefined);
}

/** The steps from 0 to last at which a value is not below zero, where it rises more and more slowly and then falls. */
function runOf(
  value: (step: number) => Quotient,
  last: number,
): { readonly from: number; readonly to: number } | undefined {
  if (last < 0) return undefined;
  const rises = (step: number) => value(step + 1).isGreaterThan(value(step));
  const top = least(0, last, (step) => step === last || !rises(step)) ?? last;
  if (value(top).isNegative()) return undefined;
  const from = least(0, top, (step) => !value(step).isNegative()) ?? top;
  const after = least(top, last, (step) => value(step).isNegative());
  return { from, to: after === undefined ? last : after - 1 };
}

/** The least number from `first` to `last` for which `has` is true, where it is then true for all greater ones; else undefined. */
function least(first: number, last: number, has: (step: number) => boolean): number | undefined {
  if (!has(last)) return undefined;
  let [low, high] = [first, last];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (has(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

function spansOf(
  fewest: number,
  earns: (links: number) => boolean,
): readonly { readonly from: number; readonly to: number }[] {
  const spans: { from: number; to: number }[] = [];
  for (let links = fewest; links <= MOST_LINKS; links += 1) {
    if (!earns(links)) continue;
    const last = spans.at(-1);
    if (last?.to === links - 1) last.to = links;
    else spans.push({ from: links, to: links });
  }
  return spans;
}

import { Quotient } from "../exact/quotient";
import { perGram, type Rate } from "../gold/goldrate";
import { type Mark, showMark } from "../gold/mark";
import type { Money } from "../units/money";
import type { Weight } from "../units/weight";
import { checkAsking } from "./asking";
import type { SeenAsking } from "./seenasking";

/**
 * Where each class of weights begins, in grams; it ends where the next begins. Our choice, like the classes of makers' price
 * lists.
 */
export const WEIGHT_CLASSES = ["0", "5", "10", "20", "50", "100"] as const;

/** The place of a weight's class among the classes, from 0. */
export function weightClass({ grams }: Weight): number {
  return WEIGHT_CLASSES.findLastIndex((least) => !grams.isLessThan(Quotient.of(least)));
}

/** How much one price was above the metal. */
export interface SeenPremium {
  /** Such as "2026-05"; "" where nobody wrote the date down. */
  readonly month: string;
  readonly weight: Weight;
  readonly mark: Mark;
  /** What nobody called hollow is solid. */
  readonly hollow: boolean;
  readonly premium: Rate;
}

/**
 * The premium of a price that was seen; undefined where the weight is not known.
 * @param spot used where the price has no spot of its day
 */
export function seenPremium(seen: SeenAsking, spot: Money): SeenPremium | undefined {
  const { weight, mark, hollow = false, date } = seen;
  if (!weight) return undefined;
  return { month: date.slice(0, 7), weight, mark, hollow, premium: checkAsking(seen, seen.spot ?? spot).premium };
}

/** The premiums of one class of weights, mark and month, of solid pieces or of hollow ones. */
export interface MedianPremium {
  readonly weightClass: number;
  readonly mark: string;
  readonly hollow: boolean;
  readonly month: string;
  /** Half of the prices were not above it: the middle one, or halfway between the two in the middle. Exact. */
  readonly median: Rate;
  readonly count: number;
}

/**
 * The median premium of each class of weights, mark and month: light before heavy, high marks before low, solid before hollow, months
 * in order. Solid and hollow pieces never share one: hollow work is dearer a gram.
 */
export function medianPremiums(seen: readonly SeenPremium[]): readonly MedianPremium[] {
  const groups = new Map<string, SeenPremium[]>();
  for (const each of seen) {
    const key = `${weightClass(each.weight)} ${showMark(each.mark)} ${each.hollow} ${each.month}`;
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  return [...groups.values()]
    .flatMap((group) => {
      const [first] = group;
      return first ? [{ first, group }] : [];
    })
    .sort(
      (a, b) =>
        weightClass(a.first.weight) - weightClass(b.first.weight) ||
        b.first.mark.share.compare(a.first.mark.share) ||
        Number(a.first.hollow) - Number(b.first.hollow) ||
        (a.first.month < b.first.month ? -1 : a.first.month > b.first.month ? 1 : 0),
    )
    .map(({ first, group }) =>
      Object.freeze({
        weightClass: weightClass(first.weight),
        mark: showMark(first.mark),
        hollow: first.hollow,
        month: first.month,
        median: medianOf(group),
        count: group.length,
      }),
    );
}

function medianOf(group: readonly SeenPremium[]): Rate {
  const sorted = group.map(({ premium }) => premium).sort((a, b) => a.perGram.compare(b.perGram));
  const [low, high] = [sorted[Math.floor((sorted.length - 1) / 2)], sorted[Math.floor(sorted.length / 2)]];
  if (!low || !high) throw new Error("A class without a premium has no median");
  return perGram(low.perGram.plus(high.perGram).dividedBy(Quotient.of(2)), low.currency);
}

/** What was asked for pieces like one: of its mark, solid or hollow like it, and of its class of weights or else the class of the nearest weight seen. */
export interface MedianNear {
  readonly weightClass: number;
  /** The median over all months. Exact. */
  readonly median: Rate;
  readonly count: number;
  /** The first and the last month that is known of them; "" where none is. */
  readonly from: string;
  readonly to: string;
}

/** The median premium nearest to a piece; undefined where nothing of its mark was seen, solid or hollow like it. */
export function medianNear(
  seen: readonly SeenPremium[],
  { mark, hollow, weight }: Pick<SeenPremium, "mark" | "hollow" | "weight">,
): MedianNear | undefined {
  const alike = seen.filter((each) => each.mark.share.compare(mark.share) === 0 && each.hollow === hollow);
  const away = (each: SeenPremium) => magnitude(each.weight.grams.minus(weight.grams));
  const [first] = alike;
  if (!first) return undefined;
  const nearest = alike.reduce((best, each) => (away(each).isLessThan(away(best)) ? each : best), first);
  const own = weightClass(weight);
  const chosen = alike.some((each) => weightClass(each.weight) === own) ? own : weightClass(nearest.weight);
  const group = alike.filter((each) => weightClass(each.weight) === chosen);
  const months = group.flatMap(({ month }) => (month === "" ? [] : [month])).sort();
  return Object.freeze({
    weightClass: chosen,
    median: medianOf(group),
    count: group.length,
    from: months[0] ?? "",
    to: months.at(-1) ?? "",
  });
}

function magnitude(value: Quotient): Quotient {
  return value.isNegative() ? Quotient.zero.minus(value) : value;
}

import { Quotient } from "../exact/quotient";
import { COLOURS, type Colour } from "../gold/alloy";
import { type LinkWeights, MOST_LINKS } from "../order/chain";
import type { OrderLine } from "../order/orderline";
import type { StoneSet } from "../order/stones";
import { countLinks } from "../trade/colourpattern";
import { linksWithStones } from "../trade/link";
import type { Weight } from "../units/weight";

/** What a line would be with other numbers of links. */
export interface OtherLengths {
  /** Colours and stones repeat after this many links. */
  readonly period: number;
  /** The line with that many links; undefined where they have no room for its stones. @param links whole, from 1 to MOST_LINKS */
  at(links: number): OrderLine | undefined;
}

/** The line at other numbers of links, its colours and the stones in its links counted anew; clasp, findings and engraving stay. */
export function otherLengths(line: OrderLine): OtherLengths {
  const pattern = line.pattern.length > 0 ? line.pattern : [line.colour];
  const weights = new Map<Colour, Weight>([
    ...entriesOf(line.linkWeights),
    // The groups speak for the line as it is now: its links may have been made heavier since.
    ...line.linkGroups.map(({ colour, linkWeight }) => [colour, linkWeight] as const),
  ]);
  const every = line.stones.find(inLinks)?.follows?.every ?? Quotient.one;
  return {
    period: leastMultiple(pattern.length, every.toNumber()),
    at(links) {
      const count = Quotient.of(links);
      const stones = line.stones.map((set) => stonesAt(set, count));
      if (!stones.every((set) => set !== undefined)) return undefined;
      const groups = countLinks(count, pattern, line.linkCasting).map((group) => {
        const linkWeight = weights.get(group.colour);
        if (!linkWeight) throw new Error(`No weight of a ${group.colour} link is known`);
        return { ...group, linkWeight };
      });
      return { ...line, links: count, linkGroups: groups, stones };
    },
  };
}

function entriesOf(weights: LinkWeights): readonly (readonly [Colour, Weight])[] {
  return COLOURS.flatMap((colour) => {
    const weight = weights[colour];
    return weight ? [[colour, weight] as const] : [];
  });
}

/** The same stones on a piece of so many links; undefined where these have no room for them. */
function stonesAt(set: StoneSet, links: Quotient): StoneSet | undefined {
  if (!inLinks(set)) return set;
  if (!set.follows) return set.links.isGreaterThan(links) ? undefined : set;
  const { every, each } = set.follows;
  const withStones = linksWithStones(links, every);
  return { ...set, links: withStones, count: withStones.times(each) };
}

function inLinks({ where }: StoneSet): boolean {
  return where === "links";
}

/** The least common multiple, or the most links a piece may have where that is less. */
function leastMultiple(a: number, b: number): number {
  let multiple = a;
  while (multiple % b !== 0 && multiple < MOST_LINKS) multiple += a;
  return Math.min(multiple, MOST_LINKS);
}

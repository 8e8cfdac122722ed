import { Quotient } from "../exact/quotient";
import { chainWeightOf } from "../makeorbuy/crossover";
import { MOST_LINKS, parseChain } from "../order/chain";
import type { OrderLine } from "../order/orderline";
import type { StoneSet } from "../order/stones";
import { parseStonesByLinks, type StonesByLinks } from "../order/stonesets";
import type { Rates } from "../rates/rates";
import { countLinks } from "../trade/colourpattern";
import { chainLength } from "../trade/link";
import { inLengthUnit } from "../units/length";
import { timesWeight, type Weight } from "../units/weight";

/** How a piece grows heavier: longer, by more links of the same, or of the same length, by heavier links. */
export const HEAVIER_BY = ["heavier links", "more links"] as const;
export type HeavierBy = (typeof HEAVIER_BY)[number];

type Row = Readonly<Record<string, unknown>>;

/** The line with other numbers of links. */
export interface OtherLengths {
  /** Colours and stones repeat after this many links. */
  readonly period: number;
  /** The line with that many links; undefined where they have no room for its stones. @param links whole, from 1 to MOST_LINKS */
  at(links: number): OrderLine | undefined;
}

/**
 * The line with the same number of links, heavier or lighter so that the chain has this weight.
 * @param chain weight of all links, above zero
 */
export function lineOfLinkWeight(line: OrderLine, chain: Weight): OrderLine {
  const now = chainWeightOf(line).grams;
  return {
    ...line,
    linkGroups: line.linkGroups.map((group) => ({
      ...group,
      linkWeight: timesWeight(group.linkWeight, chain.grams.dividedBy(now)),
    })),
  };
}

/**
 * The line at other numbers of links. Its colours and the stones in its links are counted again; clasp, findings and engraving
 * stay.
 * @param record the texts or cells the line was read from
 */
export function otherLengths(line: OrderLine, record: Row, rates: Rates): OtherLengths {
  const pattern = line.pattern.length > 0 ? line.pattern : [line.colour];
  const weights = linkWeights(line, pattern.length, record, rates);
  const stones = parseStonesByLinks(record);
  const rule = line.stones.some(inLinks) && stones.ok ? stones.value : undefined;
  return {
    period: leastMultiple(pattern.length, rule ? rule.every.toNumber() : 1),
    at(links) {
      const sets = stonesOf(line, Quotient.of(links), rule);
      if (!sets) return undefined;
      const groups = countLinks(Quotient.of(links), pattern, line.linkCasting).map((group) => {
        const linkWeight = weights.get(group.colour);
        if (!linkWeight) throw new Error(`No weight of a ${group.colour} link is known`);
        return { ...group, linkWeight };
      });
      return { ...line, links: Quotient.of(links), linkGroups: groups, stones: sets };
    },
  };
}

/** Link weights by colour, also of colours that a piece as short as the line does not reach. */
function linkWeights(line: OrderLine, fewest: number, record: Row, rates: Rates): ReadonlyMap<string, Weight> {
  const known = new Map(line.linkGroups.map(({ colour, linkWeight }) => [colour, linkWeight]));
  if (line.links.toNumber() >= fewest) return known;
  const long = inLengthUnit(chainLength(Quotient.of(fewest), line.pitch, line.clasp.length), line.lengthUnit);
  const whole = parseChain(
    {
      ...record,
      lengthGiven: "finished length",
      ease: "",
      lengthUnit: line.lengthUnit,
      length: long.rounded(12).toFixed(),
    },
    rates.currency,
  );
  return whole.ok ? new Map(whole.value.linkGroups.map(({ colour, linkWeight }) => [colour, linkWeight])) : known;
}

function stonesOf(line: OrderLine, links: Quotient, rule: StonesByLinks | undefined): readonly StoneSet[] | undefined {
  if (!rule) return line.stones;
  const count = rule.count(links);
  if (!count.ok) return undefined;
  return line.stones.map((set) => (inLinks(set) ? { ...set, count: count.value } : set));
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

import type { NumberRule } from "../exact/numberrule";
import { Quotient } from "../exact/quotient";
import type { Rates } from "../rates/rates";
import { fieldsNamed } from "../reading/formfields";
import { LINE_LABELS, STONES_ON } from "../reading/orderwords";
import { accepted, type FormOf, faultOf, faultsOf, type Parsed, parseForm, refused } from "../reading/parse";
import { parseStones, type StonePlace, type StoneSet } from "./stones";

const COUNT: NumberRule = { least: "0", most: "10000", whole: true, right: "a whole number from 0, such as 12" };
const EVERY: NumberRule = { least: "1", most: "5000", whole: true, right: "a whole number from 1, such as 3" };

const named = fieldsNamed(LINE_LABELS);
const FIELDS = {
  /** Undefined where nothing is said: then a count alone says it. */
  stonesOn: named.optionalWord("stonesOn", STONES_ON),
  stoneEvery: named.optional("stoneEvery", EVERY),
  stoneCount: named.numberOr("stoneCount", COUNT, Quotient.zero),
  stonesPerLink: named.numberOr("stonesPerLink", EVERY, Quotient.one),
  claspStoneCount: named.numberOr("claspStoneCount", COUNT, Quotient.zero),
};

/** Reads the stones of one piece: in its links and on its clasp. @param links undefined where they cannot be counted yet */
export function parseStoneSets(
  record: Readonly<Record<string, unknown>>,
  links: Quotient | undefined,
  rates: Rates,
): Parsed<readonly StoneSet[]> {
  const read = parseForm(FIELDS, record);
  if (!read.ok) return read;
  const set = linksSet(read.value, links);
  const { stonesPerLink, claspStoneCount } = read.value;
  if (!set.ok) return set;
  const places: readonly StonePlace[] = [
    {
      where: "links",
      which: whichLinks(read.value, set.value),
      count: set.value.times(stonesPerLink),
      follows: followsOf(read.value),
    },
    { where: "clasp", which: "", count: claspStoneCount, follows: undefined },
  ];
  const sets = places.map((place) => ({ count: place.count, set: parseStones(place, record, rates) }));
  // Where there are no stones nothing is missing, but what is typed must still be right.
  const faults = sets.flatMap(({ count, set }) =>
    faultsOf(set).filter((fault) => !count.isZero() || fault.code !== "blank"),
  );
  if (faults.length > 0) return refused(faults);
  return accepted(sets.flatMap(({ count, set }) => (set.ok && !count.isZero() ? [set.value] : [])));
}

/** The stones in the links of a piece, by how many links it has. */
export interface StonesByLinks {
  /** Stones come anew after so many links; 1 where they come with each link, or do not follow the links at all. */
  readonly every: Quotient;
  /** On one piece of so many links; refused where they have no room. */
  readonly count: (links: Quotient) => Parsed<Quotient>;
}

/** Reads how many stones a piece would have in its links if it had another number of them. */
export function parseStonesByLinks(record: Readonly<Record<string, unknown>>): Parsed<StonesByLinks> {
  const read = parseForm(FIELDS, record);
  if (!read.ok) return read;
  const { stonesPerLink } = read.value;
  return accepted({
    every: followsOf(read.value)?.every ?? Quotient.one,
    count(links) {
      const set = linksSet(read.value, links);
      return set.ok ? accepted(set.value.times(stonesPerLink)) : set;
    },
  });
}

/** All links, or every n-th: then more links have more stones. */
function followsOf({ stonesOn, stoneEvery, stonesPerLink }: FormOf<typeof FIELDS>): StonePlace["follows"] {
  if (stonesOn === "all links") return { every: Quotient.one, each: stonesPerLink };
  return stonesOn === "every n-th link" && stoneEvery ? { every: stoneEvery, each: stonesPerLink } : undefined;
}

/** Which links have stones, in words for the setter. @param count how many of them */
function whichLinks({ stonesOn, stoneEvery, stonesPerLink }: FormOf<typeof FIELDS>, count: Quotient): string {
  const each = stonesPerLink.equals(Quotient.one) ? "" : `, ${stonesPerLink.inWords()} each`;
  const every = stonesOn === "every n-th link" ? Number(stoneEvery?.inWords() ?? 1) : 1;
  if (every > 1) return `every ${ordinal(every)} link${each}`;
  if (stonesOn === "all links" || stonesOn === "every n-th link") return `all links${each}`;
  return `${count.inWords()} links${each}`;
}

/** "2nd", "3rd", "11th". */
function ordinal(count: number): string {
  const isTeen = Math.floor((count % 100) / 10) === 1;
  return `${count}${(isTeen ? undefined : ["th", "st", "nd", "rd"][count % 10]) ?? "th"}`;
}

/** How many links of a piece have stones. */
function linksSet(fields: FormOf<typeof FIELDS>, links: Quotient | undefined): Parsed<Quotient> {
  const { stonesOn, stoneEvery, stoneCount } = fields;
  const fault = (key: "stoneEvery" | "stoneCount", code: "blank" | "outOfRange", said: string) =>
    refused([faultOf(key, LINE_LABELS[key], code, said)]);
  switch (stonesOn) {
    case "all links":
      return accepted(links ?? Quotient.zero);
    case "every n-th link":
      if (!stoneEvery) return fault("stoneEvery", "blank", `found nothing; give ${EVERY.right}`);
      return accepted(links ? links.dividedBy(stoneEvery).floor() : Quotient.zero);
    case "no links":
      if (stoneCount.isZero()) return accepted(stoneCount);
      return fault(
        "stoneCount",
        "outOfRange",
        `found ${stoneCount.value()} where no links have stones; empty it, or choose which links have them`,
      );
    case "a number of links":
    case undefined:
      if (stonesOn && stoneCount.isZero()) return fault("stoneCount", "blank", "found none; give how many, such as 12");
      if (links && stoneCount.isGreaterThan(links)) {
        return fault(
          "stoneCount",
          "outOfRange",
          `found ${stoneCount.value()} on a piece of ${links.value()} links; give at most as many, and the stones of each link beside it`,
        );
      }
      return accepted(stoneCount);
  }
}

import { Quotient } from "../exact/quotient";
import type { Rates } from "../rates/rates";
import type { STONES_ON } from "../reading/orderwords";
import { accepted, attempt, faultOf, faultsOf, type Parsed, parseForm, refused } from "../reading/parse";
import { linksWithStones } from "../trade/link";
import type { Currency } from "../units/currency";
import { formOf } from "./fieldkinds";
import { LINE_FIELDS, LINE_LABELS } from "./fields";
import { makeStones, readStones, type StoneParts, type StonePlace, type StoneSet } from "./stones";

const FIELDS = formOf(LINE_FIELDS, "stonesOn", "stoneEvery", "stoneCount", "stonesPerLink", "claspStoneCount");

/** How many stones a piece has, and where, as an order gives it. */
export interface StoneCounts {
  /** Undefined where nothing is said: then a count alone says it. */
  readonly stonesOn: (typeof STONES_ON)[number] | undefined;
  readonly stoneEvery: Quotient | undefined;
  readonly stoneCount: Quotient;
  readonly stonesPerLink: Quotient;
  readonly claspStoneCount: Quotient;
}

/** The stones of one piece as an order gives them. */
export interface StoneSetsParts {
  readonly counts: StoneCounts;
  /** Share of them broken in setting; undefined for that of Rates. */
  readonly breakage: Quotient | undefined;
  readonly inLinks: StoneParts;
  readonly onClasp: StoneParts;
}

/** The stones of one piece as they were read, each part for itself. */
export type ReadStoneSets = { readonly [Part in keyof StoneSetsParts]: Parsed<StoneSetsParts[Part]> };

/** Reads the stones of one piece: in its links and on its clasp. */
export function readStoneSets(record: Readonly<Record<string, unknown>>, currency: Currency): ReadStoneSets {
  return {
    counts: parseForm(FIELDS, record),
    breakage: attempt("breakage", () => LINE_FIELDS.breakage.read(record.breakage)),
    inLinks: readStones("links", record, currency),
    onClasp: readStones("clasp", record, currency),
  };
}

/** The stones of one piece from their parts. @param links undefined where they cannot be counted yet */
export function makeStoneSets(
  { counts, breakage, inLinks, onClasp }: ReadStoneSets,
  links: Quotient | undefined,
  rates: Rates,
): Parsed<readonly StoneSet[]> {
  if (!counts.ok) return counts;
  const set = linksSet(counts.value, links);
  if (!set.ok) return set;
  const { stonesPerLink, claspStoneCount } = counts.value;
  const linkPlace: StonePlace = {
    where: "links",
    which: whichLinks(counts.value, set.value),
    links: set.value,
    count: set.value.times(stonesPerLink),
    follows: followsOf(counts.value),
  };
  const claspPlace: StonePlace = {
    where: "clasp",
    which: "",
    links: Quotient.zero,
    count: claspStoneCount,
    follows: undefined,
  };
  const broken = (breakage.ok ? breakage.value : undefined) ?? rates.breakage;
  const placed = (place: StonePlace, stones: Parsed<StoneParts>) => ({
    count: place.count,
    set: stones.ok ? makeStones(place, stones.value, broken, rates) : stones,
  });
  const sets = [placed(linkPlace, inLinks), placed(claspPlace, onClasp)];
  // Where there are no stones nothing is missing, but what is typed must still be right.
  const faults = sets.flatMap(({ count, set }) =>
    faultsOf(set).filter((fault) => !count.isZero() || fault.code !== "blank"),
  );
  if (faults.length > 0 || !breakage.ok) return refused([...faults, ...faultsOf(breakage)]);
  return accepted(sets.flatMap(({ count, set }) => (set.ok && !count.isZero() ? [set.value] : [])));
}

/** All links, or every n-th: then more links have more stones. */
function followsOf({ stonesOn, stoneEvery, stonesPerLink }: StoneCounts): StonePlace["follows"] {
  if (stonesOn === "all links") return { every: Quotient.one, each: stonesPerLink };
  return stonesOn === "every n-th link" && stoneEvery ? { every: stoneEvery, each: stonesPerLink } : undefined;
}

/** Which links have stones, in words for the setter. @param count how many of them */
function whichLinks({ stonesOn, stoneEvery, stonesPerLink }: StoneCounts, count: Quotient): string {
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
function linksSet(fields: StoneCounts, links: Quotient | undefined): Parsed<Quotient> {
  const { stonesOn, stoneEvery, stoneCount } = fields;
  const fault = (key: "stoneEvery" | "stoneCount", code: "blank" | "outOfRange", said: string) =>
    refused([faultOf(key, LINE_LABELS[key], code, said)]);
  switch (stonesOn) {
    case "all links":
      return accepted(links ?? Quotient.zero);
    case "every n-th link":
      if (!stoneEvery) return fault("stoneEvery", "blank", `found nothing; give ${LINE_FIELDS.stoneEvery.rule.right}`);
      return accepted(links ? linksWithStones(links, stoneEvery) : Quotient.zero);
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

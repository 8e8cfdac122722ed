import { Quotient } from "../exact/quotient";
import type { Colour } from "../gold/alloy";
import type { LENGTH_GIVEN, LINKS_PER_UNITS, ORDER_LENGTH_UNITS } from "../reading/orderwords";
import { accepted, faultOf, faultsOf, type Parsed, parseForm, refused } from "../reading/parse";
import type { BoughtPart } from "../trade/boughtpart";
import { type ClaspKind, isCast } from "../trade/clasp";
import { countLinks, type LinkCasting } from "../trade/colourpattern";
import { linkCount, pitchOf } from "../trade/link";
import type { Currency } from "../units/currency";
import { type Length, lengthIn, millimetres } from "../units/length";
import { grams, type Weight } from "../units/weight";
import { type ClaspParts, checkClasp, readClasp } from "./clasp";
import { formOf } from "./fieldkinds";
import { LINE_FIELDS, LINE_LABELS, type LineKey } from "./fields";

/** The links of one colour in a piece, and what the caster casts of them. */
export interface Links {
  readonly colour: Colour;
  readonly links: Quotient;
  readonly closed: Quotient;
  readonly open: Quotient;
  /** Of one link, finished. */
  readonly linkWeight: Weight;
}

/** The chain of an order: its length, its links by colour, its clasp. */
export interface ChainOrder {
  /** The line's colour; a pattern may hold others beside it. */
  readonly colour: Colour;
  readonly lengthGiven: (typeof LENGTH_GIVEN)[number];
  readonly lengthUnit: (typeof ORDER_LENGTH_UNITS)[number];
  /** Neck or wrist as measured, and the ease added to it; the finished length and none where that was given. */
  readonly measured: Quotient;
  readonly ease: Quotient;
  readonly length: Length;
  readonly linksPer: Quotient;
  readonly linksPerUnit: (typeof LINKS_PER_UNITS)[number];
  readonly pitch: Length;
  readonly links: Quotient;
  readonly linkCasting: LinkCasting;
  /** The repeating colours; empty where all links are of one. */
  readonly pattern: readonly Colour[];
  readonly linkGroups: readonly Links[];
  /** Of one link of each colour of the line, finished; also of colours that so short a piece does not reach. */
  readonly linkWeights: LinkWeights;
  readonly clasp: Clasp;
}

export type LinkWeights = Readonly<Partial<Record<Colour, Weight>>>;

export interface Clasp extends BoughtPart {
  readonly kind: ClaspKind;
  /** Cast with the links, in their alloy; a bought one's gold is in its cost. */
  readonly cast: boolean;
  readonly length: Length;
}

/** The links of a chain as an order gives them. */
export interface LinksParts
  extends Pick<
    ChainOrder,
    "colour" | "pattern" | "lengthGiven" | "measured" | "lengthUnit" | "linksPer" | "linksPerUnit" | "linkCasting"
  > {
  /** What the piece is longer than a neck or a wrist; undefined for a finished length. */
  readonly ease: Quotient | undefined;
  /** Of one link of the line's own colour, finished. */
  readonly linkWeight: Weight;
  /** Of the other colours of the pattern. */
  readonly otherLinkWeights: LinkWeights;
}

/** A chain as an order gives it. */
export interface ChainParts extends LinksParts {
  readonly clasp: ClaspParts;
}

/** More links than one piece of a bench ever has: past it a length or a pitch was mistyped. */
export const MOST_LINKS = 5000;

/** The field of each colour's link weight beside that of the line's own colour. */
export const WEIGHT_KEYS = {
  yellow: "linkWeightYellow",
  rose: "linkWeightRose",
  white: "linkWeightWhite",
  green: "linkWeightGreen",
} as const satisfies Partial<Record<Colour, LineKey>>;

const FIELDS = formOf(
  LINE_FIELDS,
  "colour",
  "pattern",
  "lengthGiven",
  "length",
  "lengthUnit",
  "ease",
  "linksPer",
  "linksPerUnit",
  "linkWeight",
  "linkWeightYellow",
  "linkWeightRose",
  "linkWeightWhite",
  "linkWeightGreen",
  "linkCasting",
);

/** A chain from its parts, or what is wrong between them. */
export function makeChain({ clasp, ...links }: ChainParts): Parsed<ChainOrder> {
  return chainOf(accepted(links), accepted({ ...clasp }));
}

/** Reads length, links and clasp of a line, and what is wrong between them. */
export function parseChain(record: Readonly<Record<string, unknown>>, currency: Currency): Parsed<ChainOrder> {
  return chainOf(readLinks(record), readClasp(record, currency));
}

function readLinks(record: Readonly<Record<string, unknown>>): Parsed<LinksParts> {
  const read = parseForm(FIELDS, record);
  if (!read.ok) return read;
  const others = Object.entries(WEIGHT_KEYS).flatMap(([colour, key]) => {
    const weight = read.value[key];
    return weight ? [[colour, grams(weight)]] : [];
  });
  return accepted({
    ...read.value,
    measured: read.value.length,
    linkWeight: grams(read.value.linkWeight),
    otherLinkWeights: Object.fromEntries(others),
  });
}

function chainOf(given: Parsed<LinksParts>, givenClasp: Parsed<ClaspParts>): Parsed<ChainOrder> {
  const clasp = givenClasp.ok ? checkClasp(givenClasp.value) : givenClasp;
  if (!given.ok || !clasp.ok) return refused(faultsOf(given, clasp));
  const { colour, pattern, lengthGiven, measured, lengthUnit, linksPer, linksPerUnit, linkCasting } = given.value;
  const ease = easeOf(given.value);
  const weights = linkWeightsOf(given.value);
  if (!ease.ok || !weights.ok) return refused(faultsOf(ease, weights));
  const length = lengthIn(measured.plus(ease.value), lengthUnit);
  const pitch = pitchOf(linksPer, lengthIn(Quotient.one, linksPerUnit));
  const claspLength = lengthIn(clasp.value.length, lengthUnit);
  const links = linksIn(length, pitch, claspLength);
  if (!links.ok) return links;
  const linkWeights = weights.value;
  const counted = countLinks(links.value, pattern.length > 0 ? pattern : [colour], linkCasting);
  return accepted({
    colour,
    lengthGiven,
    lengthUnit,
    measured,
    ease: ease.value,
    length,
    linksPer,
    linksPerUnit,
    pitch,
    links: links.value,
    linkCasting,
    pattern,
    linkGroups: Object.freeze(
      counted.map((group) =>
        Object.freeze({ ...group, linkWeight: linkWeights[group.colour] ?? given.value.linkWeight }),
      ),
    ),
    linkWeights,
    clasp: Object.freeze({ ...clasp.value, cast: isCast(clasp.value.kind), length: claspLength }),
  });
}

/** The ease, which a neck or a wrist needs and a finished length does not take. */
function easeOf({ lengthGiven, ease }: LinksParts): Parsed<Quotient> {
  if (lengthGiven === "finished length") {
    if (!ease || ease.isZero()) return accepted(Quotient.zero);
    const said = `found ${ease.value()} beside a finished length; empty it, or give the neck or the wrist`;
    return refused([faultOf("ease", LINE_LABELS.ease, "outOfRange", said)]);
  }
  if (ease) return accepted(ease);
  const said = `found nothing; give how much longer than the ${lengthGiven} the piece is, such as 1.5, or 0`;
  return refused([faultOf("ease", LINE_LABELS.ease, "blank", said)]);
}

/** The weight of a link of each colour of the line; colours weigh differently, so none is taken for another. */
function linkWeightsOf({ colour, pattern, linkWeight, otherLinkWeights }: LinksParts): Parsed<LinkWeights> {
  if (pattern.length > 0 && !pattern.includes(colour)) {
    const said = `found a pattern without ${colour}, the colour of the line; choose one of its colours, or mend the pattern`;
    return refused([faultOf("pattern", LINE_LABELS.pattern, "unknownWord", said)]);
  }
  const others = [...new Set(pattern)].filter((each) => each !== colour);
  if (colour === "own" && others.length > 0) {
    const said = "found another colour beside an alloy of your own; make each a line of its own";
    return refused([faultOf("pattern", LINE_LABELS.pattern, "unknownWord", said)]);
  }
  const lacking = others.filter((each) => each === "own" || otherLinkWeights[each] === undefined);
  if (lacking.length > 0) {
    return refused(
      lacking.map((each) => {
        if (each === "own") {
          const said = "found O, an alloy of your own, beside another colour; make each a line of its own";
          return faultOf("pattern", LINE_LABELS.pattern, "unknownWord", said);
        }
        const key = WEIGHT_KEYS[each];
        return faultOf(key, LINE_LABELS[key], "blank", `found nothing; give ${LINE_FIELDS.linkWeight.rule.right}`);
      }),
    );
  }
  const weightOf = (each: Colour) => (each === colour ? linkWeight : (otherLinkWeights[each] ?? linkWeight));
  return accepted(Object.fromEntries([colour, ...others].map((each) => [each, weightOf(each)])));
}

function linksIn(length: Length, pitch: Length, claspLength: Length): Parsed<Quotient> {
  const fault = (said: string) => refused([faultOf("length", LINE_LABELS.length, "outOfRange", said)]);
  const room = millimetres(length.millimetres.minus(claspLength.millimetres));
  if (!room.millimetres.isPositive()) {
    const clasp = claspLength.millimetres.value().toSignificantDigits(6);
    const whole = length.millimetres.value().toSignificantDigits(6);
    return fault(`found ${whole} mm, no longer than the clasp of ${clasp} mm; give a length above the clasp length`);
  }
  const links = linkCount(length, pitch, claspLength);
  if (links.isZero()) {
    return fault("found a length without room for one link; give a longer one, or check the links per length");
  }
  if (links.isGreaterThan(Quotient.of(MOST_LINKS))) {
    return fault(
      `found a chain of ${links.value()} links; check length and links per length, which make at most ${MOST_LINKS} links here`,
    );
  }
  return accepted(links);
}

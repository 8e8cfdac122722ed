import type { NumberRule } from "../exact/numberrule";
import { Quotient } from "../exact/quotient";
import { COLOURS, type Colour } from "../gold/alloy";
import { fieldsNamed } from "../reading/formfields";
import {
  LENGTH_GIVEN,
  LINE_LABELS,
  LINK_CASTINGS,
  LINKS_PER_UNITS,
  type LineKey,
  ORDER_LENGTH_UNITS,
} from "../reading/orderwords";
import { accepted, type FormOf, faultOf, faultsOf, field, type Parsed, parseForm, refused } from "../reading/parse";
import { type ClaspKind, isCast, parseClasp } from "../trade/clasp";
import { countLinks, type LinkCasting, parsePattern } from "../trade/colourpattern";
import { linkCount, pitchOf } from "../trade/link";
import type { Currency } from "../units/currency";
import { type Length, lengthIn, millimetres } from "../units/length";
import { type Money, money } from "../units/money";
import { grams, type Weight } from "../units/weight";

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
  readonly clasp: Clasp;
}

export interface Clasp {
  readonly kind: ClaspKind;
  /** Cast with the links, in their alloy; a bought one's gold is in its cost. */
  readonly cast: boolean;
  readonly length: Length;
  readonly weight: Weight;
  readonly cost: Money;
}

const LENGTH: NumberRule = { above: "0", most: "100000", right: "a length above 0, such as 24" };
const EASE: NumberRule = { least: "0", most: "10000", right: "what the piece is longer than the measure, such as 1.5" };
const LINKS_PER: NumberRule = { above: "0", most: "1000", right: "links in one inch or centimetre, such as 4" };
const LINK_WEIGHT: NumberRule = { above: "0", most: "1000", right: "grams above 0, such as 2.05" };

/** More links than one piece of a bench ever has: past it a length or a pitch was mistyped. */
export const MOST_LINKS = 5000;

/** The field of each colour's link weight beside that of the line's own colour. */
const WEIGHT_KEYS = {
  yellow: "linkWeightYellow",
  rose: "linkWeightRose",
  white: "linkWeightWhite",
  green: "linkWeightGreen",
} as const satisfies Partial<Record<Colour, LineKey>>;

const named = fieldsNamed(LINE_LABELS);
export const CHAIN_FIELDS = {
  colour: named.word("colour", COLOURS),
  pattern: field((value) => parsePattern(value, LINE_LABELS.pattern)),
  lengthGiven: named.wordOr("lengthGiven", LENGTH_GIVEN, "finished length"),
  length: named.number("length", LENGTH),
  lengthUnit: named.word("lengthUnit", ORDER_LENGTH_UNITS),
  ease: named.optional("ease", EASE),
  linksPer: named.number("linksPer", LINKS_PER),
  linksPerUnit: named.word("linksPerUnit", LINKS_PER_UNITS),
  linkWeight: named.number("linkWeight", LINK_WEIGHT),
  linkWeightYellow: named.optional("linkWeightYellow", LINK_WEIGHT),
  linkWeightRose: named.optional("linkWeightRose", LINK_WEIGHT),
  linkWeightWhite: named.optional("linkWeightWhite", LINK_WEIGHT),
  linkWeightGreen: named.optional("linkWeightGreen", LINK_WEIGHT),
  linkCasting: named.wordOr("linkCasting", LINK_CASTINGS, "closed and open in turn"),
};

/** Reads length, links and clasp of a line, and what is wrong between them. */
export function parseChain(record: Readonly<Record<string, unknown>>, currency: Currency): Parsed<ChainOrder> {
  const read = parseForm(CHAIN_FIELDS, record);
  const clasp = parseClasp(record);
  if (!read.ok || !clasp.ok) return refused(faultsOf(read, clasp));
  const chain = read.value;
  const { lengthGiven, lengthUnit, linksPer, linksPerUnit, linkCasting, pattern } = chain;
  const measure = parseMeasure(chain);
  const weights = parseLinkWeights(chain);
  if (!measure.ok || !weights.ok) return refused(faultsOf(measure, weights));
  const length = lengthIn(chain.length.plus(measure.value), lengthUnit);
  const pitch = pitchOf(linksPer, lengthIn(Quotient.one, linksPerUnit));
  const claspLength = lengthIn(clasp.value.claspLength, lengthUnit);
  const links = parseLinks(length, pitch, claspLength);
  if (!links.ok) return links;
  const counted = countLinks(links.value, pattern.length > 0 ? pattern : [chain.colour], linkCasting);
  return accepted({
    colour: chain.colour,
    lengthGiven,
    lengthUnit,
    measured: chain.length,
    ease: measure.value,
    length,
    linksPer,
    linksPerUnit,
    pitch,
    links: links.value,
    linkCasting,
    pattern,
    linkGroups: Object.freeze(
      counted.map((group) => Object.freeze({ ...group, linkWeight: weights.value(group.colour) })),
    ),
    clasp: Object.freeze({
      kind: clasp.value.clasp,
      cast: isCast(clasp.value.clasp),
      length: claspLength,
      weight: grams(clasp.value.claspWeight),
      cost: money(clasp.value.claspCost, currency),
    }),
  });
}

type Fields = FormOf<typeof CHAIN_FIELDS>;

/** The ease, which a neck or a wrist needs and a finished length does not take. */
function parseMeasure({ lengthGiven, ease }: Fields): Parsed<Quotient> {
  if (lengthGiven === "finished length") {
    if (!ease || ease.isZero()) return accepted(Quotient.zero);
    const said = `found ${ease.value()} beside a finished length; empty it, or give the neck or the wrist`;
    return refused([faultOf("ease", LINE_LABELS.ease, "outOfRange", said)]);
  }
  if (ease) return accepted(ease);
  const said = `found nothing; give how much longer than the ${lengthGiven} the piece is, such as 1.5, or 0`;
  return refused([faultOf("ease", LINE_LABELS.ease, "blank", said)]);
}

/** The weight of a link of each colour of the pattern; colours weigh differently, so none is taken for another. */
function parseLinkWeights(chain: Fields): Parsed<(colour: Colour) => Weight> {
  const { colour, pattern, linkWeight } = chain;
  if (pattern.length > 0 && !pattern.includes(colour)) {
    const said = `found a pattern without ${colour}, the colour of the line; choose one of its colours, or mend the pattern`;
    return refused([faultOf("pattern", LINE_LABELS.pattern, "unknownWord", said)]);
  }
  const others = [...new Set(pattern)].filter((each) => each !== colour);
  if (colour === "own" && others.length > 0) {
    const said = "found another colour beside an alloy of your own; make each a line of its own";
    return refused([faultOf("pattern", LINE_LABELS.pattern, "unknownWord", said)]);
  }
  const lacking = others.filter((each) => each === "own" || chain[WEIGHT_KEYS[each]] === undefined);
  if (lacking.length > 0) {
    return refused(
      lacking.map((each) => {
        if (each === "own") {
          const said = "found O, an alloy of your own, beside another colour; make each a line of its own";
          return faultOf("pattern", LINE_LABELS.pattern, "unknownWord", said);
        }
        const key = WEIGHT_KEYS[each];
        return faultOf(key, LINE_LABELS[key], "blank", `found nothing; give ${LINK_WEIGHT.right}`);
      }),
    );
  }
  return accepted((each: Colour) =>
    grams(each === colour || each === "own" ? linkWeight : (chain[WEIGHT_KEYS[each]] ?? linkWeight)),
  );
}

function parseLinks(length: Length, pitch: Length, claspLength: Length): Parsed<Quotient> {
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

import {
  type ColourRun,
  minorDigits,
  type QuotedPiece,
  type QuotedStones,
  type QuoteLine,
  Quotient,
} from "../../src/index";
import { PLATING_TEXTS } from "./platingtexts";

/**
 * What a customer reads of a piece, in one way on every paper. The colour stands in front, the mark directly before the word gold,
 * solid or hollow directly after it, and plating with its metal. It never joins words to "gold-plated" or "solid gold".
 * Source of the mark's place: 16 CFR 23.3(b)(2).
 */
export function pieceWords(piece: QuotedPiece): string {
  const { kind, mark, colours, hollow, runs, plating, isUnplatedWhite } = piece;
  const made = `${KINDS[kind]} in ${listed(colours.map(withoutGold))} ${mark} gold, ${hollow ? "hollow" : "solid"} links`;
  if (runs.length > 0) return `${made}: ${inTurn(runs)}`;
  if (plating) return `${made}, ${PLATING_TEXTS.with} ${plating.metal}`;
  return isUnplatedWhite ? `${made}, not plated` : made;
}

/** The plating of links of several colours, in a sentence of its own; "" where the piece says it. */
export function platingSentence({ runs, plating, isUnplatedWhite }: QuotedPiece): string {
  if (runs.length === 0) return "";
  if (plating) {
    const part = plating.part === "white links" ? "The white links are" : "The piece is";
    return `${part} ${PLATING_TEXTS.with} ${plating.metal}.`;
  }
  return isUnplatedWhite ? "The white links are not plated." : "";
}

/** Everything a customer reads of a line, in whole sentences. @param weighed whether its weight is said, or has a column of its own */
export function lineWords(line: QuoteLine, locale: string, weighed: boolean): string {
  return [
    `${pieceWords(line)}.`,
    platingSentence(line),
    measureWords(line, locale, weighed),
    line.clasp === "none" ? "" : `${capital(claspName(line.clasp))}.`,
    ...line.sets.map((set) => stonesWords(set, line.sets.length > 1, locale)),
    line.findings === "" ? "" : `With ${line.findings}.`,
    engravingWords(line),
    settlingWords(line, locale),
  ]
    .filter((sentence) => sentence !== "")
    .join(" ");
}

const KINDS: Readonly<Record<QuotedPiece["kind"], string>> = { chain: "Chain", bracelet: "Bracelet" };

/** What an alloy is called may end with the word that follows its mark anyway. */
export const withoutGold = (colour: string) => colour.replace(/\s+gold$/i, "");

function listed(words: readonly string[]): string {
  return new Intl.ListFormat("en", { type: "conjunction" }).format(words).replace(/, and /, " and ");
}

const COUNTS = ["", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

/** "two yellow links, then one white, repeated". */
function inTurn(runs: readonly ColourRun[]): string {
  const counted = runs.map(({ colour, links }, index) => {
    const noun = index > 0 ? "" : links === 1 ? " link" : " links";
    return `${COUNTS[links] ?? links} ${withoutGold(colour)}${noun}`;
  });
  return `${counted.join(", then ")}, repeated`;
}

function measureWords(line: QuoteLine, locale: string, weighed: boolean): string {
  const { unit, madeFor, reached } = line;
  const ordered = Quotient.of(line.length);
  const long = reached ?? ordered;
  const decimals = unit === "mm" ? 0 : 1;
  const inUnit = (length: Quotient, most = 2) =>
    `${figure(length, locale, decimals, Math.max(decimals, most))} ${unit}`;
  const links = `${figure(line.links, locale, 0)} ${line.links.equals(Quotient.one) ? "link" : "links"}`;
  const each = line.quantity.equals(Quotient.one) ? "" : " each";
  // Where the final weight settles the price, the weight is stated and not about.
  const about = line.perGram ? "" : "about ";
  const weight = weighed ? `, ${about}${figure(line.weight, locale, 1, 2)} g${each}` : "";
  if (madeFor) {
    const made = `For a ${madeFor.part} of ${inUnit(madeFor.measured)} with ${inUnit(madeFor.ease)} ease`;
    return `${made}: finished length ${inUnit(long, decimals)}, ${links}${weight}.`;
  }
  if (!reached) return `Finished length ${inUnit(ordered)}, ${links}${weight}.`;
  const off = reached.minus(ordered);
  const by = inUnit(off.isNegative() ? Quotient.zero.minus(off) : off);
  const how = `whole links make it ${by} ${off.isNegative() ? "shorter" : "longer"}`;
  return `Finished length ${inUnit(reached)} (you ordered ${inUnit(ordered)}; ${how}), ${links}${weight}.`;
}

/** "Set with 10 round diamonds of 2.0 mm, 0.30 ct in total (weighed)." */
function stonesWords(set: QuotedStones, isOneOfTwo: boolean, locale: string): string {
  const { where, count, cut, kind, sides, origin, carats, isWeighed } = set;
  const isOne = count.equals(Quotient.one);
  const noun = kind === "" ? (isOne ? "stone" : "stones") : nounOf(kind, isOne);
  const grown = origin === "not said" || kind === "" ? "" : origin;
  // A cut without a size is only what the form begins with.
  const shape = sides.length === 0 || cut === "other cut" ? "" : cut === "emerald cut" ? "emerald-cut" : cut;
  const size = sides.length === 0 ? "" : `of ${sides.map((side) => figure(side, locale, 1, 4)).join(" × ")} mm`;
  const place = isOneOfTwo ? (where === "links" ? "in the links" : "on the clasp") : "";
  const set_ = ["Set with", figure(count, locale, 0), shape, grown, noun, size, place]
    .filter((word) => word !== "")
    .join(" ");
  if (kind === "") return `${set_} (the kind of stone is still to be agreed).`;
  if (!carats) return `${set_}.`;
  const total = `${figure(carats, locale, 2)} ct in total`;
  return isWeighed ? `${set_}, ${total} (weighed).` : `${set_}. Worked out from the size: about ${total}.`;
}

/** Kinds of stones by their English plural; another kind stands in brackets after the word stones, in the person's own words. */
const PLURALS: Readonly<Record<string, string>> = Object.fromEntries(
  [
    ...["diamond", "sapphire", "emerald", "amethyst", "citrine", "garnet", "peridot", "aquamarine", "tourmaline"],
    ...["spinel", "opal", "pearl", "moissanite", "tanzanite", "tsavorite", "zircon", "turquoise", "moonstone"],
  ].map((kind) => [kind, `${kind}s`]),
);
const IRREGULAR: Readonly<Record<string, string>> = { ruby: "rubies", topaz: "topazes", onyx: "onyxes" };

function nounOf(kind: string, isOne: boolean): string {
  const [, before = "", last = ""] = /^(.*?)(\p{L}+)$/u.exec(kind) ?? [];
  const noun = last.toLowerCase();
  const plural = PLURALS[noun] ?? IRREGULAR[noun];
  const isPlural = [...Object.values(PLURALS), ...Object.values(IRREGULAR)].includes(noun);
  if (isPlural && !isOne) return kind;
  if (!plural) return `${isOne ? "stone" : "stones"} (${kind})`;
  return `${before.toLowerCase()}${isOne ? noun : plural}`;
}

function engravingWords({ engraving, engravingPlace }: QuoteLine): string {
  if (engraving === "") return "";
  return `Engraved${engravingPlace === "" ? "" : ` ${engravingPlace}`}: “${engraving}”.`;
}

function settlingWords({ perGram, settlesAlone }: QuoteLine, locale: string): string {
  if (!perGram || !settlesAlone) return "";
  const rate = figure(perGram.amount, locale, minorDigits(perGram.currency));
  return `${perGram.currency} ${rate} more or less per gram.`;
}

/** The clasp for the customer: what it does, not where it comes from. */
export function claspName(clasp: string): string {
  return clasp.replace(/^(bought|cast) /, "");
}

function capital(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

function figure(value: Quotient, locale: string, least: number, most = least): string {
  const show = new Intl.NumberFormat(locale, { minimumFractionDigits: least, maximumFractionDigits: most });
  return show.format(value.rounded(most).toNumber());
}

import {
  type Colour,
  type CostSheet,
  colourName,
  DIAMOND_GRAVITY,
  inLengthUnit,
  type Length,
  LINE_LABELS,
  type OrderLine,
  PATTERN_LETTERS,
  platingOf,
  Quotient,
  type Rates,
  type StoneSet,
  showMark,
} from "../../../src/index";
import { PLATING_TEXTS, platingWords } from "../../wording/platingtexts";
import { SETTLING_TEXTS } from "../../wording/settlingtexts";
import { asText, capital } from "../paper";
import { COUNT, cents, SHARE, unlessOnRates } from "./figures";
import { entry, formula, type JobRow, type Ref, section, text } from "./row";

/** What was ordered: a cell that changes the sums may be written in, words that change nothing may not. */
export function asked({ line }: CostSheet, rates: Rates): JobRow[] {
  return [
    section("Asked for"),
    entry("mark", "Mark", asText(showMark(line.mark)), line.hollow ? "hollow links" : "solid links", "input"),
    ...(line.composition
      ? [entry("gold", "Gold in the alloy", line.gold.share.times(THOUSAND).toNumber(), "parts in a thousand", "input")]
      : []),
    entry("colour", "Colour", "", asText(coloursOf(line)), "plain"),
    entry("quantity", "Pieces", line.quantity.toNumber(), line.kind, "input", COUNT),
    ...measure(line),
    entry("linksPer", "Links to each", line.linksPer.toNumber(), line.linksPerUnit, "input"),
    entry("claspLength", "Clasp length", inUnit(line, line.clasp.length), line.lengthUnit, "input"),
    ...bought("clasp", line, rates),
    ...bought("findings", line, rates),
    ...stones(line, rates),
  ];
}

/** The row that says the gold in a line: an alloy of the workshop's own by its composition, else the mark. */
export function goldKey({ composition }: OrderLine): "gold" | "mark" {
  return composition ? "gold" : "mark";
}

/** The mark of a bought part, where it is not that of the piece or its gold follows spot, and then its premium. */
function bought(key: "clasp" | "findings", line: OrderLine, rates: Rates): JobRow[] {
  const { mark, cost } = line[key];
  const isByWeight = cost.by === "premium";
  const [markLabel, premiumLabel] = [LINE_LABELS[`${key}Mark`], LINE_LABELS[`${key}Premium`]];
  return [
    ...(mark ? [entry(`${key}Mark`, markLabel, asText(showMark(mark)), "", "input")] : []),
    ...(isByWeight && !mark ? [formula(`${key}Mark`, markLabel, (at) => at("mark"), "as the piece", "General")] : []),
    ...(isByWeight
      ? [
          entry(
            `${key}Premium`,
            premiumLabel,
            cost.premium.perGram.toNumber(),
            "a gram over its metal",
            "input",
            cents(rates),
          ),
        ]
      : []),
  ];
}

const THOUSAND = Quotient.of(1000);

/** Its colours, the pattern they repeat in, and the composition of an alloy of the workshop's own. */
function coloursOf(line: OrderLine): string {
  const { composition } = line;
  const names = line.linkGroups.map(({ colour }) => {
    const name = colourName(colour, line);
    return colour === "own" && composition ? `${name} (${composition.text})` : name;
  });
  const colours = names.join(", ");
  const letters = patternOf(line);
  const plating = platingOf(line);
  const plated = line.plated
    ? `, ${plating ? platingWords(plating) : PLATING_TEXTS.unnamed}`
    : line.linkGroups.some(({ colour }) => colour === "white")
      ? ", not plated"
      : "";
  return `${letters === "" ? colours : `${colours} in turn: ${letters}`}${plated}`;
}

/** The colours that repeat, in letters, such as "YYW"; empty where all links are of one. */
export function patternOf({ pattern }: OrderLine): string {
  return pattern.map(letterOf).join("");
}

export function letterOf(colour: Colour): string {
  return Object.entries(PATTERN_LETTERS).find(([, named]) => named === colour)?.[0] ?? "";
}

function measure(line: OrderLine): JobRow[] {
  const { lengthGiven, lengthUnit, measured, ease } = line;
  if (lengthGiven === "finished length") {
    return [entry("length", "Length", inUnit(line, line.length), lengthUnit, "input")];
  }
  return [
    entry("measured", lengthGiven === "neck" ? "Neck" : "Wrist", measured.toNumber(), lengthUnit, "input"),
    entry("ease", "Ease", ease.toNumber(), lengthUnit, "input"),
    formula("length", "Length", (at) => `${at("measured")}+${at("ease")}`, lengthUnit, "#,##0.0##"),
  ];
}

/** A row for stones alike: how many on a piece, carat of one, price of one, fee, share broken, whole ones to buy for all pieces. */
function stones(line: OrderLine, rates: Rates): JobRow[] {
  const { stones: sets } = line;
  if (sets.length === 0) return [];
  const money = cents(rates);
  return [
    section("Stones on one piece", ["Stones", "Carat of one", "Price of one", "Setting fee", "Broken", "Buy, all"]),
    ...sets.map(
      (set, index): JobRow => ({
        key: stoneKey(index),
        cells: (at) => [
          { content: asText(stoneName(set)), look: "item" },
          { content: stoneCount(set, at), look: "inputRight", format: COUNT },
          { content: set.carat?.toNumber() ?? "", look: "inputRight", format: caratFormat(set, "0.00#") },
          { content: set.price.amount.toNumber(), look: "inputRight", format: money },
          {
            content: unlessOnRates(set.settingFee.amount, "settingFee", rates.settingFee.amount),
            look: "inputRight",
            format: money,
          },
          { content: unlessOnRates(set.breakage, "breakage", rates.breakage), look: "inputRight", format: SHARE },
          {
            content: `=CURB.STONESTOBUY(${at(stoneKey(index))},${at("quantity")},${at(stoneKey(index), "F")})`,
            look: "number",
            format: COUNT,
          },
        ],
      }),
    ),
    caratsRow(sets.length),
    ...caratNotes([line]).map((note) => text(note, "small")),
  ];
}

/** They lie on the scale with the gold; blank until the carat of every stone is known. */
function caratsRow(sets: number): JobRow {
  const column = (letter: "B" | "C", at: Ref) => `${at(stoneKey(0), letter)}:${at(stoneKey(sets - 1), letter)}`;
  return formula(
    "carats",
    "Carats on one piece",
    (at) => `IF(COUNT(${column("C", at)})=${sets},SUMPRODUCT(${column("B", at)},${column("C", at)}),"")`,
    SETTLING_TEXTS.carats,
    "0.00#",
  );
}

/** Stones on all or every n-th of the links follow the links; others are as many as were asked for. */
function stoneCount({ count, follows }: StoneSet, at: Ref): string | number {
  if (!follows) return count.toNumber();
  const links = at("castParts");
  const linksSet = follows.every.equals(Quotient.one)
    ? links
    : `CURB.LINKSWITHSTONES(${links},${follows.every.value()})`;
  return `=${linksSet}${follows.each.equals(Quotient.one) ? "" : `*${follows.each.value()}`}`;
}

/** A carat that was not weighed is about. */
export function caratFormat({ caratFrom }: StoneSet, format: string): string {
  return caratFrom === "scale" ? format : `"about "${format}`;
}

/** What the carats of stones that were not weighed rest on; nothing where all were, or where they are diamonds. */
export function caratNotes(lines: readonly OrderLine[]): readonly string[] {
  const isAsDiamond = lines.some((line) =>
    line.stones.some(({ carat, caratFrom }) => carat && caratFrom === AS_DIAMOND),
  );
  return isAsDiamond
    ? [`Carats of other stones are as of a diamond that size (specific gravity ${DIAMOND_GRAVITY}): weigh them.`]
    : [];
}
const AS_DIAMOND = "a diamond's size";

/** The key of a row of stones. */
export function stoneKey(index: number): string {
  return `stones${index}`;
}

/** What stones, where they go and their size, such as "sapphire, in all links, 2 mm round". */
export function stoneName({ where, which, kind, size }: StoneSet): string {
  const place = where === "links" ? `in ${which}` : "on the clasp";
  return capital([kind, place, size].filter((part) => part !== "").join(", "));
}

function inUnit(line: OrderLine, length: Length): number {
  return inLengthUnit(length, line.lengthUnit).toNumber();
}

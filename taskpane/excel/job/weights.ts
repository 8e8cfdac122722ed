import { type AlloyPart, type CostSheet, colourName, type OrderLine } from "../../../src/index";
import { asText, capital } from "../paper";
import { nameOf } from "../rates/rates";
import { goldKey, letterOf, patternOf } from "./asked";
import { COUNT, GRAMS, LOSS, SCALE } from "./figures";
import { entry, formula, type JobRow, type Ref, section } from "./row";

/** Links and weights of one piece: a row an alloy, then the piece. */
export function weights({ line, alloys }: CostSheet): JobRow[] {
  return [
    section("Links and weights, one piece", ["Links", "Closed", "Open", "One link, g", "Finished, g", "To cast, g"]),
    ...alloys.map((alloy, index) => alloyRow(line, alloy, index)),
    castParts(alloys.length),
    formula("chain", "Links alone, finished", (at) => at("castParts", "F") + castClasp(line, at), "g", SCALE),
    entry(
      "claspWeight",
      "Clasp weight",
      line.clasp.weight.grams.toNumber(),
      `g, ${line.clasp.kind === "none" ? "no clasp" : line.clasp.kind}`,
      "input",
      SCALE,
    ),
    entry("findingsWeight", "Weight of other findings", line.findings.weight.grams.toNumber(), "g", "input", SCALE),
    formula(
      "finished",
      "Piece, finished",
      (at) => `${at("chain")}+${at("claspWeight")}+${at("findingsWeight")}`,
      "g",
      SCALE,
      "total",
    ),
    formula(
      "lostWeight",
      "Lost in polishing, as charged",
      (at) => `CURB.LOSTWEIGHT(${at("castParts", "F")},${LOSS})`,
      "g",
      SCALE,
    ),
    formula("fine", "Fine gold, finished", (at) => fineOf(line, at), "g", SCALE),
    formula(
      "fineCast",
      "Fine gold to cast",
      (at) => `CURB.FINEGOLD(${at("castParts", "G")},${at(goldKey(line))})`,
      "g",
      SCALE,
    ),
    reached(line),
  ];
}

/** Fine gold in the finished piece: a bought part of another mark by its own. */
function fineOf(line: OrderLine, at: Ref): string {
  const others = (["clasp", "findings"] as const).filter(
    (key) => line[key].mark && !(key === "clasp" && line.clasp.cast) && !line[key].weight.grams.isZero(),
  );
  const without = others.map((key) => `-${at(`${key}Weight`)}`).join("");
  const parts = others.map((key) => `+CURB.FINEGOLD(${at(`${key}Weight`)},${at(`${key}Mark`)})`).join("");
  return `CURB.FINEGOLD(${at("finished")}${without},${at(goldKey(line))})${parts}`;
}

/** The key of an alloy's row. */
export function alloyKey(index: number): string {
  return `alloy${index}`;
}

/** An alloy's colour, and the clasp parts cast in it. */
export function alloyName({ colour, claspParts }: AlloyPart, line: OrderLine): string {
  const parts = claspParts.isZero() ? "" : ` and ${claspParts.value()} clasp parts`;
  return `${colourName(colour, line)}${parts}`;
}

function alloyRow(line: OrderLine, alloy: AlloyPart, index: number): JobRow {
  const key = alloyKey(index);
  const weight = line.linkGroups[index]?.linkWeight.grams.toNumber() ?? 0;
  return {
    key,
    cells: (at) => [
      { content: asText(capital(alloyName(alloy, line))), look: "item" },
      { content: `=${at(key, "C")}+${at(key, "D")}`, look: "number", format: COUNT },
      { content: `=${countOf(line, alloy, "closed", at)}`, look: "number", format: COUNT },
      { content: `=${countOf(line, alloy, "open", at)}`, look: "number", format: COUNT },
      { content: weight, look: "inputRight", format: GRAMS },
      {
        content: `=${at(key)}*${at(key, "E")}${alloy.claspParts.isZero() ? "" : `+${at("claspWeight")}`}`,
        look: "number",
        format: SCALE,
      },
      {
        content: `=${at("castParts", "G")}*${at(key, "F")}/${at("castParts", "F")}`,
        look: "number",
        format: SCALE,
      },
    ],
  };
}

/** All that the caster casts for one piece. */
function castParts(alloys: number): JobRow {
  const first = alloyKey(0);
  const last = alloyKey(alloys - 1);
  return {
    key: "castParts",
    cells: (at) => {
      const summed = (column: "C" | "D" | "F") => `=SUM(${at(first, column)}:${at(last, column)})`;
      return [
        { content: "What is cast", look: "totalLabel" },
        { content: `=${linkCount(at)}`, look: "total", format: COUNT },
        { content: summed("C"), look: "total", format: COUNT },
        { content: summed("D"), look: "total", format: COUNT },
        { content: "", look: "total" },
        { content: summed("F"), look: "total", format: SCALE },
        {
          content: `=CURB.CASTWEIGHT(${at("castParts", "F")},${nameOf("loss")},${nameOf("lossBasis")})`,
          look: "total",
          format: SCALE,
        },
      ];
    },
  };
}

/** Multiplied before the unit is changed, so that a half link stays a half. */
function linkCount(at: Ref): string {
  const inLinks = (length: string) =>
    `CURB.LENGTHIN(${at(length)}*${at("linksPer")},${at(length, "C")},${at("linksPer", "C")})`;
  return `CURB.LINKCOUNT(${inLinks("length")},1,${inLinks("claspLength")})`;
}

/** Links of a colour among all links, closed or open. */
function countOf(line: OrderLine, { colour }: AlloyPart, kind: "closed" | "open", at: Ref): string {
  const said = [patternOf(line), letterOf(colour), line.linkCasting, kind].map((word) => `"${word}"`);
  return `CURB.PATTERNLINKS(${[at("castParts"), ...said].join(",")})`;
}

/** A cast clasp is among the cast parts, and no link. */
function castClasp(line: OrderLine, at: Ref): string {
  return line.clasp.cast ? `-${at("claspWeight")}` : "";
}

/** The length that whole links make, and how far it is from the one asked for. */
function reached({ lengthUnit }: OrderLine): JobRow {
  return {
    key: "reached",
    cells: (at) => {
      const unit = at("length", "C");
      const chain = `CURB.LENGTHIN(${at("castParts")}/${at("linksPer")},${at("linksPer", "C")},${unit})`;
      return [
        { content: "Length reached", look: "label" },
        { content: `=${chain}+${at("claspLength")}`, look: "number", format: "#,##0.0##" },
        { content: lengthUnit, look: "aside" },
        { content: "off by", look: "words" },
        { content: `=ROUND(${at("reached")}-${at("length")},6)`, look: "number", format: "0.0##" },
      ];
    },
  };
}

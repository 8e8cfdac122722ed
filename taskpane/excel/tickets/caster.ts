import { type AlloyPart, type CostSheet, colourName, type OrderLine, showMark } from "../../../src/index";
import { COUNT, SCALE } from "../job/figures";
import type { Column, JobRow, Ref } from "../job/row";
import { alloyKey } from "../job/weights";
import { asText } from "../paper";
import { figure, free, lineName, markOf, type Ticket, type Work, words } from "./ticket";

/** What to cast: for each line and alloy the links, closed and open, the clasp parts, and the weight of all of it as cast. */
export function casterTicket({ sheets, at }: Work): Ticket {
  const castings = sheets.flatMap((cost, line) =>
    cost.alloys.map((alloy, index) => ({ cost, alloy, line, index, key: `cast${line}-${index}` })),
  );
  const melts = new Map<string, string[]>();
  for (const { cost, alloy, key } of castings) {
    const name = meltOf(cost, alloy);
    melts.set(name, [...(melts.get(name) ?? []), key]);
  }
  const hasSeveral = melts.size > 1 && castings.length > melts.size;
  return {
    title: "Caster's ticket",
    titles: ["Mark", "Alloy", "Closed", "Open", "Clasp parts", "In all", "Cast, g"],
    rows: [
      ...castings.map(({ cost, alloy, line, index, key }) => castingRow(cost, alloy, line, index, at(line), key)),
      ...(hasSeveral ? [...melts].map(([name, keys]) => sumRow(name, keys)) : []),
      sumRow(
        "In all",
        castings.map(({ key }) => key),
      ),
    ],
    asks: [
      "Sprues and buttons are not in this weight: weigh them and return them with the work.",
      ...sheets.flatMap(({ line }, index) =>
        line.clasp.cast ? [`Line ${index + 1}: its clasp parts are those of a ${claspParts(line)}.`] : [],
      ),
      ...(melts.size > 1 ? ["Cast each alloy by itself and keep its pieces apart."] : []),
    ],
    place: "caster's ticket",
    cautions: ["casting", "burnout", "nickel", "hollow"],
    alsoBack: "Sprues",
  };
}

/** An alloy on a ticket: its colour; for the workshop's own alloy its composition too. */
export function alloyWords({ line }: CostSheet, { colour }: AlloyPart): string {
  const name = colourName(colour, line);
  return colour === "own" && line.composition ? `${name}: ${line.composition.text}` : name;
}

/** Source: common practice. */
function claspParts({ clasp }: OrderLine): string {
  return clasp.kind === "cast box clasp" ? "box clasp: the box and its tongue" : "hidden clasp: its two halves";
}

function meltOf(cost: CostSheet, alloy: AlloyPart): string {
  return `${showMark(cost.line.mark)} ${alloyWords(cost, alloy)}`;
}

function castingRow(cost: CostSheet, alloy: AlloyPart, line: number, index: number, at: Ref, key: string): JobRow {
  const quantity = at("quantity");
  const of = (column: Column) => at(alloyKey(index), column);
  return {
    key,
    cells: (here) => [
      lineName(cost, line),
      markOf(cost),
      words(alloyWords(cost, alloy)),
      figure(`${of("C")}*${quantity}`, COUNT),
      figure(`${of("D")}*${quantity}`, COUNT),
      alloy.claspParts.isZero() ? { content: "" } : figure(`${alloy.claspParts.value()}*${quantity}`, COUNT),
      figure(`SUM(${here(key, "D")}:${here(key, "F")})`, COUNT),
      figure(`${of("G")}*${quantity}`, SCALE),
    ],
  };
}

function sumRow(name: string, keys: readonly string[]): JobRow {
  return {
    cells: (here) => [
      { content: asText(name), look: "totalLabel" },
      ...free(5, "total"),
      figure(keys.map((key) => here(key, "G")).join("+"), COUNT, "total"),
      figure(keys.map((key) => here(key, "H")).join("+"), SCALE, "total"),
    ],
  };
}

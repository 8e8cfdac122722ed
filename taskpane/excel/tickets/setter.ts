import type { CostSheet, StoneSet } from "../../../src/index";
import { caratFormat, caratNotes, stoneKey, stoneName } from "../job/asked";
import { COUNT } from "../job/figures";
import type { JobRow, Ref } from "../job/row";
import { figure, lineName, markOf, type Ticket, type Work, words } from "./ticket";

/** The stones to set, and how many to buy with those that setting breaks; undefined where there are none. */
export function setterTicket({ sheets, at }: Work): Ticket | undefined {
  const rows = sheets.flatMap((cost, line) =>
    cost.line.stones.map((set, index) => stonesRow(cost, set, line, index, at(line))),
  );
  if (rows.length === 0) return undefined;
  return {
    title: "Setter's ticket",
    titles: ["Mark", "Stones", "A piece", "Pieces", "To set", "To buy", "Carats"],
    rows,
    of: sheets.filter(({ line }) => line.stones.length > 0),
    asks: [
      "To buy holds those that break in setting. Return what is left over, and broken ones.",
      ...caratNotes(sheets.map(({ line }) => line)),
    ],
    place: "setter's ticket",
    cautions: ["stones", "hollow"],
    alsoBack: "Stones",
  };
}

function stonesRow(cost: CostSheet, set: StoneSet, line: number, index: number, at: Ref): JobRow {
  const key = `set${line}-${index}`;
  const stones = stoneKey(index);
  const about = set.caratFrom === "scale" ? "" : "about ";
  const carat = set.carat ? `, ${about}${set.carat.rounded(3)} ct` : "";
  return {
    key,
    cells: (here) => [
      lineName(cost, line),
      markOf(cost),
      words(`${stoneName(set)}${carat}`),
      figure(at(stones), COUNT),
      figure(at("quantity"), COUNT),
      figure(`${here(key, "D")}*${here(key, "E")}`, COUNT),
      figure(at(stones, "G"), COUNT),
      set.carat ? figure(`${here(key, "G")}*${at(stones, "C")}`, caratFormat(set, "0.00")) : { content: "" },
    ],
  };
}

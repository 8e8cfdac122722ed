import { type CostSheet, isPlatingUnnamed, platesWhiteLinks, platingOf } from "../../../src/index";
import { COUNT, SCALE } from "../job/figures";
import type { JobRow, Ref } from "../job/row";
import { alloyKey } from "../job/weights";
import { figure, free, lineName, markOf, type Ticket, type Work, words } from "./ticket";

/** What to plate: whole pieces, or only the white links of a piece with other colours; undefined where nothing is plated. */
export function platerTicket({ sheets, at }: Work): Ticket | undefined {
  const rows = sheets.flatMap((cost, line) => (cost.line.plated ? [platedRow(cost, line, at(line))] : []));
  if (rows.length === 0) return undefined;
  return {
    title: "Plating ticket",
    titles: ["Mark", "What to plate", "Plate with", "Links", "Pieces", "Plated, g", ""],
    lastOfWords: 3,
    rows,
    of: sheets.filter(({ line }) => line.plated),
    asks: [
      "Plate after polishing and setting.",
      ...(sheets.some(({ line }) => isPlatingUnnamed(line)) ? ["Write in the metal before this ticket goes out."] : []),
      ...(sheets.some(({ line }) => platesWhiteLinks(line))
        ? ["Where only the white links are plated, mask the others."]
        : []),
    ],
    place: "plater's ticket",
    cautions: ["plating", "nickel", "hollow"],
  };
}

function platedRow(cost: CostSheet, line: number, at: Ref): JobRow {
  const white = cost.alloys.findIndex(({ colour }) => colour === "white");
  const inPart = platesWhiteLinks(cost.line);
  const metal = platingOf(cost.line)?.metal;
  const links = inPart ? at(alloyKey(white)) : at("castParts");
  const weight = inPart ? at(alloyKey(white), "F") : at("finished");
  return {
    cells: () => [
      lineName(cost, line),
      markOf(cost),
      words(inPart ? "white links only" : "the whole piece"),
      ...(metal === undefined ? free(1, "blank") : [words(metal)]),
      figure(`${links}*${at("quantity")}`, COUNT),
      figure(at("quantity"), COUNT),
      figure(`${weight}*${at("quantity")}`, SCALE),
      ...free(1),
    ],
  };
}

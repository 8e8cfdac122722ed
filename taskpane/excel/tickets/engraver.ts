import { COUNT } from "../job/figures";
import type { JobRow } from "../job/row";
import { asText, linesOf } from "../paper";
import { figure, free, lineName, markOf, type Ticket, type Work } from "./ticket";

/** Letters that surely fit beside the count of pieces. */
const WIDE = 48;

/** What to engrave; undefined where nothing is. */
export function engraverTicket({ sheets, at }: Work): Ticket | undefined {
  const rows = sheets.flatMap((cost, line): JobRow[] =>
    cost.line.engraving === ""
      ? []
      : linesOf(cost.line.engraving, WIDE).map((part, index) => ({
          cells: () => [
            ...(index === 0 ? [lineName(cost, line), markOf(cost)] : free(2)),
            { content: asText(part), look: "start" },
            ...(index === 0 ? [...free(4), figure(at(line)("quantity"), COUNT)] : free(5)),
          ],
        })),
  );
  if (rows.length === 0) return undefined;
  return {
    title: "Engraver's ticket",
    titles: ["Mark", "Words", "", "", "", "", "Pieces"],
    rows,
    of: sheets.filter(({ line }) => line.engraving !== ""),
    asks: ["Spelled as written here. Ask before engraving where anything is unclear."],
    place: "engraver's ticket",
    cautions: ["hollow"],
  };
}

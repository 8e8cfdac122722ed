import { COUNT } from "../job/figures";
import type { JobRow } from "../job/row";
import { asText } from "../paper";
import { figure, free, lineName, markOf, type Ticket, type Work } from "./ticket";

/** What to engrave; undefined where nothing is. */
export function engraverTicket({ sheets, at }: Work): Ticket | undefined {
  const rows = sheets.flatMap((sheet, line): JobRow[] =>
    sheet.line.engraving === ""
      ? []
      : [
          {
            cells: () => [
              lineName(sheet, line),
              markOf(sheet),
              { content: asText(sheet.line.engraving), look: "start" },
              ...free(4),
              figure(at(line)("quantity"), COUNT),
            ],
          },
        ],
  );
  if (rows.length === 0) return undefined;
  return {
    title: "Engraver's ticket",
    titles: ["Mark", "Words", "", "", "", "", "Pieces"],
    rows,
    asks: ["Spelled as written here. Ask before engraving where anything is unclear."],
    cautions: ["hollow"],
  };
}

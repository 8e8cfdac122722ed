import { type CostSheet, colourName, type OrderLine } from "../../../src/index";
import { letterOf, patternOf } from "../job/asked";
import { COUNT, SCALE, SHARE } from "../job/figures";
import type { JobRow } from "../job/row";
import { alloyKey } from "../job/weights";
import { alloyWords } from "./caster";
import { claspWords, figure, free, head, lineName, markOf, type Ticket, type Work, words } from "./ticket";

/** What to join and polish: links and clasp parts, what they weigh before and after, and the loss that is allowed. */
export function polisherTicket({ sheets, at }: Work): Ticket {
  const rows = sheets.flatMap((cost, line) =>
    cost.alloys.map((alloy, index): JobRow & { readonly key: string } => {
      const key = `polish${line}-${index}`;
      const of = at(line);
      const quantity = of("quantity");
      const links = of(alloyKey(index));
      const pieces = alloy.claspParts.isZero() ? links : `(${links}+${alloy.claspParts.value()})`;
      return {
        key,
        cells: (here) => [
          lineName(cost, line),
          markOf(cost),
          words(alloyWords(cost, alloy)),
          figure(`${pieces}*${quantity}`, COUNT),
          figure(`${of(alloyKey(index), "G")}*${quantity}`, SCALE),
          figure(`${of(alloyKey(index), "F")}*${quantity}`, SCALE),
          figure(`${here(key, "E")}-${here(key, "F")}`, SCALE),
          figure(`${here(key, "G")}/${here(key, "E")}`, SHARE),
        ],
      };
    }),
  );
  const keys = rows.map(({ key }) => key);
  const total: JobRow = {
    key: "polish",
    cells: (here) => {
      const sum = (column: "D" | "E" | "F" | "G") => keys.map((key) => here(key, column)).join("+");
      return [
        { content: "In all", look: "totalLabel" },
        ...free(2, "total"),
        figure(sum("D"), COUNT, "total"),
        ...(["E", "F", "G"] as const).map((column) => figure(sum(column), SCALE, "total")),
        figure(`${here("polish", "G")}/${here("polish", "E")}`, SHARE, "total"),
      ];
    },
  };
  return {
    title: "Polisher's ticket",
    titles: ["Mark", "Alloy", "Parts", "In, g", "Finished, g", "Loss, g", "Loss"],
    rows: [...rows, total, ...joining(sheets, at)],
    asks: [
      ...sheets.flatMap(({ line }, index) => patternWords(line, index)),
      "The loss is what is allowed, of the weight that comes in: collect and return the filings.",
    ],
    place: "polisher's ticket",
    cautions: ["laser", "torch", "mark", "lightMark", "hollow"],
    alsoBack: "Filings",
  };
}

/** What each line is joined to: its length as asked for and as whole links reach it, and its clasp. */
function joining(sheets: readonly CostSheet[], at: Work["at"]): JobRow[] {
  return [
    { cells: () => [] },
    head("To join", ["Mark", "Clasp", "Pieces", "Length", "Reached", "", ""]),
    ...sheets.map(
      (cost, line): JobRow => ({
        cells: () => [
          lineName(cost, line),
          markOf(cost),
          words(claspWords(cost.line)),
          figure(at(line)("quantity"), COUNT),
          figure(at(line)("length"), LENGTH),
          figure(at(line)("reached"), LENGTH),
          { content: cost.line.lengthUnit, look: "aside" },
        ],
      }),
    ),
  ];
}
const LENGTH = "#,##0.0##";

/** How the colours of a line follow each other; nothing where all links have one colour. */
function patternWords(line: OrderLine, index: number): readonly string[] {
  const letters = patternOf(line);
  if (letters === "") return [];
  const legend = line.linkGroups.map(({ colour }) => `${letterOf(colour)} ${colourName(colour, line)}`).join(", ");
  return [`Line ${index + 1}: colours follow as ${letters} (${legend}), over and over from the first link.`];
}

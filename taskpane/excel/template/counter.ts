import type { Paper, PaperCell } from "../paper";
import { DESCRIPTION, SHORT_NOTES, SUMS } from "./templatewords";

const HEAD: readonly (readonly PaperCell[])[] = [
  [{ content: "{{workshop}}", look: "block" }],
  [{ content: "{{workshopContact}}", look: "small" }],
  [],
  pair("{{customer}}", "No. {{number}}"),
  [{ content: "{{date}}", look: "start" }],
  [
    { content: "", look: "head" },
    { content: "{{currency}}", look: "headRight" },
  ],
  [
    { content: `{{line.quantity}} × {{line.design}}: ${DESCRIPTION}`, look: "body" },
    { content: "{{line.amount}}", look: "number" },
  ],
  pair("{{extra.text}}", "{{extra.amount}}"),
  ...SUMS.slice(1).map(([label, field, total]): PaperCell[] => [
    { content: label, look: total ? "totalLabel" : "label" },
    { content: field, look: total ?? "number" },
  ]),
  [],
];

/** Three lines of small type, in points: the longest note in the first column. */
const NOTE_HEIGHT = 36;
const SHORT_HEIGHT = 13;
/** Letters of small type in a line of the first column. */
const ACROSS = 48;

/** A small ticket for the counter: what was asked for, the price, the deposit, and how long the price holds. */
export const COUNTER_TICKET: Paper = {
  widths: [220, 84],
  rows: [...HEAD, ...SHORT_NOTES.map((content): PaperCell[] => [{ content, look: "note9" }])],
  heights: new Map(
    SHORT_NOTES.map((note, at) => [HEAD.length + at, note.length > ACROSS ? NOTE_HEIGHT : SHORT_HEIGHT] as const),
  ),
};

function pair(label: string, field: string): PaperCell[] {
  return [
    { content: label, look: "label" },
    { content: field, look: "number" },
  ];
}

import type { Look, Paper, PaperCell } from "../paper";
import { DESCRIPTION, noteRows, rowHeights, sumRows } from "./templatewords";

const COLUMNS = 5;

const ROWS: readonly (readonly PaperCell[])[] = [
  [{ content: "{{workshop}}", look: "title" }],
  across("{{workshopContact}}", "lead"),
  [],
  across("Quote {{number}}", "heading"),
  [
    { content: "For", look: "lead" },
    { content: "{{customer}}", look: "body" },
  ],
  [
    { content: "Date", look: "lead" },
    { content: "{{date}}", look: "start" },
  ],
  [
    { content: "Valid until", look: "lead" },
    { content: "{{validUntil}}", look: "start" },
  ],
  [],
  [
    { content: "Design", look: "head" },
    { content: "Description", look: "head" },
    { content: "Pieces", look: "headRight" },
    { content: "Price, {{currency}}", look: "headRight" },
    { content: "Amount, {{currency}}", look: "headRight" },
  ],
  [
    { content: "{{line.design}}", look: "body" },
    { content: DESCRIPTION, look: "detail" },
    { content: "{{line.quantity}}", look: "number" },
    { content: "{{line.price}}", look: "number" },
    { content: "{{line.amount}}", look: "number" },
  ],
  [
    { content: "{{extra.text}}", look: "label" },
    { content: "" },
    { content: "" },
    { content: "" },
    { content: "{{extra.amount}}", look: "number" },
  ],
  [],
  ...sumRows(COLUMNS),
  [],
  ...noteRows(),
];

/** A quote for letter-size paper: the workshop's name on top, one row for each line with its description beside the design. */
export const LETTER_QUOTE: Paper = {
  widths: [104, 352, 46, 80, 84],
  size: "Letter",
  titleRows: "$9:$9",
  heights: new Map(rowHeights(ROWS)),
  rows: ROWS,
};

function across(content: string, look: Look): PaperCell[] {
  return Array.from({ length: COLUMNS }, (_, column) => ({ content: column === 0 ? content : "", look }));
}

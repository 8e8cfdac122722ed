import type { Paper, PaperCell } from "../paper";
import { DESCRIPTION_BESIDE_WEIGHT, noteRows, sumRows } from "./templatewords";

/** A quote for A4 paper: the customer's name where a window envelope shows it, number and dates at the right, two rows a line. */
export const A4_QUOTE: Paper = {
  widths: [350, 54, 48, 92, 94],
  size: "A4",
  titleRows: "$8:$8",
  heights: new Map([
    [2, 24],
    [6, 32],
  ]),
  rows: [
    [{ content: "{{workshop}}", look: "title" }],
    [{ content: "{{workshopContact}}", look: "lead" }],
    [],
    beside("{{customer}}", "Quote", "{{number}}"),
    beside("", "Date", "{{date}}"),
    beside("", "Valid until", "{{validUntil}}"),
    [{ content: "Quote {{number}}", look: "block" }],
    [
      { content: "Piece", look: "head" },
      { content: "Weight, g", look: "headRight" },
      { content: "Pieces", look: "headRight" },
      { content: "Price, {{currency}}", look: "headRight" },
      { content: "Amount, {{currency}}", look: "headRight" },
    ],
    [
      { content: "{{line.design}}", look: "strong" },
      { content: "{{line.weight}}", look: "number" },
      { content: "{{line.quantity}}", look: "number" },
      { content: "{{line.price}}", look: "number" },
      { content: "{{line.amount}}", look: "number" },
    ],
    [{ content: DESCRIPTION_BESIDE_WEIGHT, look: "detail" }],
    [
      { content: "{{extra.text}}", look: "label" },
      { content: "" },
      { content: "" },
      { content: "" },
      { content: "{{extra.amount}}", look: "number" },
    ],
    [],
    ...sumRows(5),
    [],
    ...noteRows(),
  ],
};

/** A line of the address, with a label and a field at the right. */
function beside(address: string, label: string, field: string): PaperCell[] {
  return [
    { content: address, look: "body" },
    { content: "" },
    { content: "" },
    { content: label, look: "lead" },
    { content: field, look: "number" },
  ];
}

import type { Paper } from "../paper";
import { DESCRIPTION, noteRows, sumRows } from "./words";

/**
 * A quote for A4 paper: the customer's name where a window envelope shows it, number and dates at the right, two rows a line.
 */
export const A4_QUOTE: Paper = {
  widths: [296, 54, 50, 96, 98],
  size: "A4",
  titleRows: "$12:$12",
  heights: new Map([[2, 30]]),
  rows: [
    [
      { content: "" },
      { content: "" },
      { content: "" },
      { content: "" },
      { content: "{{workshop}}", look: "titleRight" },
    ],
    [
      { content: "" },
      { content: "" },
      { content: "" },
      { content: "" },
      { content: "{{workshopContact}}", look: "leadRight" },
    ],
    [],
    [
      { content: "{{customer}}", look: "body" },
      { content: "" },
      { content: "" },
      { content: "Quote", look: "lead" },
      { content: "{{number}}", look: "number" },
    ],
    [
      { content: "" },
      { content: "" },
      { content: "" },
      { content: "Date", look: "lead" },
      { content: "{{date}}", look: "number" },
    ],
    [
      { content: "" },
      { content: "" },
      { content: "" },
      { content: "Valid until", look: "lead" },
      { content: "{{validUntil}}", look: "number" },
    ],
    [],
    [],
    [{ content: "Quote {{number}}", look: "block" }],
    [{ content: "We are glad to make for you:", look: "lead" }],
    [],
    [
      { content: "Piece", look: "head" },
      { content: "About, g", look: "headRight" },
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
    [{ content: DESCRIPTION, look: "detail" }],
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

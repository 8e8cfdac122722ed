import { contentsOf, type Look, type Paper, type PaperCell, type PaperSize, putPaper } from "./paper";

/** The sheet that quotes are copied from; the user's to restyle. */
export const TEMPLATE_SHEET = "Quote template";

const COLUMNS = 5;

/** The built-in quote: double braces are filled, [[…]] goes when a field in it is empty. */
const TEMPLATE: Paper = {
  widths: [120, 250, 60, 95, 105],
  titleRows: "$9:$9",
  rows: [
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
      {
        content:
          "{{line.mark}} gold, {{line.colour}}[[, {{line.plated}}]]; curb chain, {{line.length}} {{line.unit}}, " +
          "{{line.links}} links, about {{line.weight}} g[[; {{line.stones}} stones set]]",
        look: "body",
      },
      { content: "{{line.quantity}}", look: "number" },
      { content: "{{line.price}}", look: "number" },
      { content: "{{line.amount}}", look: "number" },
    ],
    [],
    summed("Subtotal", "{{subtotal}}"),
    summed("Discount", "{{discount}}"),
    summed("{{taxName}}", "{{tax}}"),
    summed("Total, {{currency}}", "{{total}}", "totalLabel", "total"),
    summed("Deposit", "{{deposit}}"),
    summed("Balance", "{{balance}}"),
    [],
    [
      {
        content: "The price includes gold, casting, joining, polishing, the clasp and what is named above.",
        look: "small",
      },
    ],
    [{ content: "Weights are approximate. The mark states the fineness of the gold.", look: "small" }],
    [{ content: "This price holds until {{validUntil}}; after that it follows the price of gold.", look: "small" }],
    [{ content: "[[Work begins when the deposit of {{currency}} {{deposit}} has arrived.]]", look: "small" }],
  ],
};

/** Puts the built-in template on an empty sheet. */
export function putTemplate(sheet: Excel.Worksheet, paperSize: PaperSize): void {
  putPaper(sheet, { ...TEMPLATE, size: paperSize });
}

/** The built-in template's cells, as reading it back would give them. */
export function templateContents(): (string | number)[][] {
  return contentsOf(TEMPLATE);
}

function across(content: string, look: Look): PaperCell[] {
  return Array.from({ length: COLUMNS }, (_, column) => ({ content: column === 0 ? content : "", look }));
}

function summed(label: string, field: string, labelLook: Look = "lead", look: Look = "number"): PaperCell[] {
  return [
    { content: "" },
    { content: "" },
    { content: "" },
    { content: label, look: labelLook },
    { content: field, look },
  ];
}

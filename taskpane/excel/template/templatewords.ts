import type { PaperCell } from "../paper";

/** What the built-in templates say; a phrase in [[…]] goes when a field in it is empty. */

/** A line in whole sentences. */
export const DESCRIPTION = "{{line.description}}";
/** The same where its weight has a column of its own. */
export const DESCRIPTION_BESIDE_WEIGHT = "{{line.descriptionBesideWeight}}";

/** How far the price may move with the weight. */
const SETTLING: readonly string[] = [
  "[[The price is fixed. The finished weight may differ by up to {{fixedTolerance}} from the weight stated.]]",
  "[[The final weight sets the price: {{currency}} {{settledRate}} more or less per gram, within {{settledTolerance}} of the weight stated.]]",
  "[[The final weight of each line sets its price, within {{settledLinesTolerance}} of the weight stated.]]",
  "[[If it differs by more than {{settledTolerance}}, we agree the price with you before you receive the piece.]]",
  // Stones lie on the scale and are not gold.
  "[[The weight stated is without {{settledStones}} (0.2 g a carat).]]",
  "[[The price per gram is before the discount of {{settledDiscount}}.]]",
];

/** How long the price is valid, and the gold price it is based on where the customer is to read it. */
const VALIDITY: readonly string[] = [
  "This price is valid until {{validUntil}}.",
  "[[It is based on a gold price of {{currency}} {{spot}} per troy ounce (31.1 g) read on {{spotReadOn}}.]]",
  "[[It is based on a gold price of {{currency}} {{spotUndated}} per troy ounce (31.1 g).]]",
];

/** What becomes of the customer's own gold. */
const OWN_GOLD: readonly string[] = [
  "[[Your gold: {{ownGoldWeight}} g marked {{ownGoldMark}}, taken in payment at {{currency}} {{ownGoldPaid}} after testing.]]",
  "[[Your gold: {{ownGoldUsed}} g marked {{ownGoldMark}}, used in this piece after testing.]]",
  "[[{{ownGoldReturned}} g of fine gold will be returned to you.]]",
];

const DEPOSIT: readonly string[] = [
  "[[Deposit {{currency}} {{deposit}}, due with your order.]][[ Balance {{currency}} {{balance}}, due when the piece is ready.]]",
  "{{startsWithDeposit}}",
];

/** What every quote says under its sums. */
export const NOTES: readonly string[] = [
  "The price includes gold, casting, joining, polishing and what is named above.[[ {{platingWears}}]]",
  ...SETTLING,
  ...VALIDITY,
  ...OWN_GOLD,
  ...DEPOSIT,
];

/** What the small ticket has room for. */
export const SHORT_NOTES: readonly string[] = ["{{platingWears}}", ...VALIDITY, ...SETTLING, ...OWN_GOLD, ...DEPOSIT];

/** The sums under the lines: label and field, the total set apart. What is taken off says so, without a minus sign. */
export const SUMS: readonly (readonly [label: string, field: string, total?: "total"])[] = [
  ["Subtotal", "{{subtotal}}"],
  ["Less discount {{discountShare}}", "{{discount}}"],
  ["Shipping", "{{shipping}}"],
  ["{{taxName}} {{taxShare}}", "{{tax}}"],
  ["Total, {{currency}}", "{{total}}", "total"],
  ["Includes {{taxIncludedName}} {{taxIncludedShare}}", "{{taxIncluded}}"],
  ["Less your gold", "{{ownGoldCredit}}"],
  ["To pay", "{{toPay}}"],
  ["Deposit", "{{deposit}}"],
  ["Balance", "{{balance}}"],
];

/** The sums as rows, the amount in the last column; a label begins two columns before it, since it is longer than one. */
export function sumRows(columns: number): PaperCell[][] {
  return SUMS.map(([label, field, total]) => [
    ...Array.from({ length: columns - 3 }, () => ({ content: "" })),
    { content: label, look: total ? "totalLabel" : "lead" },
    { content: "", look: total ? "totalLabel" : "lead" },
    { content: field, look: total ?? "number" },
  ]);
}

export function noteRows(): PaperCell[][] {
  return NOTES.map((content) => [{ content, look: "small" }]);
}

/** Points of a row of small type and of a blank one, so that a quote of eight lines stays on one page. */
const NOTE_HEIGHT = 12;
const BLANK_HEIGHT = 10;

/** The heights of the blank rows of a paper and of the notes at its end. */
export function rowHeights(rows: readonly (readonly PaperCell[])[]): [row: number, height: number][] {
  return rows.flatMap((cells, row): [number, number][] => {
    if (row >= rows.length - NOTES.length) return [[row, NOTE_HEIGHT]];
    return cells.length === 0 ? [[row, BLANK_HEIGHT]] : [];
  });
}

import type { PaperCell } from "../paper";

/** What the built-in templates say; a phrase in [[…]] goes when a field in it is empty. */

const MADE_OF =
  ", {{line.mark}} gold, {{line.colour}}, {{line.solid}}[[, {{line.plated}}]]; " +
  "{{line.length}} {{line.unit}}, {{line.links}} links[[ reaching about {{line.reached}} {{line.unit}}]]";
const FITTED_WITH =
  "[[; {{line.clasp}}]]" +
  "[[; stones set: {{line.stoneSets}}]][[, {{line.carats}} ct in all]][[, about {{line.caratsAbout}} ct in all]][[; with {{line.findings}}]]" +
  "[[; engraved: {{line.engraving}}]][[. A gram more or less: {{currency}} {{line.perGram}}]]";

const KIND = "{{line.kind|chain=Chain|bracelet=Bracelet}}";

/** A line in words, for use inside a sentence. */
export const DESCRIPTION_WITHIN = `{{line.kind}}${MADE_OF}[[, about {{line.weightAbout}} g]][[, {{line.weightStated}} g]]${FITTED_WITH}`;
/** A line in words. */
export const DESCRIPTION = `${KIND}${MADE_OF}[[, about {{line.weightAbout}} g]][[, {{line.weightStated}} g]]${FITTED_WITH}`;
/** The same where its weight has a column of its own. */
export const DESCRIPTION_BESIDE_WEIGHT = KIND + MADE_OF + FITTED_WITH;

/** The spot that the price is based on, where the customer is to read it. */
export const SPOT =
  "[[It rests on a gold price of {{currency}} {{spot}} an ounce (31.1 g) of fine gold, as of {{date}}.]]";

/** Says that the rate of a gram more or less is before the discount. */
export const SETTLED_DISCOUNT = "[[A gram more or less is stated before the discount of {{settledDiscount}}.]]";

/** Stones lie on the scale and are not gold. */
export const SETTLED_STONES = "[[The weight stated is without {{settledStones}} (0.2 g a carat).]]";

/** What becomes of the customer's own gold. */
export const OWN_GOLD: readonly string[] = [
  "[[Your own gold: {{ownGoldWeight}} g marked {{ownGoldMark}}, {{ownGoldUse|credited=credited|used=used in this work}}.]]",
  "[[Of it, {{ownGoldReturned}} g of fine gold come back to you.]]",
];

/** A phrase behind another of its row: where it goes, the space before it goes with it. */
function besideIt(phrase: string): string {
  return phrase.replace("[[", "[[ ");
}

/** What the price is for and how long, each line short enough for the width of a quote. */
export const NOTES: readonly string[] = [
  "The price includes gold, casting, joining, polishing and what is named above.",
  "Weights are approximate. The mark states the fineness of the gold.",
  "[[The price is fixed; the finished weight may differ by {{fixedTolerance}} from the one stated.]]",
  `[[The price follows the finished weight, gram by gram, within {{settledTolerance}} of the weight stated.]]${besideIt(SETTLED_DISCOUNT)}`,
  `[[A weight further off than {{settledTolerance}} is agreed with you before the piece is handed over.]]${besideIt(SETTLED_STONES)}`,
  "This price holds until {{validUntil}}; after that it follows the price of gold.",
  SPOT,
  ...OWN_GOLD,
  "[[Work begins when the deposit of {{currency}} {{deposit}} has arrived.]]",
];

/** The sums under the lines: label and field, the total set apart. */
export const SUMS: readonly (readonly [label: string, field: string, total?: "total"])[] = [
  ["Subtotal", "{{subtotal}}"],
  ["Discount, taken off", "{{discount}}"],
  ["Shipping", "{{shipping}}"],
  ["{{taxName}}", "{{tax}}"],
  ["Total, {{currency}}", "{{total}}", "total"],
  ["of which {{taxIncludedName}}", "{{taxIncluded}}"],
  ["Your gold, taken off", "{{ownGoldCredit}}"],
  ["To pay", "{{toPay}}"],
  ["Deposit", "{{deposit}}"],
  ["Balance", "{{balance}}"],
];

/** The sums as rows, label and amount in the last two columns. */
export function sumRows(columns: number): PaperCell[][] {
  return SUMS.map(([label, field, total]) => [
    ...Array.from({ length: columns - 2 }, () => ({ content: "" })),
    { content: label, look: total ? "totalLabel" : "lead" },
    { content: field, look: total ?? "number" },
  ]);
}

export function noteRows(): PaperCell[][] {
  return NOTES.map((content) => [{ content, look: "small" }]);
}

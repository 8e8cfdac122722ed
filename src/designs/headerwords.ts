import { LINE_KEYS, LINE_LABELS, type LineKey, ORDER_KEYS, ORDER_LABELS, type OrderKey } from "../reading/orderwords";

/** A row of a sheet says what an order says once, and one line of it. */
export type RowKey = OrderKey | LineKey;
export const ROW_KEYS: readonly RowKey[] = [...ORDER_KEYS, ...LINE_KEYS];
export const ROW_LABELS: Readonly<Record<RowKey, string>> = { ...ORDER_LABELS, ...LINE_LABELS };

/** What shops call the same things. Common practice. */
const OTHER_WORDS: Readonly<Record<string, RowKey>> = {
  stones: "stoneCount",
  name: "design",
  model: "design",
  karat: "mark",
  fineness: "mark",
  color: "colour",
  "plated with": "platingMetal",
  qty: "quantity",
  pieces: "quantity",
  "link weight": "linkWeight",
  "weight per link": "linkWeight",
  "links per in": "linksPer",
  "links per inch": "linksPer",
  "links per cm": "linksPer",
};

/** What a measured field counts. */
export type Counted = "length" | "size" | "weight" | "money" | "linksPer";

/** What each measured field counts; the others take no unit. */
export const COUNTED: Partial<Record<RowKey, Counted>> = {
  length: "length",
  ease: "length",
  claspLength: "length",
  linksPer: "linksPer",
  linkWeight: "weight",
  linkWeightYellow: "weight",
  linkWeightRose: "weight",
  linkWeightWhite: "weight",
  linkWeightGreen: "weight",
  claspWeight: "weight",
  findingsWeight: "weight",
  ownGoldWeight: "weight",
  stoneDiameter: "size",
  stoneLength: "size",
  stoneWidth: "size",
  stoneDepth: "size",
  claspStoneDiameter: "size",
  claspStoneLength: "size",
  claspStoneWidth: "size",
  claspStoneDepth: "size",
  spot: "money",
  shipping: "money",
  claspCost: "money",
  stonePrice: "money",
  settingFee: "money",
  claspStonePrice: "money",
  claspSettingFee: "money",
  findingsCost: "money",
  engravingCost: "money",
  setup: "money",
};

/** Other ways to write a unit. */
const OTHER_UNITS: Readonly<Record<string, string>> = {
  inch: "in",
  inches: "in",
  '"': "in",
  gram: "g",
  grams: "g",
  gm: "g",
  pennyweight: "dwt",
  "troy oz": "ozt",
  "oz t": "ozt",
  carats: "ct",
  millimetres: "mm",
  millimeters: "mm",
  centimetres: "cm",
  centimeters: "cm",
};

/** Every word that names a field, plain and without its unit: for finding the nearest to a misspelt one. */
export const FIELD_WORDS: readonly { readonly words: string; readonly key: RowKey }[] = [
  ...ROW_KEYS.map((key) => ({ words: plainHeader(ROW_LABELS[key]), key })),
  ...Object.entries(OTHER_WORDS).map(([words, key]) => ({ words, key })),
];

/** The field that a header names, whatever its case, its unit and the signs in it. */
export function keyOfHeader(header: unknown): RowKey | undefined {
  if (typeof header !== "string") return undefined;
  const words = plainHeader(header);
  if (words === "") return undefined;
  return KEY_OF.get(words) ?? KEY_OF.get(words.replaceAll(" ", "")) ?? OTHER_WORDS[words];
}

/** The fields by their plain labels and by their keys; the label goes first. */
const KEY_OF: ReadonlyMap<string, RowKey> = new Map([
  ...ROW_KEYS.map((key) => [key.toLowerCase(), key] as const),
  ...ROW_KEYS.map((key) => [plainHeader(ROW_LABELS[key]), key] as const),
]);

/** The unit in brackets or after a comma: "Length (in)", "Clasp weight, dwt". */
export function unitOfHeader(header: string): string | undefined {
  const said = /[([]\s*([^)\]]+?)\s*[)\]]\s*$/.exec(header)?.[1] ?? /,\s*([\p{L}" ]{1,12})\s*$/u.exec(header)?.[1];
  if (said === undefined) return undefined;
  const unit = said.trim().toLowerCase().replace(/\.$/, "");
  return OTHER_UNITS[unit] ?? unit;
}

/** A header in plain words, without its unit: "Length (in)" is "length". */
export function plainHeader(header: string): string {
  return header
    .replace(/[([].*?[)\]]/g, " ")
    .replace(/,\s*[\p{L}" ]{1,12}\s*$/u, " ")
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim()
    .toLowerCase();
}

import {
  LINE_FIELDS,
  LINE_KEYS,
  LINE_LABELS,
  type LineKey,
  ORDER_FIELDS,
  ORDER_KEYS,
  ORDER_LABELS,
  type OrderKey,
} from "../order/fields";

/** A row of a sheet says what an order says once, and one line of it. */
export type RowKey = OrderKey | LineKey;
export const ROW_FIELDS = { ...ORDER_FIELDS, ...LINE_FIELDS };
export const ROW_KEYS: readonly RowKey[] = [...ORDER_KEYS, ...LINE_KEYS];
export const ROW_LABELS: Readonly<Record<RowKey, string>> = { ...ORDER_LABELS, ...LINE_LABELS };

const OTHER_WORDS: ReadonlyMap<string, RowKey> = new Map(
  ROW_KEYS.flatMap((key) => ROW_FIELDS[key].alsoCalled.map((words) => [words, key] as const)),
);

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
  ...[...OTHER_WORDS].map(([words, key]) => ({ words, key })),
];

/** The field that a header names, whatever its case, its unit and the signs in it. */
export function keyOfHeader(header: unknown): RowKey | undefined {
  if (typeof header !== "string") return undefined;
  const words = plainHeader(header);
  if (words === "") return undefined;
  return KEY_OF.get(words) ?? KEY_OF.get(words.replaceAll(" ", "")) ?? OTHER_WORDS.get(words);
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

/** The unit that a header names for a field: as unitOfHeader reads it, for links in words too: "Links per inch". */
export function unitNamedFor(header: string, key: RowKey): string | undefined {
  const unit = unitOfHeader(header);
  if (unit !== undefined || ROW_FIELDS[key].counts !== "links per length") return unit;
  return /\bper\s+(in|inch)\b/i.test(header) ? "in" : /\bper\s+cm\b/i.test(header) ? "cm" : undefined;
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

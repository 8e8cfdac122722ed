import { LINE_KEYS, type LineKey, ORDER_KEYS, type OrderKey, type RowKey } from "../../src/index";

/** A row of a sheet: its texts for the order and for one line; a key is missing where the sheet has no column for it. */
export type RowTexts = Readonly<Partial<Record<RowKey, string>>>;

/** The result of filling the form from a row. */
export interface RowTaken {
  /** How many fields got a text. */
  readonly fields: number;
  /** The row's customer, where the order has a different one. */
  readonly otherCustomer: string | undefined;
}

/** What stays as in the form where the row has no column for it: the words that every order has. Other fields are emptied. */
const KEPT: readonly RowKey[] = [
  "customer",
  "design",
  "mark",
  "colour",
  "quantity",
  "length",
  "lengthUnit",
  "linksPer",
  "linksPerUnit",
  "linkWeight",
];

/** A row's texts for a line, "" where it has no column; only the texts that it has where it begins a new line. */
export function lineTexts(row: RowTexts, whole: boolean): Partial<Record<LineKey, string>> {
  return only(LINE_KEYS, row, whole);
}

/** A row's texts for the order, "" where it has no column. */
export function orderTexts(row: RowTexts): Partial<Record<OrderKey, string>> {
  return only(ORDER_KEYS, row, true);
}

export function saysSomething(row: RowTexts, key: RowKey): boolean {
  return (row[key] ?? "").trim() !== "";
}

/** How many of these fields a row fills. */
export function countOf(row: RowTexts, keys: readonly RowKey[]): number {
  return keys.filter((key) => saysSomething(row, key)).length;
}

function only<K extends RowKey>(keys: readonly K[], row: RowTexts, whole: boolean): Partial<Record<K, string>> {
  const texts: Partial<Record<K, string>> = {};
  for (const key of keys) {
    const text = row[key] ?? (whole && !KEPT.includes(key) ? "" : undefined);
    if (text !== undefined) texts[key] = text;
  }
  return texts;
}

import { LINE_KEYS, type LineKey, ORDER_KEYS, type OrderKey, type RowKey } from "../../src/index";

/** A row of a sheet: what it says of the order and of one line; keys that it has no column for are not there. */
export type RowTexts = Readonly<Partial<Record<RowKey, string>>>;

/** What became of a row. */
export interface RowTaken {
  /** How many fields got a text. */
  readonly fields: number;
  /** The row's customer where the order has another one. */
  readonly otherCustomer: string | undefined;
}

/** What a row that has no column for it keeps from the form: the words every order has. Of anything else it has none. */
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

/** What a row says of a line, with nothing where it has no column; only what it says where it begins a line of its own. */
export function lineTexts(row: RowTexts, whole: boolean): Partial<Record<LineKey, string>> {
  return only(LINE_KEYS, row, whole);
}

/** What a row says of the order, with nothing where it has no column. */
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

import { PRICE_COLUMN_KEYS, type PriceColumn } from "../../src/index";

/** The columns that a customer may read. None is a cost, and no cost can be calculated from them. */
export const CUSTOMER_COLUMNS = [
  "design",
  "description",
  "mark",
  "colour",
  "length",
  "links",
  "weight",
  "price",
] as const;
export type CustomerColumn = (typeof CUSTOMER_COLUMNS)[number];

/** The columns that only the workshop reads. */
export const BENCH_COLUMNS = PRICE_COLUMN_KEYS.filter(
  (key): key is BenchColumn => !["design", "links", "finished", "price"].includes(key),
);
export type BenchColumn = Exclude<PriceColumn, "design" | "links" | "finished" | "price">;

export type SheetColumn = CustomerColumn | BenchColumn;

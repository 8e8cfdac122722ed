import { PRICE_COLUMN_KEYS, type PriceColumn } from "../../src/index";

/** What a customer may read. Nothing here is a cost, nor lets one be reckoned. */
export const CUSTOMER_COLUMNS = ["design", "mark", "colour", "length", "links", "weight", "price"] as const;
export type CustomerColumn = (typeof CUSTOMER_COLUMNS)[number];

/** What only the bench reads. */
export const BENCH_COLUMNS = PRICE_COLUMN_KEYS.filter(
  (key): key is BenchColumn => !["design", "links", "finished", "price"].includes(key),
);
export type BenchColumn = Exclude<PriceColumn, "design" | "links" | "finished" | "price">;

export type SheetColumn = CustomerColumn | BenchColumn;

import { LINE_KEYS, ORDER_KEYS } from "../../src/order/fields";
import type { OrderForm } from "../../src/order/order";
import type { TypedOrder } from "../../src/order/ordertext";

/** A flat row of texts or cells as an order of one line. */
export function orderOfRow(row: Readonly<Record<string, unknown>>): OrderForm {
  const pick = (keys: readonly string[]) => Object.fromEntries(keys.map((key) => [key, row[key]]));
  return { order: pick(ORDER_KEYS), lines: [pick(LINE_KEYS)], extras: [] };
}

/** An order with nothing in it but blank lines. */
export function blankOrder(lines = 1): TypedOrder {
  return { order: blank(ORDER_KEYS), lines: Array.from({ length: lines }, () => blank(LINE_KEYS)), extras: [] };
}

function blank<K extends string>(keys: readonly K[]): Record<K, string> {
  return Object.fromEntries(keys.map((key) => [key, ""])) as Record<K, string>;
}

import { ORDER_KEYS, type OrderKey } from "./order";

/** An order as a person typed it: a text for each field, "" for one left empty. */
export type TypedOrder = Readonly<Record<OrderKey, string>>;

/** An order as typed, as one compact text: JSON of the fields that are not empty. */
export function writeOrderText(typed: TypedOrder): string {
  const filled = ORDER_KEYS.filter((key) => typed[key] !== "");
  return JSON.stringify(Object.fromEntries(filled.map((key) => [key, typed[key]])));
}

/** Reads what writeOrderText wrote; undefined where it is no such text: cut short, a strange field, not a text. */
export function readOrderText(text: unknown): TypedOrder | undefined {
  const fields = typeof text === "string" ? recordIn(text) : undefined;
  if (!fields) return undefined;
  const known: readonly string[] = ORDER_KEYS;
  if (!Object.entries(fields).every(([key, value]) => known.includes(key) && typeof value === "string")) {
    return undefined;
  }
  // As in Object.fromEntries' own type: every key of ORDER_KEYS is in it, and each value was found to be a text.
  return Object.fromEntries(ORDER_KEYS.map((key) => [key, fields[key] ?? ""])) as Record<OrderKey, string>;
}

function recordIn(text: string): Readonly<Record<string, unknown>> | undefined {
  try {
    const read: unknown = JSON.parse(text);
    if (typeof read !== "object" || read === null || Array.isArray(read)) return undefined;
    return Object.fromEntries(Object.entries(read));
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}

import { parseTerms, type QuotedTerms, writeTerms } from "../rates/quotedterms";
import { EXTRA_KEYS, type ExtraKey } from "./extrafields";
import { LINE_KEYS, type LineKey, ORDER_KEYS, type OrderKey } from "./fields";

export type TypedLine = Readonly<Record<LineKey, string>>;
export type TypedExtra = Readonly<Record<ExtraKey, string>>;

/** An order as a person typed it: a text for each field, "" for one left empty. */
export interface TypedOrder {
  readonly order: Readonly<Record<OrderKey, string>>;
  readonly lines: readonly TypedLine[];
  readonly extras: readonly TypedExtra[];
}

/** An order as its quote keeps it. */
export interface KeptOrder {
  readonly typed: TypedOrder;
  /** What it was quoted at; undefined for a quote of a version that kept none. */
  readonly terms: QuotedTerms | undefined;
}

/** An order as typed, with what it was quoted at, as one compact text: JSON of the fields that are not empty. */
export function writeOrderText({ order, lines, extras }: TypedOrder, terms: QuotedTerms): string {
  return JSON.stringify({
    ...filled(ORDER_KEYS, order),
    lines: lines.map((line) => filled(LINE_KEYS, line)),
    ...(extras.length > 0 ? { extras: extras.map((extra) => filled(EXTRA_KEYS, extra)) } : {}),
    quoted: writeTerms(terms),
  });
}

/** Reads what writeOrderText wrote; undefined where it is no such text: cut short, a strange field, not a text. */
export function readOrderText(text: unknown): KeptOrder | undefined {
  const read = typeof text === "string" ? recordOf(parsed(text)) : undefined;
  if (!read) return undefined;
  const { quoted, ...order } = read;
  const typed = typedIn(order);
  if (!typed || quoted === undefined) return typed && { typed, terms: undefined };
  const terms = parseTerms(recordOf(quoted) ?? {});
  // Terms that are damaged are not terms that were never kept: today's must not stand in for them.
  return terms.ok ? { typed, terms: terms.value } : undefined;
}

function typedIn({ lines, extras = [], ...order }: Readonly<Record<string, unknown>>): TypedOrder | undefined {
  const typed = {
    order: textsOf(ORDER_KEYS, order),
    lines: Array.isArray(lines) ? lines.map((line) => textsOf(LINE_KEYS, recordOf(line))) : [],
    extras: Array.isArray(extras) ? extras.map((extra) => textsOf(EXTRA_KEYS, recordOf(extra))) : [undefined],
  };
  if (!typed.order || typed.lines.length === 0) return undefined;
  const known = { lines: typed.lines.filter(isThere), extras: typed.extras.filter(isThere) };
  const isWhole = known.lines.length === typed.lines.length && known.extras.length === typed.extras.length;
  return isWhole ? { order: typed.order, ...known } : undefined;
}

function filled<K extends string>(keys: readonly K[], texts: Readonly<Record<K, string>>): Record<string, string> {
  return Object.fromEntries(keys.filter((key) => texts[key] !== "").map((key) => [key, texts[key]]));
}

/** A text for each key; undefined where a field is strange or no text. */
function textsOf<K extends string>(
  keys: readonly K[],
  record: Readonly<Record<string, unknown>> | undefined,
): Record<K, string> | undefined {
  const known: readonly string[] = keys;
  if (!record) return undefined;
  if (!Object.entries(record).every(([key, value]) => known.includes(key) && typeof value === "string"))
    return undefined;
  return Object.fromEntries(keys.map((key) => [key, record[key] ?? ""])) as Record<K, string>;
}

function isThere<T>(value: T | undefined): value is T {
  return value !== undefined;
}

function recordOf(value: unknown): Readonly<Record<string, unknown>> | undefined {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return undefined;
  return Object.fromEntries(Object.entries(value));
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}

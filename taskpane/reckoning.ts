import {
  type CostSheet,
  costOrder,
  type Fault,
  makeQuote,
  ORDER_KEYS,
  type Order,
  type OrderKey,
  parseOrder,
  type Quote,
  type QuoteWatch,
  type Rates,
  type TypedOrder,
} from "../src/index";

export type Typed = TypedOrder;

/** Everything that follows from an order that can be read. */
export interface Costed {
  readonly order: Order;
  readonly sheets: readonly CostSheet[];
  readonly quote: Quote;
  readonly watch: QuoteWatch;
  readonly rates: Rates;
}

/**
 * What a form amounts to so far.
 * `blank`: nothing is wrong, but there is more to fill. `faulty`: something typed needs a look.
 * `costed`: there is a price; where `faults` is not empty the names for a quote are still to be given.
 */
export type Reckoning = { readonly faults: readonly Fault[] } & (
  | { readonly kind: "blank" }
  | { readonly kind: "faulty" }
  | { readonly kind: "costed"; readonly costed: Costed }
);

/** Words of the quote that no cost depends on: a price can be seen without them. */
const NAMES = ["customer", "design"] as const satisfies readonly OrderKey[];

/** Reads and costs a form as far as it goes. @param date ISO 8601 */
export function reckon(typed: Typed, rates: Rates, date: string): Reckoning {
  const read = parseOrder(typed, rates);
  if (read.ok) return { kind: "costed", faults: [], costed: cost(read.value, rates, date) };
  const faults = inFormOrder(read.faults);
  const others = faults.filter((fault) => !NAMES.some((name) => name === fault.field));
  if (faults.some((fault) => !isMissing(fault, typed))) return { kind: "faulty", faults };
  if (others.length > 0) return { kind: "blank", faults };
  const unnamed = parseOrder({ ...typed, ...standIns(typed) }, rates);
  return unnamed.ok
    ? { kind: "costed", faults, costed: cost(unnamed.value, rates, date) }
    : { kind: "faulty", faults: inFormOrder([...faults, ...unnamed.faults]) };
}

/** The faults in what was typed. */
export function wrong({ faults }: Reckoning, typed: Typed): readonly Fault[] {
  return faults.filter((fault) => !isMissing(fault, typed));
}

/** The faults that only say that a field is still to be filled. */
export function missing({ faults }: Reckoning, typed: Typed): readonly Fault[] {
  return faults.filter((fault) => isMissing(fault, typed));
}

function isMissing(fault: Fault, typed: Typed): boolean {
  const key = ORDER_KEYS.find((known) => known === fault.field);
  return key !== undefined && fault.code === "blank" && typed[key].trim() === "";
}

function cost(order: Order, rates: Rates, date: string): Costed {
  const sheets = costOrder(order, rates);
  return { order, sheets, rates, ...makeQuote(order, sheets, rates, date) };
}

function standIns(typed: Typed): Partial<Record<OrderKey, string>> {
  return Object.fromEntries(NAMES.map((name) => [name, typed[name].trim() === "" ? "…" : typed[name]]));
}

const KEYS: readonly string[] = ORDER_KEYS;

function inFormOrder(faults: readonly Fault[]): readonly Fault[] {
  const place = ({ field }: Fault) => KEYS.indexOf(field);
  return [...faults].sort((a, b) => place(a) - place(b));
}

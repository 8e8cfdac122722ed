import {
  type CostSheet,
  costOrder,
  type Fault,
  makeQuote,
  type Order,
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

/** Reads and costs a form as far as it goes. @param date ISO 8601 */
export function reckon(typed: Typed, rates: Rates, date: string): Reckoning {
  const read = parseOrder(typed, rates);
  if (read.ok) return { kind: "costed", faults: [], costed: cost(read.value, rates, date) };
  const { faults } = read;
  if (faults.some((fault) => !isMissing(fault, typed))) return { kind: "faulty", faults };
  if (faults.some((fault) => !isName(fault))) return { kind: "blank", faults };
  const unnamed = parseOrder(withStandIns(typed), rates);
  return unnamed.ok
    ? { kind: "costed", faults, costed: cost(unnamed.value, rates, date) }
    : { kind: "faulty", faults: [...faults, ...unnamed.faults] };
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
  return fault.code === "blank" && textAt(fault, typed).trim() === "";
}

/** What was typed where a fault is. */
function textAt({ field, line, extra }: Fault, typed: Typed): string {
  const part = line !== undefined ? typed.lines[line] : extra !== undefined ? typed.extras[extra] : typed.order;
  const texts: Readonly<Record<string, string>> = part ?? {};
  return texts[field] ?? "";
}

function cost(order: Order, rates: Rates, date: string): Costed {
  const sheets = costOrder(order, rates);
  return { order, sheets, rates, ...makeQuote(order, sheets, rates, date) };
}

/** Words of the quote that no cost depends on: a price can be seen without them. */
function isName({ field, line, extra }: Fault): boolean {
  if (extra !== undefined) return field === "text";
  return line === undefined ? field === "customer" : field === "design";
}

function withStandIns({ order, lines, extras }: Typed): Typed {
  return {
    order: { ...order, customer: named(order.customer) },
    lines: lines.map((line) => ({ ...line, design: named(line.design) })),
    extras: extras.map((extra) => ({ ...extra, text: named(extra.text) })),
  };
}

function named(text: string): string {
  return text.trim() === "" ? "…" : text;
}

import {
  type CostSheet,
  costOrder,
  EXTRA_LABELS,
  type Fault,
  found,
  makeQuote,
  type Order,
  parseNamelessOrder,
  parseOrder,
  type Quote,
  type QuoteWatch,
  type Rates,
  type TypedOrder,
} from "../../src/index";
import { TEXTS } from "../wording/texts";

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

/**
 * Reads and costs a form as far as it goes.
 * @param date ISO 8601
 * @param misread faults of texts that the costing library would read, but a person may have meant otherwise
 */
export function reckon(typed: Typed, rates: Rates, date: string, misread: readonly Fault[] = []): Reckoning {
  const read = parseOrder(typed, rates);
  if (misread.length > 0) {
    const others = read.ok ? [] : read.faults.filter((fault) => !misread.some((each) => isSamePlace(each, fault)));
    return { kind: "faulty", faults: [...misread, ...others] };
  }
  if (read.ok) return costable(cost(read.value, rates, date), typed, []);
  const { faults } = read;
  if (faults.some((fault) => !isMissing(fault, typed))) return { kind: "faulty", faults };
  if (faults.some((fault) => !isName(fault))) return { kind: "blank", faults };
  const unnamed = parseNamelessOrder(typed, rates);
  return unnamed.ok
    ? costable(cost(withStandIns(unnamed.value), rates, date), typed, faults)
    : { kind: "faulty", faults: [...faults, ...unnamed.faults] };
}

/** A price is shown unless what free lines take off leaves less than nothing. */
function costable(costed: Costed, typed: Typed, faults: readonly Fault[]): Reckoning {
  if (!costed.watch.belowZero) return { kind: "costed", faults, costed };
  const amounts = costed.quote.extras.map(({ amount }) => amount.amount);
  const extra = amounts.findIndex((amount) => amounts.every((each) => !each.isLessThan(amount)));
  const sentence = TEXTS.result.belowZero(EXTRA_LABELS.amount, found(typed.extras[extra]?.amount.trim()));
  return { kind: "faulty", faults: [...faults, { field: "amount", code: "outOfRange", extra, sentence }] };
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
  const { line, extra } = fault;
  const part = line !== undefined ? typed.lines[line] : extra !== undefined ? typed.extras[extra] : typed.order;
  return isMissingIn(fault, part ?? {});
}

/** Whether a fault of this part only says that a field of it is still to be filled. */
export function isMissingIn({ code, field }: Fault, texts: Readonly<Record<string, string>>): boolean {
  return code === "blank" && (texts[field] ?? "").trim() === "";
}

function isSamePlace(a: Fault, b: Fault): boolean {
  return a.field === b.field && a.line === b.line && a.extra === b.extra;
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

/** Stands where a name is still to be given, until it is. */
export const STAND_IN = "…";

function withStandIns({ customer, lines, extras, ...order }: Order): Order {
  const named = (name: string) => (name === "" ? STAND_IN : name);
  return {
    ...order,
    customer: named(customer),
    lines: lines.map((line) => ({ ...line, design: named(line.design) })),
    extras: extras.map((extra) => ({ ...extra, text: named(extra.text) })),
  };
}

import type { Quotient } from "../exact/quotient";
import type { Rates } from "../rates/rates";
import { accepted, attempt, faultOf, faultsOf, field, type Parsed, parseForm, refused } from "../reading/parse";
import { readOptionalText } from "../reading/words";
import { type Pricing, pricingOf } from "../trade/pricemethod";
import { type Money, money } from "../units/money";
import { EXTRA_FIELDS, EXTRA_KEYS, EXTRA_LABELS } from "./extrafields";
import { formOf } from "./fieldkinds";
import { LINE_KEYS, ORDER_FIELDS, ORDER_KEYS, ORDER_LABELS } from "./fields";
import { type Naming, parseLine } from "./linereading";
import type { OrderLine } from "./orderline";
import { type OwnGold, parseOwnGold } from "./owngold";

/** A free line of a quote: a gift box, a repair, something taken off. */
export interface Extra {
  readonly text: string;
  /** Below zero takes off. */
  readonly amount: Money;
  readonly cost: Money;
}

export interface Order {
  readonly customer: string;
  readonly spot: Money;
  /** Whether the customer reads at what spot it was quoted. */
  readonly spotShown: boolean;
  /** How lines without a pricing of their own are priced. */
  readonly pricing: Pricing;
  /** Share off the pieces. */
  readonly discount: Quotient;
  /** What the customer pays for it, passed on as it is. */
  readonly shipping: Money;
  /** Wanted share of what is to be paid. */
  readonly deposit: Quotient;
  /** It was typed for this order, and is not that of Rates. */
  readonly isDepositTyped: boolean;
  /** Whether the price moves with the weight on the scale at the end. */
  readonly settledByWeight: boolean;
  /** How far the finished weight may be from the one stated. */
  readonly tolerance: Quotient;
  readonly ownGold: OwnGold | undefined;
  readonly lines: readonly OrderLine[];
  readonly extras: readonly Extra[];
}

type Row = Readonly<Record<string, unknown>>;

/** An order as a form holds it: what it says once, its lines, its free lines. */
export interface OrderForm {
  readonly order: Row;
  readonly lines: readonly Row[];
  readonly extras: readonly Row[];
}

/** More lines than anyone reads on one quote: past it something was copied that is no order. */
export const MOST_LINES = 200;

const FIELDS = formOf(
  ORDER_FIELDS,
  "customer",
  "spot",
  "spotShown",
  "discount",
  "shipping",
  "deposit",
  "settled",
  "tolerance",
);
const PRICED = formOf(ORDER_FIELDS, "priceBy", "priceFigure");
const EXTRA = formOf(EXTRA_FIELDS, "text", "amount", "cost");
/** What no cost rests on may be given later. */
const NAMELESS = { ...FIELDS, customer: field((value) => readOptionalText(value, ORDER_LABELS.customer)) };
const NAMELESS_EXTRA = { ...EXTRA, text: field((value) => readOptionalText(value, EXTRA_LABELS.text)) };

/**
 * Reads an order from a form's texts or a row's cells; gathers every fault, each naming its field, and those of a line or a
 * free line its place among them, counted from 0.
 */
export function parseOrder(form: OrderForm, rates: Rates): Parsed<Order> {
  return readOrder(form, rates, "named");
}

/** Reads an order as parseOrder does; where the customer, a design or the text of a free line is not given yet, it is "". */
export function parseNamelessOrder(form: OrderForm, rates: Rates): Parsed<Order> {
  return readOrder(form, rates, "may be nameless");
}

function readOrder(form: OrderForm, rates: Rates, naming: Naming): Parsed<Order> {
  const order = parseForm(naming === "named" ? FIELDS : NAMELESS, form.order);
  const pricing = parsePricing(form.order, rates);
  const ownGold = parseOwnGold(form.order, rates.ownGoldShare);
  const lines = form.lines.map((line) => parseLine(line, rates, naming));
  const extras = form.extras.map((extra) => parseExtra(extra, rates, naming));
  if (!order.ok || !pricing.ok || !ownGold.ok || [...lines, ...extras].some((part) => !part.ok)) {
    return refused([
      ...inOrderOf(ORDER_KEYS, faultsOf(order, pricing, ownGold)),
      ...lines.flatMap((part, line) => inOrderOf(LINE_KEYS, faultsOf(part)).map((fault) => ({ ...fault, line }))),
      ...extras.flatMap((part, extra) => inOrderOf(EXTRA_KEYS, faultsOf(part)).map((fault) => ({ ...fault, extra }))),
    ]);
  }
  const { customer, discount, settled, spotShown } = order.value;
  const tolerance = order.value.tolerance ?? rates.tolerance;
  if (settled === "by final weight" && tolerance.isZero()) {
    const said =
      "found none for a price settled by final weight; give how far the weight may be off, such as 0.05 or 5 %";
    return refused([faultOf("tolerance", ORDER_LABELS.tolerance, "blank", said)]);
  }
  const cash = (amount: Quotient) => money(amount, rates.currency);
  return accepted({
    customer,
    spot: order.value.spot ? cash(order.value.spot) : rates.spot,
    spotShown: spotShown === "yes",
    pricing: pricing.value,
    discount,
    shipping: cash(order.value.shipping),
    deposit: order.value.deposit ?? rates.deposit,
    isDepositTyped: order.value.deposit !== undefined,
    settledByWeight: settled === "by final weight",
    tolerance,
    ownGold: ownGold.value,
    lines: Object.freeze(lines.flatMap((part) => (part.ok ? [part.value] : []))),
    extras: Object.freeze(extras.flatMap((part) => (part.ok ? [part.value] : []))),
  });
}

function parsePricing(record: Row, rates: Rates): Parsed<Pricing> {
  const read = parseForm(PRICED, record);
  if (!read.ok) return read;
  const { priceBy: by, priceFigure } = read.value;
  if (by === "as Rates") return accepted(rates.pricing);
  return attempt("priceFigure", () => pricingOf(by, priceFigure(by), rates.currency));
}

function parseExtra(record: Row, rates: Rates, naming: Naming): Parsed<Extra> {
  const read = parseForm(naming === "named" ? EXTRA : NAMELESS_EXTRA, record);
  if (!read.ok) return read;
  const { text, amount, cost } = read.value;
  return accepted({ text, amount: money(amount, rates.currency), cost: money(cost, rates.currency) });
}

function inOrderOf<F extends { readonly field: string }>(keys: readonly string[], faults: readonly F[]): readonly F[] {
  return [...faults].sort((a, b) => keys.indexOf(a.field) - keys.indexOf(b.field));
}

import { COLOURS, type Colour } from "./alloy";
import { CostingError, type Fault } from "./errors";
import { accepted, attempt, field, type Parsed, parseForm, refused } from "./form";
import { type Length, lengthIn } from "./length";
import { linkCount, pitchOf } from "./link";
import { type Mark, parseMark } from "./mark";
import { type Money, money } from "./money";
import { isBlank, type NumberRule, readNumber } from "./number";
import { Quotient } from "./quotient";
import { MONEY_AT_LEAST_0, type Rates, SPOT_RULE } from "./rates";
import { readText } from "./text";
import { grams, type Weight } from "./weight";
import { readWord } from "./word";

export const ORDER_LENGTH_UNITS = ["in", "cm", "mm"] as const;
export const LINKS_PER_UNITS = ["in", "cm"] as const;
export const PLATING_CHOICES = ["as usual", "plated", "not plated"] as const;

/** The words of an order, as the form and the faults name its fields. */
export const ORDER_LABELS = {
  customer: "Customer",
  design: "Design",
  mark: "Mark",
  colour: "Colour",
  plated: "Plating",
  length: "Length",
  lengthUnit: "Length unit",
  linksPer: "Links per length",
  linksPerUnit: "Links counted per",
  linkWeight: "Weight of one link",
  claspLength: "Clasp length",
  claspWeight: "Clasp weight",
  claspCost: "Clasp cost",
  stoneCount: "Stones",
  stonePrice: "Price of one stone",
  settingFee: "Setting fee",
  quantity: "Quantity",
  spot: "Spot",
  discount: "Discount",
} as const;
export type OrderKey = keyof typeof ORDER_LABELS;
export const ORDER_KEYS = Object.keys(ORDER_LABELS) as readonly OrderKey[];

/** One design of an order, so many pieces of it. The clasp is a bought finding of the same mark. */
export interface OrderLine {
  readonly design: string;
  readonly mark: Mark;
  /** The mark as the person wrote it, for the quote. */
  readonly markText: string;
  readonly colour: Colour;
  readonly plated: boolean;
  readonly length: Length;
  readonly lengthText: string;
  readonly lengthUnit: (typeof ORDER_LENGTH_UNITS)[number];
  readonly linksPer: Quotient;
  readonly linksPerUnit: (typeof LINKS_PER_UNITS)[number];
  readonly pitch: Length;
  readonly links: Quotient;
  readonly linkWeight: Weight;
  readonly claspLength: Length;
  readonly claspWeight: Weight;
  readonly claspCost: Money;
  /** Stones on one piece; zero for none. */
  readonly stoneCount: Quotient;
  readonly stonePrice: Money;
  readonly settingFee: Money;
  readonly quantity: Quotient;
}

export interface Order {
  readonly customer: string;
  readonly spot: Money;
  /** Share off the subtotal. */
  readonly discount: Quotient;
  readonly lines: readonly OrderLine[];
}

const LENGTH: NumberRule = {
  above: "0",
  most: "100000",
  right: "a length above 0, such as 24",
};
const LINKS_PER: NumberRule = {
  above: "0",
  most: "1000",
  right: "links in one inch or centimetre, such as 4",
};
const LINK_WEIGHT: NumberRule = {
  above: "0",
  most: "1000",
  right: "grams above 0, such as 2.05",
};
const CLASP_LENGTH: NumberRule = {
  least: "0",
  most: "100000",
  right: "a length from 0, in the unit of the chain",
};
const CLASP_WEIGHT: NumberRule = {
  least: "0",
  most: "1000",
  right: "grams from 0, such as 3.4",
};
const STONES: NumberRule = {
  least: "0",
  most: "10000",
  whole: true,
  right: "a whole number of stones from 0",
};
const QUANTITY: NumberRule = {
  least: "1",
  most: "1000",
  whole: true,
  right: "a whole number of pieces from 1 to 1000",
};
const DISCOUNT: NumberRule = {
  least: "0",
  below: "1",
  right: "a share from 0 to below 1, such as 0.05 for 5 %",
};

/** More links than one piece of a bench ever has: past it a length or a pitch was mistyped. */
const MOST_LINKS = Quotient.of(5000);

/** Reads an order from a plain record of texts (or cells); gathers every fault, each naming its field. */
export function parseOrder(record: Readonly<Record<string, unknown>>, rates: Rates): Parsed<Order> {
  const form = parseForm({ ...NAMES, ...CHAIN, ...PLATING, ...AMOUNTS }, record);
  const chain = readChain(record);
  const plating = readPlating(record, rates);
  if (!form.ok || !chain.ok || !plating.ok) {
    const faults = [form, chain, plating].flatMap((part) => (part.ok ? [] : part.faults));
    const keys: readonly string[] = ORDER_KEYS;
    const place = (fault: Fault) => keys.indexOf(fault.field);
    return refused([...faults].sort((a, b) => place(a) - place(b)));
  }
  const order = form.value;
  const cash = (amount: Quotient) => money(amount, rates.currency);
  const line: OrderLine = {
    design: order.design,
    mark: order.mark.mark,
    markText: order.mark.text,
    colour: order.colour,
    plated: plating.value,
    ...chain.value,
    lengthText: order.length.value().toString(),
    lengthUnit: order.lengthUnit,
    linksPer: order.linksPer,
    linksPerUnit: order.linksPerUnit,
    linkWeight: grams(order.linkWeight),
    claspWeight: grams(order.claspWeight),
    claspCost: cash(order.claspCost),
    stoneCount: order.stoneCount,
    stonePrice: cash(order.stonePrice),
    settingFee: order.settingFee ? cash(order.settingFee) : rates.settingFee,
    quantity: order.quantity,
  };
  const spot = order.spot ? cash(order.spot) : rates.spot;
  return accepted({
    customer: order.customer,
    spot,
    discount: order.discount,
    lines: Object.freeze([Object.freeze(line)]),
  });
}

/** Lengths and links, and what is wrong between them; the fields' own faults are found by the whole form. */
function readChain(
  record: Readonly<Record<string, unknown>>,
): Parsed<Pick<OrderLine, "length" | "pitch" | "claspLength" | "links">> {
  const read = parseForm(CHAIN, record);
  if (!read.ok) return refused([]);
  const length = lengthIn(read.value.length, read.value.lengthUnit);
  const pitch = pitchOf(read.value.linksPer, lengthIn(Quotient.one, read.value.linksPerUnit));
  const claspLength = lengthIn(read.value.claspLength, read.value.lengthUnit);
  return attempt("length", () => ({ length, pitch, claspLength, links: linksOf(length, pitch, claspLength) }));
}

/** Whether the piece is plated, and whether Rates say what that costs. */
function readPlating(record: Readonly<Record<string, unknown>>, rates: Rates): Parsed<boolean> {
  const read = parseForm(PLATING, record);
  if (!read.ok) return refused([]);
  const { colour, plated } = read.value;
  const isPlated = plated === "as usual" ? colour === "white" : plated === "plated";
  return attempt("plated", () => {
    if (!isPlated || rates.plating !== undefined) return isPlated;
    throw new CostingError(
      "blank",
      ORDER_LABELS.plated,
      "found no plating cost on Rates; give it there, or choose not plated",
    );
  });
}

function linksOf(length: Length, pitch: Length, claspLength: Length): Quotient {
  if (!length.millimetres.isGreaterThan(claspLength.millimetres)) {
    throw new CostingError(
      "outOfRange",
      ORDER_LABELS.length,
      "found a chain no longer than its clasp; give a length above the clasp length",
    );
  }
  const links = linkCount(length, pitch, claspLength);
  if (links.isZero())
    throw new CostingError(
      "outOfRange",
      ORDER_LABELS.length,
      "found a length without room for one link; give a longer one, or check the links per length",
    );
  if (links.isGreaterThan(MOST_LINKS)) {
    throw new CostingError(
      "outOfRange",
      ORDER_LABELS.length,
      `found a chain of ${links.value()} links; check length and links per length, which make at most ${MOST_LINKS.value()} links here`,
    );
  }
  return links;
}

const NAMES = {
  customer: field((value) => readText(value, ORDER_LABELS.customer, "the customer's name")),
  design: field((value) => readText(value, ORDER_LABELS.design, "the name of the design")),
  mark: field((value) => ({
    mark: parseMark(value, ORDER_LABELS.mark),
    text: String(value).trim(),
  })),
};

const CHAIN = {
  length: required("length", LENGTH),
  lengthUnit: field((value) => readWord(value, ORDER_LABELS.lengthUnit, ORDER_LENGTH_UNITS)),
  linksPer: required("linksPer", LINKS_PER),
  linksPerUnit: field((value) => readWord(value, ORDER_LABELS.linksPerUnit, LINKS_PER_UNITS)),
  claspLength: orZero("claspLength", CLASP_LENGTH),
};

const PLATING = {
  colour: field((value) => readWord(value, ORDER_LABELS.colour, COLOURS)),
  plated: field((value) => (isBlank(value) ? "as usual" : readWord(value, ORDER_LABELS.plated, PLATING_CHOICES))),
};

const AMOUNTS = {
  linkWeight: required("linkWeight", LINK_WEIGHT),
  claspWeight: orZero("claspWeight", CLASP_WEIGHT),
  claspCost: orZero("claspCost", MONEY_AT_LEAST_0),
  stoneCount: orZero("stoneCount", STONES),
  stonePrice: orZero("stonePrice", MONEY_AT_LEAST_0),
  settingFee: optional("settingFee", MONEY_AT_LEAST_0),
  quantity: required("quantity", QUANTITY),
  spot: optional("spot", SPOT_RULE),
  discount: orZero("discount", DISCOUNT),
};

function required(key: OrderKey, rule: NumberRule) {
  return field((value) => readNumber(value, ORDER_LABELS[key], rule));
}

function optional(key: OrderKey, rule: NumberRule) {
  return field((value) => (isBlank(value) ? undefined : readNumber(value, ORDER_LABELS[key], rule)));
}

function orZero(key: OrderKey, rule: NumberRule) {
  return field((value) => (isBlank(value) ? Quotient.zero : readNumber(value, ORDER_LABELS[key], rule)));
}

import { COST_BASES, type CostBasis } from "./costing";
import { type Currency, parseCurrency } from "./currency";
import { accepted, field, type Parsed, parseForm } from "./form";
import { type Money, money } from "./money";
import { isBlank, type NumberRule, readNumber } from "./number";
import { LOSS_BASES, type Loss } from "./piece";
import { Quotient } from "./quotient";
import { perGram, type Rate } from "./rate";
import { readOptionalText } from "./text";
import { grams } from "./weight";
import { readWord } from "./word";

export const PRICE_METHODS = ["markup", "margin", "premium"] as const;
export type PriceMethod = (typeof PRICE_METHODS)[number];

/** One row of the Rates sheet. */
export interface RateRow {
  readonly label: string;
  /** What the value counts, in words; empty for words and dates. */
  readonly unit: string;
  /** What a new Rates sheet starts from; the user's own figure belongs there. */
  readonly start: string;
  readonly note: string;
  readonly words?: readonly string[];
  readonly shown: "money" | "share" | "number" | "text" | "word" | "date";
}

/**
 * The words of the Rates sheet, in its order. Start values are common practice or plain zeros, to be replaced by the
 * workshop's own.
 */
export const RATE_ROWS = {
  workshop: row("Workshop", "", "", "Your name on the quote", "text"),
  workshopContact: row("Workshop contact", "", "", "Address, telephone or mail on the quote", "text"),
  currency: row("Currency", "ISO 4217 code", "USD", "Three letters; rounding follows its minor unit", "text"),
  spot: row("Spot", "money per troy ounce of fine gold", "", "The price of fine gold you work from", "money"),
  spotTime: row("Spot as of", "date and time", "", "When you read it", "date"),
  spotSource: row("Spot source", "", "", "Where you read it", "text"),
  castingFee: row("Casting fee", "money per gram cast", "1.50", "What the caster adds to the metal rate", "money"),
  castingMinimum: row(
    "Casting minimum",
    "money per design cast",
    "0",
    "Least the caster charges for the pieces of one design",
    "money",
  ),
  loss: row(
    "Polish loss",
    "share (0.02 is 2 %) or grams a piece",
    "0.02",
    "Cast weight less finished weight",
    "number",
  ),
  lossBasis: row(
    "Loss counted from",
    "",
    "cast",
    "cast: share of the cast weight; finished: share of the finished weight; grams: grams a piece",
    "word",
    LOSS_BASES,
  ),
  costBasis: row(
    "Cost basis",
    "",
    "finished",
    "finished: all metal cast is paid for; quick: lost grams without the casting fee",
    "word",
    COST_BASES,
  ),
  labourFlat: row("Labour, flat", "money per piece", "50", "Joining, filing, polishing", "money"),
  labourPerLink: row("Labour per link", "money per link", "0", "", "money"),
  labourPerGram: row("Labour per gram", "money per finished gram", "0", "", "money"),
  labourMinimum: row("Labour minimum", "money per piece", "0", "", "money"),
  settingFee: row("Setting fee", "money per stone", "1", "", "money"),
  plating: row("Plating", "money per piece", "", "Needed when a piece is plated; white gold normally is", "money"),
  surcharge: row(
    "Maker's surcharge",
    "money per gram",
    "3.25",
    "What a maker of ready chain adds to the metal rate",
    "money",
  ),
  priceBy: row(
    "Price by",
    "",
    "markup",
    "markup on landed cost, margin on price, or premium over the metal rate",
    "word",
    PRICE_METHODS,
  ),
  markup: row("Markup", "share of landed cost", "0.30", "Used when the price goes by markup", "share"),
  margin: row("Margin", "share of price", "", "Used when the price goes by margin", "share"),
  premium: row(
    "Premium",
    "money per gram",
    "",
    "Used when the price goes by premium; the clasp goes by weight, stones and plating are added at cost",
    "money",
  ),
  leastMargin: row("Least margin", "share of price", "0.10", "The floor that a discount is watched against", "share"),
  priceStep: row("Price step", "money", "1", "Prices are rounded up to it; 0 for the smallest coin", "money"),
  taxName: row("Tax name", "", "Sales tax", "As it stands on the quote", "text"),
  tax: row("Tax", "share, on top", "0", "Ask your tax adviser which rate applies", "share"),
  deposit: row(
    "Deposit",
    "share of the total",
    "0.50",
    "More where the cash that goes out is more, in steps of 5 %; 0 for none",
    "share",
  ),
  validity: row("Quote valid for", "days", "7", "Spot moves; a quote ends", "number"),
  nextNumber: row("Next quote number", "", "1001", "Counts up by itself", "number"),
} as const satisfies Record<string, RateRow>;

export type RateKey = keyof typeof RATE_ROWS;
export const RATE_KEYS = Object.keys(RATE_ROWS) as readonly RateKey[];

/** The workshop's rates, read and checked. */
export interface Rates {
  readonly workshop: string;
  readonly workshopContact: string;
  readonly currency: Currency;
  readonly spot: Money;
  readonly castingFee: Rate;
  readonly castingMinimum: Money;
  readonly loss: Loss;
  readonly costBasis: CostBasis;
  readonly labourFlat: Money;
  readonly labourPerLink: Money;
  readonly labourPerGram: Rate;
  readonly labourMinimum: Money;
  readonly surcharge: Rate;
  readonly settingFee: Money;
  /** Undefined while nobody has said what plating costs. */
  readonly plating: Money | undefined;
  readonly pricing: Pricing;
  readonly leastMargin: Quotient;
  readonly priceStep: Quotient;
  readonly taxName: string;
  readonly tax: Quotient;
  readonly deposit: Quotient;
  readonly validity: number;
  readonly nextNumber: number;
}

export type Pricing =
  | { readonly by: "markup"; readonly share: Quotient }
  | { readonly by: "margin"; readonly share: Quotient }
  | { readonly by: "premium"; readonly rate: Rate };

export const MONEY_AT_LEAST_0: NumberRule = {
  least: "0",
  most: "1000000000000",
  right: "an amount of money from 0, such as 1.50",
};
export const SPOT_RULE: NumberRule = {
  above: "0",
  most: "1000000000000",
  right: "the money for one troy ounce of fine gold, such as 2650",
};
const SHARE: NumberRule = {
  least: "0",
  below: "1",
  right: "a share from 0 to below 1, such as 0.02 for 2 %",
};
const DEPOSIT: NumberRule = {
  least: "0",
  most: "1",
  right: "a share from 0 to 1, such as 0.5 for half",
};
const MARKUP: NumberRule = {
  least: "0",
  most: "100",
  right: "a share of cost from 0, such as 0.30 for 30 %",
};
const LOSS_GRAMS: NumberRule = {
  least: "0",
  most: "100000",
  right: "the grams lost on a piece, such as 1.2",
};
const DAYS: NumberRule = {
  least: "1",
  most: "366",
  whole: true,
  right: "a whole number of days from 1 to 366",
};
const QUOTE_NUMBER: NumberRule = {
  least: "1",
  most: "9999999",
  whole: true,
  right: "a whole number from 1, such as 1001",
};

/** Reads the values of the Rates sheet by their keys; gathers every fault, each naming its row. */
export function parseRates(record: Readonly<Record<string, unknown>>): Parsed<Rates> {
  const parsed = parseForm(shape(record), record);
  if (!parsed.ok) return parsed;
  const { loss, lossBasis, priceBy, ...amounts } = parsed.value;
  const { currency } = amounts;
  const cash = (amount: Quotient) => money(amount, currency);
  const gram = (amount: Quotient) => perGram(amount, currency);
  return accepted({
    ...amounts,
    spot: cash(amounts.spot),
    castingFee: gram(amounts.castingFee),
    castingMinimum: cash(amounts.castingMinimum),
    loss: Object.freeze(
      lossBasis === "grams" ? { basis: lossBasis, weight: grams(loss) } : { basis: lossBasis, share: loss },
    ),
    labourFlat: cash(amounts.labourFlat),
    labourPerLink: cash(amounts.labourPerLink),
    labourPerGram: gram(amounts.labourPerGram),
    labourMinimum: cash(amounts.labourMinimum),
    surcharge: gram(amounts.surcharge),
    settingFee: cash(amounts.settingFee),
    plating: amounts.plating && cash(amounts.plating),
    pricing: Object.freeze(
      priceBy === "premium" ? { by: priceBy, rate: gram(amounts.premium) } : { by: priceBy, share: amounts[priceBy] },
    ),
    validity: amounts.validity.toNumber(),
    nextNumber: amounts.nextNumber.toNumber(),
  });
}

function shape(record: Readonly<Record<string, unknown>>) {
  const required = (key: RateKey, rule: NumberRule) => field((value) => readNumber(value, label(key), rule));
  const orZero = (key: RateKey, rule: NumberRule) =>
    field((value) => (isBlank(value) ? Quotient.zero : readNumber(value, label(key), rule)));
  const word = <W extends string>(key: RateKey, words: readonly W[]) =>
    field((value) => readWord(value, label(key), words));
  const text = (key: RateKey) => field((value) => readOptionalText(value, label(key)));
  const chosen = (key: PriceMethod, rule: NumberRule) =>
    said(record.priceBy) === key ? required(key, rule) : field(() => Quotient.zero);
  const inGrams = said(record.lossBasis) === "grams";
  return {
    workshop: text("workshop"),
    workshopContact: text("workshopContact"),
    currency: field((value) => parseCurrency(value, label("currency"))),
    spot: required("spot", SPOT_RULE),
    castingFee: required("castingFee", MONEY_AT_LEAST_0),
    castingMinimum: orZero("castingMinimum", MONEY_AT_LEAST_0),
    loss: required("loss", inGrams ? LOSS_GRAMS : SHARE),
    lossBasis: word("lossBasis", LOSS_BASES),
    costBasis: word("costBasis", COST_BASES),
    labourFlat: orZero("labourFlat", MONEY_AT_LEAST_0),
    labourPerLink: orZero("labourPerLink", MONEY_AT_LEAST_0),
    labourPerGram: orZero("labourPerGram", MONEY_AT_LEAST_0),
    labourMinimum: orZero("labourMinimum", MONEY_AT_LEAST_0),
    surcharge: required("surcharge", MONEY_AT_LEAST_0),
    settingFee: orZero("settingFee", MONEY_AT_LEAST_0),
    plating: field((value) => (isBlank(value) ? undefined : readNumber(value, label("plating"), MONEY_AT_LEAST_0))),
    priceBy: word("priceBy", PRICE_METHODS),
    markup: chosen("markup", MARKUP),
    margin: chosen("margin", SHARE),
    premium: chosen("premium", MONEY_AT_LEAST_0),
    leastMargin: orZero("leastMargin", SHARE),
    priceStep: orZero("priceStep", MONEY_AT_LEAST_0),
    taxName: text("taxName"),
    tax: orZero("tax", SHARE),
    deposit: orZero("deposit", DEPOSIT),
    validity: required("validity", DAYS),
    nextNumber: required("nextNumber", QUOTE_NUMBER),
  };
}

function label(key: RateKey): string {
  return RATE_ROWS[key].label;
}

function said(value: unknown): string {
  return typeof value === "string" ? value.trim().toLowerCase() : "";
}

function row(
  label: string,
  unit: string,
  start: string,
  note: string,
  shown: RateRow["shown"],
  words?: readonly string[],
): RateRow {
  return words ? { label, unit, start, note, shown, words } : { label, unit, start, note, shown };
}

import { CostingError, found } from "../exact/errors";
import { MONEY_AT_LEAST_0, type NumberRule, SHARE, SPOT_RULE, WHOLE_SHARE } from "../exact/numberrule";
import { Quotient } from "../exact/quotient";
import { perGram, type Rate } from "../gold/goldrate";
import { fieldsNamed } from "../reading/formfields";
import { readNumber } from "../reading/number";
import { YES_NO } from "../reading/orderwords";
import { accepted, field, orThrow, type Parsed, parseForm } from "../reading/parse";
import { readOptionalText } from "../reading/words";
import { TAX_DUE, type TaxDue } from "../trade/deposit";
import { COST_BASES, type CostBasis } from "../trade/landedcost";
import { readPlatingMetal } from "../trade/plating";
import { LOSS_BASES, type Loss, type LossBasis } from "../trade/polishloss";
import { PRICE_METHODS, type PriceMethod, type Pricing, pricingOf, RULE_OF } from "../trade/pricemethod";
import { TAX_IS } from "../trade/salestax";
import { type Currency, parseCurrency } from "../units/currency";
import { type Money, money } from "../units/money";
import { grams } from "../units/weight";
import { RATE_KEYS, RATE_ROWS, type RateKey } from "./raterows";

/** The workshop's rates, read and checked. */
export interface Rates {
  readonly workshop: string;
  readonly workshopContact: string;
  readonly currency: Currency;
  readonly spot: Money;
  /** Hours after which a spot is marked as old; undefined for never. */
  readonly spotAge: Quotient | undefined;
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
  /** Undefined where Rates leaves the cost of plating blank. */
  readonly plating: Money | undefined;
  /** What plated pieces are plated with; "" where Rates leaves it blank. */
  readonly platingMetal: string;
  /** Share of the stones broken in setting. */
  readonly breakage: Quotient;
  /** Share of the cost before it. */
  readonly overhead: Quotient;
  readonly pricing: Pricing;
  readonly leastMargin: Quotient;
  readonly priceStep: Quotient;
  readonly taxName: string;
  readonly tax: Quotient;
  /** Whether the prices shown hold the tax already. */
  readonly taxIncluded: boolean;
  readonly shippingTaxed: boolean;
  readonly deposit: Quotient;
  /** When the tax in a deposit is due; a blank is at delivery. */
  readonly taxDue: TaxDue;
  /** How far a finished weight may be from the one stated. */
  readonly tolerance: Quotient;
  /** Share of its melt value that a customer's own gold is credited with. */
  readonly ownGoldShare: Quotient;
  readonly validity: number;
  readonly nextNumber: number;
}

const LOSS_GRAMS: NumberRule = {
  least: "0",
  most: "100000",
  right: "the grams lost on a piece, such as 1.2",
};
const HOURS: NumberRule = { above: "0", most: "8784", right: "hours above 0, such as 24, or nothing for never" };
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
  const parsed = parseForm(shapeFor(record.priceBy, lowerCase(record.lossBasis) === "grams"), record);
  if (!parsed.ok) return parsed;
  const { loss, lossBasis, priceBy, taxIs, shippingTaxed, ...amounts } = parsed.value;
  const { currency } = amounts;
  const cash = (amount: Quotient) => money(amount, currency);
  const gram = (amount: Quotient) => perGram(amount, currency);
  return accepted({
    ...amounts,
    spot: cash(amounts.spot),
    castingFee: gram(amounts.castingFee),
    castingMinimum: cash(amounts.castingMinimum),
    loss: lossOf(loss, lossBasis),
    labourFlat: cash(amounts.labourFlat),
    labourPerLink: cash(amounts.labourPerLink),
    labourPerGram: gram(amounts.labourPerGram),
    labourMinimum: cash(amounts.labourMinimum),
    surcharge: gram(amounts.surcharge),
    settingFee: cash(amounts.settingFee),
    plating: amounts.plating && cash(amounts.plating),
    pricing: pricingIn(parsed.value),
    taxIncluded: taxIs === "in the price",
    shippingTaxed: shippingTaxed === "yes",
    validity: amounts.validity.toNumber(),
    nextNumber: amounts.nextNumber.toNumber(),
  });
}

/** The polishing loss of the Rates sheet alone, whatever its other rows hold. */
export function parseLoss(record: Readonly<Record<string, unknown>>): Parsed<Loss> {
  const parsed = parseForm(lossShape(lowerCase(record.lossBasis) === "grams"), record);
  return parsed.ok ? accepted(lossOf(parsed.value.loss, parsed.value.lossBasis)) : parsed;
}

/** How a piece is priced where its order does not say. */
export function pricingIn(
  read: Readonly<Record<PriceMethod, Quotient>> & { readonly priceBy: PriceMethod; readonly currency: Currency },
): Pricing {
  return pricingOf(read.priceBy, read[read.priceBy], read.currency);
}

function lossOf(loss: Quotient, basis: LossBasis): Loss {
  return Object.freeze(basis === "grams" ? { basis, weight: grams(loss) } : { basis, share: loss });
}

/** The row of the Rates sheet that bears a name, whatever its capitals and the spaces around it. */
export function rateKeyOf(name: unknown): RateKey | undefined {
  const said = String(name).trim().toLowerCase();
  return RATE_KEYS.find((key) => LABELS[key].toLowerCase() === said);
}

/**
 * What one row of the Rates sheet says, read as parseRates reads it: a word in its usual letters, a figure, a blank as what
 * counts in its place; "" where nothing does. Polish loss alone says nothing: it is a share or grams by another row.
 * Errors: unknownWord for another name; what the row is refused for.
 */
export function readRate(name: unknown, value: unknown): Quotient | string {
  const key = rateKeyOf(name);
  if (key === undefined || key === "loss") throw new CostingError("unknownWord", "rate", `${found(name)}; ${A_ROW}`);
  // A blank says nothing here: who asks is about to plate a piece.
  if (key === "plating") return readNumber(value, LABELS.plating, MONEY_AT_LEAST_0);
  const forms: Partial<Record<RateKey, Form>> = shapeFor(key, false);
  const form = forms[key];
  if (!form) return readOptionalText(value, LABELS[key]);
  const read = orThrow(parseForm({ [key]: form }, { [key]: value }))[key];
  return read instanceof Quotient || typeof read === "string" ? read : "";
}

type Form = ReturnType<typeof shape>[keyof ReturnType<typeof shape>];

const A_ROW = `give the name of a row of Rates besides ${RATE_ROWS.loss.label}, such as "${RATE_ROWS.tax.label}"`;

const LABELS = Object.fromEntries(RATE_KEYS.map((key) => [key, RATE_ROWS[key].label])) as Record<RateKey, string>;

/**
 * The form depends on two of its own fields: one shape for each way of pricing and each basis of the loss, made when first
 * needed.
 */
const SHAPES = new Map<string, ReturnType<typeof shape>>();

export function shapeFor(priceBy: unknown, inGrams: boolean) {
  const said = lowerCase(priceBy);
  const method = PRICE_METHODS.find((each) => each === said);
  const key = `${method} ${inGrams}`;
  const known = SHAPES.get(key) ?? shape(method, inGrams);
  SHAPES.set(key, known);
  return known;
}

function lossShape(inGrams: boolean) {
  const named = fieldsNamed(LABELS);
  return {
    loss: named.number("loss", inGrams ? LOSS_GRAMS : SHARE),
    lossBasis: named.word("lossBasis", LOSS_BASES),
  };
}

function shape(method: PriceMethod | undefined, inGrams: boolean) {
  const named = fieldsNamed(LABELS);
  const orZero = (key: RateKey, rule: NumberRule) => named.numberOr(key, rule, Quotient.zero);
  const chosen = (key: PriceMethod) => (method === key ? named.number(key, RULE_OF[key]) : field(() => Quotient.zero));
  return {
    workshop: named.optionalText("workshop"),
    workshopContact: named.optionalText("workshopContact"),
    currency: field((value) => parseCurrency(value, LABELS.currency)),
    spot: named.number("spot", SPOT_RULE),
    spotAge: named.optional("spotAge", HOURS),
    castingFee: named.number("castingFee", MONEY_AT_LEAST_0),
    castingMinimum: orZero("castingMinimum", MONEY_AT_LEAST_0),
    ...lossShape(inGrams),
    costBasis: named.word("costBasis", COST_BASES),
    labourFlat: orZero("labourFlat", MONEY_AT_LEAST_0),
    labourPerLink: orZero("labourPerLink", MONEY_AT_LEAST_0),
    labourPerGram: orZero("labourPerGram", MONEY_AT_LEAST_0),
    labourMinimum: orZero("labourMinimum", MONEY_AT_LEAST_0),
    surcharge: named.number("surcharge", MONEY_AT_LEAST_0),
    settingFee: orZero("settingFee", MONEY_AT_LEAST_0),
    breakage: orZero("breakage", SHARE),
    plating: named.optional("plating", MONEY_AT_LEAST_0),
    platingMetal: field((value) => readPlatingMetal(value, LABELS.platingMetal)),
    overhead: orZero("overhead", WHOLE_SHARE),
    priceBy: named.word("priceBy", PRICE_METHODS),
    markup: chosen("markup"),
    margin: chosen("margin"),
    premium: chosen("premium"),
    leastMargin: orZero("leastMargin", SHARE),
    priceStep: orZero("priceStep", MONEY_AT_LEAST_0),
    taxName: named.optionalText("taxName"),
    tax: orZero("tax", SHARE),
    taxIs: named.wordOr("taxIs", TAX_IS, "on top"),
    shippingTaxed: named.wordOr("shippingTaxed", YES_NO, "no"),
    deposit: orZero("deposit", WHOLE_SHARE),
    taxDue: named.wordOr("taxDue", TAX_DUE, "at delivery"),
    tolerance: orZero("tolerance", SHARE),
    ownGoldShare: named.numberOr("ownGoldShare", WHOLE_SHARE, Quotient.one),
    validity: named.number("validity", DAYS),
    nextNumber: named.number("nextNumber", QUOTE_NUMBER),
  };
}

function lowerCase(value: unknown): string {
  return typeof value === "string" ? value.trim().toLowerCase() : "";
}

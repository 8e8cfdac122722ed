import { YES_NO } from "../reading/orderwords";
import { TAX_DUE } from "../trade/deposit";
import { COST_BASES } from "../trade/landedcost";
import { LOSS_BASES } from "../trade/polishloss";
import { PRICE_METHODS } from "../trade/pricemethod";
import { TAX_IS } from "../trade/salestax";

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
  spotAge: row(
    "Spot is old after",
    "hours",
    "24",
    "An older spot is marked here and in the pane; empty: never",
    "number",
  ),
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
  labourPerGram: row(
    "Labour per gram",
    "money per finished gram of links",
    "0",
    "The links alone; a clasp is not counted, cast or bought",
    "money",
  ),
  labourMinimum: row("Labour minimum", "money per piece", "0", "", "money"),
  settingFee: row("Setting fee", "money per stone", "1", "", "money"),
  breakage: row("Stone breakage", "share of the stones", "0", "Stones broken in setting, at your cost", "share"),
  plating: row("Plating", "money per piece", "", "Needed when a piece is plated; white gold normally is", "money"),
  platingMetal: row("Plating metal", "word", "rhodium", "Printed on quotes and tickets; start: rhodium.", "text"),
  overhead: row("Overhead", "share of the cost before it", "0", "Rent, tools, time at the desk", "share"),
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
  tax: row("Tax", "share", "0", "Ask your tax adviser which rate applies", "share"),
  taxIs: row(
    "Tax is",
    "",
    "on top",
    "on top of the price, or in the price: then prices are shown with it",
    "word",
    TAX_IS,
  ),
  shippingTaxed: row("Shipping taxed", "", "no", "Ask your tax adviser; no where it is not", "word", YES_NO),
  deposit: row(
    "Deposit",
    "share of the total",
    "0.50",
    "More where the cash that goes out is more, in steps of 5 %; 0 for none",
    "share",
  ),
  taxDue: row(
    "Tax in the deposit is due",
    "",
    "at delivery",
    "with the deposit: then that tax covers none of your costs; empty: at delivery. Ask your tax adviser",
    "word",
    TAX_DUE,
  ),
  tolerance: row(
    "Weight tolerance",
    "share (0.05 is 5 %)",
    "0.05",
    "How far a finished weight may be from the one stated on the quote",
    "share",
  ),
  ownGoldShare: row(
    "Customer's gold credited at",
    "share of its melt value",
    "0.95",
    "What refining it leaves you; empty for all of it",
    "share",
  ),
  validity: row("Quote valid for", "days", "7", "Spot moves; a quote ends", "number"),
  nextNumber: row("Next quote number", "", "1001", "Counts up by itself", "number"),
} as const satisfies Record<string, RateRow>;

export type RateKey = keyof typeof RATE_ROWS;
export const RATE_KEYS = Object.keys(RATE_ROWS) as readonly RateKey[];

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

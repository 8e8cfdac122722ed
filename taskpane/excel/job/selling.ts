import { type CostSheet, minorDigits, type Order, type Pricing, type QuoteLine, type Rates } from "../../../src/index";
import { nameOf } from "../rates/rates";
import { rateIs, rateSays } from "../rates/ratewords";
import { costAt } from "./costs";
import { cents, SCALE, SHARE, TAX_TODAY, taxQuoted } from "./figures";
import { entry, formula, type JobRow, type Ref, section } from "./row";

/** The price of one piece: as quoted, and what it would be at the rates as they stand. */
export function selling(sheet: CostSheet, order: Order, quoted: QuoteLine, rates: Rates): JobRow[] {
  const { line, pricing, price } = sheet;
  const money = cents(rates);
  const follows = line.pricing === undefined && isOnRates(order.pricing, rates.pricing);
  return [
    section("Price of one piece"),
    ...(follows ? pricedAsRates() : pricedByHand(pricing, money)),
    formula("asked", "Asked, before tax and step", (at) => askedFor(sheet, at), rates.currency, money),
    formula(
      "priceNow",
      "Price at today's rates",
      (at) => priceOf(sheet, at, `${TAX_TODAY},${nameOf("priceStep")},${minorDigits(rates.currency)}`),
      rates.currency,
      money,
    ),
    entry("quoted", "Quoted", price.amount.toNumber(), rates.currency, "plain", money),
    formula(
      "net",
      "Quoted, less discount and tax",
      (at) => `CURB.NETPRICE(${at("quoted")},${taxQuoted(at)},${at("discount")})`,
      rates.currency,
      money,
    ),
    formula(
      "margin",
      "Margin",
      (at) => `IF(${at("net")}>0,CURB.MARGIN(${at("landed")},${at("net")}),"")`,
      "",
      "0.0%",
      "total",
    ),
    formula(
      "premium",
      "Premium over the metal rate",
      (at) => `CURB.PREMIUM(${at("net")}/${at("finished")},${at("metalRate")})`,
      "a gram",
      money,
    ),
    formula(
      "floor",
      "Floor",
      (at) => `CURB.PRICEATMARGIN(${at("landed")},${rateSays("leastMargin")})`,
      "landed cost at the least margin, without tax",
      money,
    ),
    ...settling(sheet, quoted, order, money),
  ];
}

function isOnRates(pricing: Pricing, onRates: Pricing): boolean {
  return pricing.by === onRates.by && figureIn(pricing).equals(figureIn(onRates));
}

function figureIn(pricing: Pricing) {
  if (pricing.by === "premium") return pricing.rate.perGram;
  return pricing.by === "own price" ? pricing.price.amount : pricing.share;
}

const UNITS: Readonly<Record<Pricing["by"], string>> = {
  markup: "share of landed cost",
  margin: "share of the price",
  premium: "a gram, over the metal rate",
  "own price": "as it is shown",
};

function pricedAsRates(): JobRow[] {
  const is = (method: "markup" | "margin") => rateIs("priceBy", method);
  const choose = (written: (method: "markup" | "margin" | "premium") => string) =>
    `IF(${is("markup")},${written("markup")},IF(${is("margin")},${written("margin")},${written("premium")}))`;
  return [
    formula("priceBy", "Priced by", () => rateSays("priceBy"), "from Rates", "General"),
    formula(
      "priceFigure",
      "Its figure",
      () => choose(rateSays),
      `=${choose((method) => `"${UNITS[method]}"`)}`,
      "General",
    ),
  ];
}

function pricedByHand(pricing: Pricing, money: string): JobRow[] {
  const format = pricing.by === "markup" || pricing.by === "margin" ? SHARE : money;
  return [
    entry("priceBy", "Priced by", pricing.by, "markup, margin, premium or own price", "input"),
    entry("priceFigure", "Its figure", figureIn(pricing).toNumber(), UNITS[pricing.by], "input", format),
  ];
}

/** What the method asks for one piece; an own price is what the customer reads, so its tax is taken out first. */
function askedFor(sheet: CostSheet, at: Ref): string {
  const own = `CURB.NETPRICE(${at("priceFigure")},${taxQuoted(at)})`;
  return `IF(TRIM(${at("priceBy")})="own price",${own},${priceOf(sheet, at, '0,""')})`;
}

/** The price of one piece by the method and the figure above. @param ending its tax, and what it is rounded to */
function priceOf(sheet: CostSheet, at: Ref, ending: string): string {
  const cost = costAt(sheet, at);
  const part = (weight: string, key: "clasp" | "findings") =>
    `CURB.PARTATPREMIUM(${at(weight)},${at("metalRate")},${at("priceFigure")},${cost(key)})`;
  const apart = [
    part("claspWeight", "clasp"),
    part("findingsWeight", "findings"),
    ...(["stones", "setting", "engraving", "plating"] as const).map(cost),
  ];
  const given = [at("landed"), apart.join("+"), at("priceBy"), at("priceFigure"), at("chain"), at("metalRate")];
  return `CURB.SELLINGPRICE(${[...given, ending].join(",")})`;
}

/** What the customer was told of a price that follows the final weight. */
function settling({ line }: CostSheet, quoted: QuoteLine, order: Order, money: string): JobRow[] {
  if (!quoted.perGram) return [];
  return [
    entry(
      "statedWeight",
      "Weight stated",
      quoted.weight.toNumber(),
      line.stones.length > 0 ? "g, without stones" : "g",
      "plain",
      SCALE,
    ),
    entry(
      "settlingRate",
      "A gram more or less",
      quoted.perGram.amount.toNumber(),
      `on the price${beforeDiscount(order)}`,
      "plain",
      money,
    ),
  ];
}

/** Prices on the job are those of the quote's lines, of which the discount comes off at the end. */
export function beforeDiscount({ discount }: Order): string {
  return !discount.isZero() ? ", before the discount" : "";
}

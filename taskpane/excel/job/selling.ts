import { type CostSheet, minorDigits, type Order, type Pricing, type QuoteLine, type Rates } from "../../../src/index";
import { nameOf } from "../rates/rates";
import { costAt } from "./costs";
import { cents, figureOf, SHARE } from "./figures";
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
    formula("priceNow", "Price at today's rates", (at) => priceNow(at, rates), rates.currency, money),
    entry("quoted", "Quoted", price.amount.toNumber(), rates.currency, "plain", money),
    formula(
      "net",
      "Quoted, less discount and tax",
      (at) => `${at("quoted")}*(1-${at("discount")})/(1+${at("taxHeld")})`,
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
      (at) => `CURB.PRICEATMARGIN(${at("landed")},${figureOf("leastMargin")})`,
      "landed cost at the least margin, without tax",
      money,
    ),
    ...settling(quoted, order, money),
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
  const by = nameOf("priceBy");
  const choose = (written: (method: "markup" | "margin" | "premium") => string) =>
    `IF(${by}="markup",${written("markup")},IF(${by}="margin",${written("margin")},${written("premium")}))`;
  return [
    formula("priceBy", "Priced by", () => by, "from Rates", "General"),
    formula(
      "priceFigure",
      "Its figure",
      () => choose((method) => nameOf(method)),
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
  const cost = costAt(sheet, at);
  const [by, figure, landed] = [at("priceBy"), at("priceFigure"), at("landed")];
  const premium = (weight: string, key: "clasp" | "findings") =>
    `MAX(${at(weight)}*(${at("metalRate")}+${figure}),${cost(key)})`;
  const parts = [
    `CURB.PRICEATPREMIUM(${at("chain")},${at("metalRate")},${figure})`,
    premium("claspWeight", "clasp"),
    premium("findingsWeight", "findings"),
    ...(["stones", "setting", "engraving", "plating"] as const).map(cost),
  ];
  return (
    `IF(${by}="markup",CURB.PRICEATMARKUP(${landed},${figure}),` +
    `IF(${by}="margin",CURB.PRICEATMARGIN(${landed},${figure}),` +
    `IF(${by}="premium",${parts.join("+")},IF(${by}="own price",${figure}/(1+${at("taxHeld")}),NA()))))`
  );
}

/** The price with its tax where shown prices hold it, up to the price step; an own price stands as it was set. */
function priceNow(at: Ref, { currency }: Rates): string {
  const digits = minorDigits(currency);
  const step = `MAX(${figureOf("priceStep")},${10 ** -digits})`;
  const shown = `ROUND(${at("asked")}*(1+${at("taxHeld")}),8)`;
  return (
    `IF(${at("priceBy")}="own price",ROUND(${at("priceFigure")},${digits}),` +
    `CURB.PRICEATMARKUP(${shown},0,${step},${digits}))`
  );
}

/** What the customer was told of a price that follows the final weight. */
function settling(quoted: QuoteLine, order: Order, money: string): JobRow[] {
  if (!quoted.perGram) return [];
  return [
    entry("statedWeight", "Weight stated", quoted.weight.toNumber(), "g", "plain", "#,##0.0"),
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

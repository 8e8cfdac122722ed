import { minorDigits, type Quotient, type RateKey, type Rates } from "../../../src/index";
import { nameOf } from "../rates/rates";
import { rateSays } from "../rates/ratewords";
import { numberFormat } from "../template/fields";
import type { Ref } from "./row";

/** Number formats of a job sheet. */
export const GRAMS = "#,##0.00##";
/** As a scale of a workshop shows it. */
export const SCALE = "#,##0.00";
export const COUNT = "#,##0";
export const SHARE = "0.0#%";

/** The number format of money. */
export function cents({ currency }: Rates): string {
  return numberFormat(minorDigits(currency));
}

/** How tax stands to a price today: what SELLINGPRICE takes for a price at today's rates. */
export const TAX_TODAY = `${nameOf("tax")},${nameOf("taxIs")}`;
/** How tax stands to the amounts that were quoted: what NETPRICE and SALESTAX take them apart with, whatever Rates say since. */
export function taxQuoted(at: Ref): string {
  return `${at("taxQuoted")},${at("taxIsQuoted")}`;
}
export function isTaxHeld(at: Ref): string {
  return `${at("taxIsQuoted")}="in the price"`;
}
/** An amount of shipping where its tax was quoted too, else nothing. */
export function taxedShipping(at: Ref): string {
  return `IF(${at("shippingTaxedQuoted")}="yes",${at("shipping")},0)`;
}
/** What polishing takes, and how it is counted and charged: what LOSTWEIGHT and CHARGEDWEIGHT take. */
export const LOSS = [nameOf("loss"), nameOf("lossBasis"), nameOf("costBasis")].join(",");

/** A figure of the order that is Rates' own stays with Rates; another stands as it is. */
export function unlessOnRates(figure: Quotient, key: Exclude<RateKey, "loss">, onRates: Quotient): string | number {
  return figure.equals(onRates) ? `=${rateSays(key)}` : figure.toNumber();
}

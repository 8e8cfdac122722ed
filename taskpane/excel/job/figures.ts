import { minorDigits, type Quotient, type RateKey, type Rates } from "../../../src/index";
import { nameOf } from "../rates/rates";
import { rateSays } from "../rates/ratewords";
import { numberFormat } from "../template/fields";

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

/** How tax stands to a price, as Rates tell it: what NETPRICE, SALESTAX and SELLINGPRICE take. */
export const TAX = `${nameOf("tax")},${nameOf("taxIs")}`;
/** What polishing takes, and how it is counted and charged: what LOSTWEIGHT and CHARGEDWEIGHT take. */
export const LOSS = [nameOf("loss"), nameOf("lossBasis"), nameOf("costBasis")].join(",");

/** A figure of the order that is Rates' own stays with Rates; another stands as it is. */
export function unlessOnRates(figure: Quotient, key: Exclude<RateKey, "loss">, onRates: Quotient): string | number {
  return figure.equals(onRates) ? `=${rateSays(key)}` : figure.toNumber();
}

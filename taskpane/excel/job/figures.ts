import { minorDigits, type Quotient, type RateKey, type Rates } from "../../../src/index";
import { nameOf } from "../rates/rates";
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

/** A rate that may be left blank, as a figure; a number kept as text counts as in the pane. */
export function figureOf(key: RateKey): string {
  return `IF(${nameOf(key)}="",0,1*${nameOf(key)})`;
}

/** A figure of the order that is Rates' own stays with Rates; another stands as it is. */
export function unlessOnRates(figure: Quotient, key: RateKey, onRates: Quotient): string | number {
  return figure.equals(onRates) ? `=${figureOf(key)}` : figure.toNumber();
}

export const IS_QUICK = `${nameOf("costBasis")}="quick"`;

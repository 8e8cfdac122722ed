import { CostingError } from "../exact/errors";
import { type Currency, parseCurrency } from "./currency";

/** An amount as sellers write it: the figure, and the currency or the sign of money beside it. */
export interface MoneyText {
  readonly figure: unknown;
  readonly currency: Currency | undefined;
  /** A sign such as "$", which may be many currencies'. */
  readonly sign: string | undefined;
}

/** The most common currencies of each sign. Common practice; ISO 4217 has no signs. */
const CURRENCIES_OF_SIGN: Readonly<Record<string, readonly Currency[]>> = {
  "€": ["EUR"],
  "£": ["GBP", "EGP", "FKP", "GIP", "SHP"],
  $: [
    "USD",
    "AUD",
    "BRL",
    "CAD",
    "CLP",
    "COP",
    "HKD",
    "MXN",
    "NZD",
    "SGD",
    "TTD",
    "TWD",
    "XCD",
    "ARS",
    "JMD",
    "BSD",
    "BBD",
  ],
  "¥": ["JPY", "CNY"],
  "₹": ["INR"],
  "₺": ["TRY"],
};

const CODE_BEFORE = /^([A-Za-z]{3})\s*(?=[\d.,'’+-])(.*)$/;
const CODE_BEHIND = /^(.*\d[.,]?)\s*([A-Za-z]{3})$/;
const SIGN = /[€£$¥₹₺]/;

/** Takes "EUR 1200", "1200 EUR", "€1,200", "US$ 1200" apart; any other text counts as the figure. */
export function splitMoney(value: unknown): MoneyText {
  if (typeof value !== "string") return { figure: value, currency: undefined, sign: undefined };
  const text = value.trim();
  const sign = SIGN.exec(text)?.[0];
  if (sign) {
    const currency = /^us\s*\$/i.test(text) ? "USD" : undefined;
    const figure = text
      .replace(/^us\s*(?=\$)/i, "")
      .replace(sign, "")
      .trim();
    return { figure, currency, sign: currency ? undefined : sign };
  }
  const [, first, behind] = CODE_BEFORE.exec(text) ?? [];
  const [, before, last] = CODE_BEHIND.exec(text) ?? [];
  const currency = currencyOf(first ?? last);
  return currency
    ? { figure: (behind ?? before)?.trim(), currency, sign: undefined }
    : { figure: value, currency, sign };
}

/** The currencies that a sign of money may mean. */
export function currenciesOf(sign: string): readonly Currency[] {
  return CURRENCIES_OF_SIGN[sign] ?? [];
}

function currencyOf(code: string | undefined): Currency | undefined {
  if (code === undefined) return undefined;
  try {
    return parseCurrency(code);
  } catch (error) {
    if (error instanceof CostingError) return undefined;
    throw error;
  }
}

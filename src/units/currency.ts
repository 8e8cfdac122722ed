import { CostingError, found } from "../exact/errors";
import { isBlank } from "../reading/number";

/**
 * Currencies by the digits of their minor unit. Source: ISO 4217 list one, published 2024-06-25 (checked in tests against
 * the list's XML). Metals and funds without a minor unit are not in it: ounces of gold are not a currency.
 */
const ZERO_DIGITS = [
  "BIF",
  "CLP",
  "DJF",
  "GNF",
  "ISK",
  "JPY",
  "KMF",
  "KRW",
  "PYG",
  "RWF",
  "UGX",
  "UYI",
  "VND",
  "VUV",
  "XAF",
  "XOF",
  "XPF",
] as const;
const TWO_DIGITS = [
  "AED",
  "AFN",
  "ALL",
  "AMD",
  "ANG",
  "AOA",
  "ARS",
  "AUD",
  "AWG",
  "AZN",
  "BAM",
  "BBD",
  "BDT",
  "BGN",
  "BMD",
  "BND",
  "BOB",
  "BOV",
  "BRL",
  "BSD",
  "BTN",
  "BWP",
  "BYN",
  "BZD",
  "CAD",
  "CDF",
  "CHE",
  "CHF",
  "CHW",
  "CNY",
  "COP",
  "COU",
  "CRC",
  "CUC",
  "CUP",
  "CVE",
  "CZK",
  "DKK",
  "DOP",
  "DZD",
  "EGP",
  "ERN",
  "ETB",
  "EUR",
  "FJD",
  "FKP",
  "GBP",
  "GEL",
  "GHS",
  "GIP",
  "GMD",
  "GTQ",
  "GYD",
  "HKD",
  "HNL",
  "HTG",
  "HUF",
  "IDR",
  "ILS",
  "INR",
  "IRR",
  "JMD",
  "KES",
  "KGS",
  "KHR",
  "KPW",
  "KYD",
  "KZT",
  "LAK",
  "LBP",
  "LKR",
  "LRD",
  "LSL",
  "MAD",
  "MDL",
  "MGA",
  "MKD",
  "MMK",
  "MNT",
  "MOP",
  "MRU",
  "MUR",
  "MVR",
  "MWK",
  "MXN",
  "MXV",
  "MYR",
  "MZN",
  "NAD",
  "NGN",
  "NIO",
  "NOK",
  "NPR",
  "NZD",
  "PAB",
  "PEN",
  "PGK",
  "PHP",
  "PKR",
  "PLN",
  "QAR",
  "RON",
  "RSD",
  "RUB",
  "SAR",
  "SBD",
  "SCR",
  "SDG",
  "SEK",
  "SGD",
  "SHP",
  "SLE",
  "SOS",
  "SRD",
  "SSP",
  "STN",
  "SVC",
  "SYP",
  "SZL",
  "THB",
  "TJS",
  "TMT",
  "TOP",
  "TRY",
  "TTD",
  "TWD",
  "TZS",
  "UAH",
  "USD",
  "USN",
  "UYU",
  "UZS",
  "VED",
  "VES",
  "WST",
  "XCD",
  "YER",
  "ZAR",
  "ZMW",
  "ZWG",
] as const;
const THREE_DIGITS = ["BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"] as const;
const FOUR_DIGITS = ["CLF", "UYW"] as const;

/** ISO 4217's own code for "no currency": amounts in worksheet cells carry none. */
export const NO_CURRENCY = "XXX";

export type Currency =
  | (typeof ZERO_DIGITS)[number]
  | (typeof TWO_DIGITS)[number]
  | (typeof THREE_DIGITS)[number]
  | (typeof FOUR_DIGITS)[number]
  | typeof NO_CURRENCY;

const DIGITS: ReadonlyMap<string, number> = new Map(
  [ZERO_DIGITS, TWO_DIGITS, THREE_DIGITS, FOUR_DIGITS].flatMap((codes, index) =>
    codes.map((code) => [code, [0, 2, 3, 4][index] ?? 2]),
  ),
);

/** Digits after the point in the currency's minor unit: 2 for USD, 0 for JPY, 3 for KWD. */
export function minorDigits(currency: Currency): number {
  const digits = DIGITS.get(currency);
  if (digits === undefined) throw new Error(`${currency} has no minor unit to round to`);
  return digits;
}

/** Reads a currency's three letters. Errors: blank, unknownWord. */
export function parseCurrency(value: unknown, field = "currency"): Currency {
  const right = 'give the three letters of ISO 4217, such as "USD" or "EUR"';
  if (isBlank(value)) throw new CostingError("blank", field, `found nothing; ${right}`);
  const code = typeof value === "string" ? value.trim().toUpperCase() : "";
  if (!isCurrency(code))
    throw new CostingError("unknownWord", field, `${found(value)}, which is no currency; ${right}`);
  return code;
}

function isCurrency(code: string): code is Exclude<Currency, typeof NO_CURRENCY> {
  return DIGITS.has(code);
}

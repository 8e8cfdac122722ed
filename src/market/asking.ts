import { CostingError, found } from "../exact/errors";
import type { NumberRule } from "../exact/numberrule";
import { Quotient } from "../exact/quotient";
import { costOf } from "../gold/goldrate";
import { type Mark, parseMark } from "../gold/mark";
import { LINE_LABELS } from "../order/fields";
import { fieldsNamed } from "../reading/formfields";
import { isBlank, readNumber } from "../reading/number";
import { SOLIDITIES } from "../reading/orderwords";
import { accepted, attempt, faultOf, faultsOf, field, type Parsed, parseForm, refused } from "../reading/parse";
import { type AskingCheck, askingCheck } from "../trade/price";
import { type Currency, parseCurrency } from "../units/currency";
import { type Money, money } from "../units/money";
import { currenciesOf, splitMoney } from "../units/moneytext";
import type { Weight } from "../units/weight";
import { readAskedWeight, twoUnitsSentence, unitsOfWord, unitWeight } from "./askedunit";

/** What a price is asked for: the whole piece, or one of a unit of its weight. */
export const ASKED_PER = ["piece", "g", "dwt", "ozt", "oz av"] as const;
export type AskedPer = (typeof ASKED_PER)[number];

export const ASKING_LABELS = {
  price: "Asked price",
  weight: "Weight",
  mark: LINE_LABELS.mark,
  per: "Asked for",
  currency: "Currency",
  exchange: "Rate of exchange",
  solidity: LINE_LABELS.solidity,
  kind: "Kind of chain",
} as const;
export type AskingKey = keyof typeof ASKING_LABELS;

/** Somebody else's price for a piece of gold chain. */
export interface Asking {
  /** The figure as asked, in its own currency. */
  readonly price: Quotient;
  readonly currency: Currency;
  /** How much of the workbook's currency one unit of it costs; 1 where they are the same. */
  readonly exchange: Quotient;
  readonly own: Currency;
  readonly per: AskedPer;
  /** Undefined where it is not said; then the price must be by weight. */
  readonly weight: Weight | undefined;
  readonly mark: Mark;
  /** Undefined where it is not said. */
  readonly hollow: boolean | undefined;
  readonly kind: string;
}

const PRICE: NumberRule = { above: "0", most: "1000000000000", right: "the price asked, above 0, such as 1360" };
const EXCHANGE: NumberRule = { above: "0", most: "1000000000", right: "a rate above 0, such as 1.08" };

const named = fieldsNamed(ASKING_LABELS);
const FIELDS = {
  price: field(readPrice),
  per: field((value) => readPer(value, ASKING_LABELS.per)),
  mark: field((value) => parseMark(value, ASKING_LABELS.mark)),
  solidity: named.optionalWord("solidity", SOLIDITIES),
  kind: named.optionalText("kind"),
};

/**
 * Reads an asking price, or every fault in it. A blank currency is the workbook's own; another one needs its rate of exchange,
 * which is never assumed.
 * @param own the workbook's currency
 */
export function parseAsking(record: Readonly<Record<string, unknown>>, own: Currency): Parsed<Asking> {
  const read = parseForm(FIELDS, record);
  const weight = attempt("weight", () => readWeight(record));
  const paid = readCurrency(record, own);
  if (!read.ok || !weight.ok || !paid.ok) return refused(faultsOf(read, weight, paid));
  const { price, per, mark, solidity, kind } = read.value;
  return accepted({
    price,
    ...paid.value,
    own,
    per,
    weight: weight.value.weight,
    mark,
    hollow: solidity && solidity === "hollow",
    kind,
  });
}

/** An asking price compared with the metal in the piece, per gram; and for the whole piece where its weight is known. */
export interface PriceCheck extends AskingCheck {
  readonly askedForAll: Money | undefined;
  readonly meltForAll: Money | undefined;
}

/** Compares an asking price with the metal rate. Exact. @param spot money per troy ounce, in the workbook's currency */
export function checkAsking(asking: Asking, spot: Money, landed?: Parameters<typeof askingCheck>[4]): PriceCheck {
  const { weight, mark, per } = asking;
  const counted = per === "piece" ? weight : unitWeight(per);
  if (!counted) throw new Error("A price for the piece was read without a weight");
  const check = askingCheck(askedInOwn(asking), counted, mark, spot, landed);
  return Object.freeze({
    ...check,
    askedForAll: weight && costOf(weight, check.asked),
    meltForAll: weight && costOf(weight, check.melt),
  });
}

/** The figure asked, in the workbook's own currency. */
export function askedInOwn({ price, exchange, own }: Asking): Money {
  return money(price.times(exchange), own);
}

/**
 * The currency that a price or the field beside it names, as far as it can be read. It shows whether a rate of exchange is
 * needed.
 */
export function currencyNamed(price: unknown, currency: unknown, own: Currency): Currency {
  const read = attempt("currency", () => namedCurrency(price, currency, own));
  return read.ok ? read.value : own;
}

function readPrice(value: unknown): Quotient {
  return readNumber(splitMoney(value).figure, ASKING_LABELS.price, PRICE);
}

/** What a price is asked for; a blank means the piece. Errors: unknownWord, also for an ounce of which kind is not said. */
export function readPer(value: unknown, label: string): AskedPer {
  if (isBlank(value)) return "piece";
  const said = String(value).trim();
  const word = said.replace(/^(?:a|an|the|per|each|whole)\s+/i, "").replace(/^whole\s+/i, "");
  if (/^(?:piece|pieces|pc|pcs|each|item|chain|bracelet|all)\.?$/i.test(word)) return "piece";
  const [unit, other] = unitsOfWord(word);
  if (unit && other)
    throw new CostingError("unknownWord", label, `${found(said)}, ${twoUnitsSentence(word, "", unit, other)}`);
  const per = ASKED_PER.find((each) => each === unit);
  if (per) return per;
  const right = ASKED_PER.map((each) => `"${each}"`).join(", ");
  throw new CostingError("unknownWord", label, `${found(said)}; give one of ${right}`);
}

/** A price for the piece needs the weight of the piece. */
function readWeight({ weight, per }: Readonly<Record<string, unknown>>): { readonly weight: Weight | undefined } {
  const byWeight = attempt("per", () => readPer(per, ASKING_LABELS.per));
  const optional = byWeight.ok && byWeight.value !== "piece" && isBlank(weight);
  return { weight: optional ? undefined : readAskedWeight(weight, ASKING_LABELS.weight) };
}

function readCurrency(
  { price, currency, exchange }: Readonly<Record<string, unknown>>,
  own: Currency,
): Parsed<Pick<Asking, "currency" | "exchange">> {
  const paid = attempt("currency", () => ({ currency: namedCurrency(price, currency, own) }));
  if (!paid.ok) return paid;
  const label = ASKING_LABELS.exchange;
  const theirs = paid.value.currency;
  if (theirs !== own) {
    if (isBlank(exchange)) {
      const said = `found nothing; give how many ${own} one ${theirs} costs, such as 1.08: it is never assumed`;
      return refused([faultOf("exchange", label, "blank", said)]);
    }
    return attempt("exchange", () => ({ currency: theirs, exchange: readNumber(exchange, label, EXCHANGE) }));
  }
  if (isBlank(exchange)) return accepted({ currency: own, exchange: Quotient.one });
  return attempt("exchange", () => {
    const rate = readNumber(exchange, label, EXCHANGE);
    if (rate.equals(Quotient.one)) return { currency: own, exchange: rate };
    throw new CostingError(
      "outOfRange",
      label,
      `${found(exchange)} beside a price in ${own}, the workbook's own; empty it`,
    );
  });
}

function namedCurrency(price: unknown, given: unknown, own: Currency): Currency {
  const label = ASKING_LABELS.currency;
  const { currency: inPrice, sign } = splitMoney(price);
  const said = isBlank(given) ? undefined : parseCurrency(given, label);
  if (inPrice && said && inPrice !== said) {
    throw new CostingError("currencyMismatch", label, `found ${said} beside a price in ${inPrice}; give one of them`);
  }
  if (sign === undefined) return inPrice ?? said ?? own;
  const may = currenciesOf(sign);
  const fits = [said, own].find((each) => each && may.includes(each));
  if (said && fits !== said) {
    throw new CostingError("currencyMismatch", label, `found ${said} beside a price with ${sign}; give one of them`);
  }
  if (fits) return fits;
  if (may[0] && may.length === 1) return may[0];
  throw new CostingError(
    "currencyMismatch",
    label,
    `found ${sign}, which is the sign of several currencies; give the three letters of the one that is meant, such as ${may[0] ?? "USD"}`,
  );
}

import { CostingError, found } from "../exact/errors";
import { MONEY_AT_LEAST_0, type NumberRule } from "../exact/numberrule";
import { Quotient } from "../exact/quotient";
import { perGram, type Rate } from "../gold/goldrate";
import { type Mark, parseMark } from "../gold/mark";
import { fieldsNamed } from "../reading/formfields";
import { isBlank, readNumber } from "../reading/number";
import { accepted, attempt, faultsOf, field, type Parsed, parseForm, refused } from "../reading/parse";
import { type Currency, NO_CURRENCY, parseCurrency } from "../units/currency";
import { type Money, money } from "../units/money";
import { GRAMS_PER, grams, type Weight, type WeightUnit, weightIn } from "../units/weight";

/** The columns of a makers' price list, with their headers. */
export const MAKER_LABELS = {
  maker: "Maker",
  mark: "Mark",
  from: "From g",
  surcharge: "Surcharge per g",
  currency: "Currency",
  minimum: "Minimum order",
  minimumIn: "Minimum in",
  lead: "Lead time",
  date: "Date",
  note: "Note",
} as const;
export type MakerKey = keyof typeof MAKER_LABELS;
export const MAKER_KEYS = Object.keys(MAKER_LABELS) as readonly MakerKey[];

/** Units a minimum may be counted in, besides money. An ounce must be named as a troy ounce. */
export const MINIMUM_UNITS = ["g", "kg", "dwt", "ozt"] as const satisfies readonly WeightUnit[];
/** In place of a mark: the maker's price is the same for every mark. */
export const EVERY_MARK = "all";
const MONEY = "money";

/** The least that a maker sells at once. */
export type MinimumOrder =
  | { readonly kind: "weight"; readonly weight: Weight }
  | { readonly kind: "money"; readonly money: Money };

/** One class of a maker's price list: what is added to the metal rate for chains from a weight on. */
export interface MakerOffer {
  readonly maker: string;
  /** Undefined where it is for every mark. */
  readonly mark: Mark | undefined;
  /** The lightest chain it is for. */
  readonly from: Weight;
  readonly surcharge: Rate;
  readonly minimum: MinimumOrder | undefined;
  readonly lead: string;
  readonly note: string;
}

const FROM: NumberRule = { least: "0", most: "100000", right: "grams of one chain from 0, such as 20" };
const SURCHARGE: NumberRule = {
  ...MONEY_AT_LEAST_0,
  right: "what the maker adds to the metal rate, money per gram from 0, such as 3.25",
};
const MINIMUM: NumberRule = { least: "0", most: "1000000000", right: "the least the maker sells at once, such as 100" };
const MARK_RIGHT = `give a mark such as "14K" or 585, or "${EVERY_MARK}" where the price is the same for every mark`;
const UNIT_RIGHT = `give ${MINIMUM_UNITS.join(", ")} or "${MONEY}"`;

const named = fieldsNamed(MAKER_LABELS);
const SHAPE = {
  maker: named.text("maker", "the maker's name"),
  mark: field(readMakerMark),
  from: named.numberOr("from", FROM, Quotient.zero),
  surcharge: named.number("surcharge", SURCHARGE),
  minimum: named.numberOr("minimum", MINIMUM, Quotient.zero),
  lead: named.optionalText("lead"),
  note: named.optionalText("note"),
};

/**
 * Reads one row of a makers' price list; gathers the faults of all its fields.
 * Errors: currencyMismatch for another currency than the workbook's: we never convert one.
 * @param currency the workbook's; NO_CURRENCY takes the amounts as they are
 */
export function parseMakerOffer(record: Readonly<Record<string, unknown>>, currency: Currency): Parsed<MakerOffer> {
  const read = parseForm(SHAPE, record);
  const ownCurrency = attempt("currency", () => {
    if (!isBlank(record.currency)) sameAsWorkbook(record.currency, MAKER_LABELS.currency, currency);
    return {};
  });
  const minimum = attempt("minimumIn", () => ({ minimum: readMinimum(record, currency) }));
  if (!read.ok || !ownCurrency.ok || !minimum.ok) return refused(faultsOf(read, ownCurrency, minimum));
  const { maker, mark, from, surcharge, lead, note } = read.value;
  return accepted({
    maker,
    mark,
    from: grams(from),
    surcharge: perGram(surcharge, currency),
    minimum: minimum.value.minimum,
    lead,
    note,
  });
}

/** A mark, or undefined for every mark. Errors: blank, unknownMark, ambiguousMark. */
export function readMakerMark(value: unknown): Mark | undefined {
  if (isBlank(value)) throw new CostingError("blank", MAKER_LABELS.mark, `found nothing; ${MARK_RIGHT}`);
  if (typeof value === "string" && value.trim().toLowerCase() === EVERY_MARK) return undefined;
  return parseMark(value, MAKER_LABELS.mark);
}

function readMinimum(record: Readonly<Record<string, unknown>>, currency: Currency): MinimumOrder | undefined {
  const amount = figureOrZero(record.minimum);
  if (amount === undefined || amount.isZero()) return undefined;
  const label = MAKER_LABELS.minimumIn;
  const said = record.minimumIn;
  if (isBlank(said)) {
    throw new CostingError("blank", label, `found nothing beside a minimum of ${amount.value()}; ${UNIT_RIGHT}`);
  }
  const word = String(said).trim().toLowerCase();
  const unit = MINIMUM_UNITS.find((each) => each === word);
  if (unit) return Object.freeze({ kind: "weight", weight: weightIn(amount, unit) });
  if (word !== MONEY) {
    if (Object.hasOwn(GRAMS_PER, word) || !/^[a-z]{3}$/.test(word) || !isCurrency(word)) {
      throw new CostingError("unknownWord", label, `${found(said)}, which is no unit of a minimum; ${UNIT_RIGHT}`);
    }
    sameAsWorkbook(said, label, currency);
  }
  return Object.freeze({ kind: "money", money: money(amount, currency) });
}

/** Undefined where the field itself is wrong: it has its own fault. */
function figureOrZero(value: unknown): Quotient | undefined {
  if (isBlank(value)) return Quotient.zero;
  const read = attempt("minimum", () => ({ amount: readNumber(value, MAKER_LABELS.minimum, MINIMUM) }));
  return read.ok ? read.value.amount : undefined;
}

function sameAsWorkbook(value: unknown, label: string, currency: Currency): void {
  const said = parseCurrency(value, label);
  if (currency === NO_CURRENCY || said === currency) return;
  throw new CostingError(
    "currencyMismatch",
    label,
    `found ${said}, and the workbook's amounts are in ${currency}; give this maker's prices in ${currency}, at an exchange rate of your own choice`,
  );
}

function isCurrency(word: string): boolean {
  return attempt("minimumIn", () => ({ currency: parseCurrency(word) })).ok;
}

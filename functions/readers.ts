import {
  COLOURS,
  COST_BASES,
  type Colour,
  type ColumnRule,
  type CostBasis,
  CostingError,
  columnRule,
  FITS,
  type Fit,
  fineShare,
  GRAMS_PER,
  grams,
  isBlank,
  type Length,
  type LengthUnit,
  LINK_CASTINGS,
  LOSS_BASES,
  type Loss,
  type LossBasis,
  lengthIn,
  MARKUP_RULE,
  type MakersRange,
  type Mark,
  MILLIMETRES_PER,
  type Money,
  makersOfCells,
  markOfShare,
  metalRateOf,
  money,
  NO_CURRENCY,
  type NumberRule,
  PATTERN_LETTERS,
  type Pricing,
  parseCurrency,
  parseMark,
  parsePattern,
  perGram,
  pricingOf,
  Quotient,
  type Rate,
  RULE_OF,
  readNumber,
  readWord,
  shareOfDigits,
  TAX_DUE,
  TAX_IS,
  type WeightUnit,
  wordsOf,
} from "../src/index";
import { plainGridOf } from "./grid";

/** A figure: a number cell, read in the unit that the formula needs. Computed in columns. */
export interface Figure<T> {
  readonly kind: "figure";
  /** Throws a CostingError that names the argument. */
  readonly read: (cell: unknown, argument: string, said: Said) => Quotient;
  readonly of: (value: Quotient) => T;
  readonly rule: ColumnRule;
  /** What a blank cell counts as; undefined where it must not be blank. */
  readonly otherwise: string | undefined;
}

/** What the row says for an argument that is a choice: what a figure may be can hang on it. */
export type Said = (argument: string) => unknown;

/** A mark, or a fineness: its share of fine gold is computed in columns too. */
export interface MarkFigure<T> {
  readonly kind: "mark";
  readonly as: "mark" | "fineness";
  readonly read: (cell: unknown, argument: string) => Quotient;
  readonly of: (share: Quotient) => T;
}

/** A word, a count of decimals or a list: each choice may lead the formula to other steps. */
export interface Choice<T> {
  readonly kind: "choice";
  /** Throws a CostingError that names the argument. */
  readonly read: (cells: unknown, argument: string) => T;
  /** A list counts for all rows together. */
  readonly isList: boolean;
  readonly mayBeBlank: boolean;
}

export type Reader<T> = Figure<T> | MarkFigure<T> | Choice<T>;

function figure<T>(rule: NumberRule, of: (value: Quotient) => T): Figure<T> {
  const read = (cell: unknown, argument: string) => readNumber(cell, argument, rule);
  return { kind: "figure", read, of, rule: columnRule(rule), otherwise: undefined };
}

/**
 * A figure that is read by another rule for each word of another argument.
 * @param rule what all of them allow, but for what the formula itself asks; columns compute by it
 */
function figureBy<T>(
  rule: NumberRule,
  word: string,
  ruleOf: (said: unknown) => NumberRule,
  of: (value: Quotient) => T,
) {
  const read = (cell: unknown, argument: string, said: Said) => readNumber(cell, argument, ruleOf(said(word)));
  return { kind: "figure", read, of, rule: columnRule(rule), otherwise: undefined } satisfies Figure<T>;
}

const plain = (value: Quotient): Quotient => value;
const number = (rule: NumberRule): Figure<Quotient> => figure(rule, plain);

export const anyNumber = number({ right: "a number" });
export const numberFrom0 = number({ least: "0", right: "a number from 0" });
export const numberAbove0 = number({ above: "0", right: "a number above 0" });
export const wholeFrom0 = number({ least: "0", whole: true, right: "a whole number from 0" });
export const wholeAbove0 = number({ above: "0", whole: true, right: "a whole number from 1" });
export const shareBelow1 = number({
  share: true,
  least: "0",
  below: "1",
  right: "a share from 0 to below 1, such as 0.02 for 2 %",
});
export const signedShareBelow1 = number({ share: true, below: "1", right: "a share below 1, such as 0.3 for 30 %" });
export const share = number({ share: true, least: "0", right: "a share from 0, such as 0.3 for 30 %" });

const PER_THOUSAND: NumberRule = { above: "0", most: "1000", right: "parts per thousand, above 0 up to 1000" };
const THOUSAND = Quotient.of(1000);
/** A fineness or an assay: 583.333333333333 is 14K, as it is for a mark. */
export const perThousand: MarkFigure<Quotient> = {
  kind: "mark",
  as: "fineness",
  read: (cell, argument) => shareOfDigits(readNumber(cell, argument, PER_THOUSAND).dividedBy(THOUSAND)),
  of: (share) => share.times(THOUSAND),
};

export const weightAbove0 = figure({ above: "0", right: "grams above 0" }, grams);
export const weightFrom0 = figure({ least: "0", right: "grams from 0" }, grams);

const LOST_GRAMS: NumberRule = { least: "0", right: "the grams lost, from 0" };
const LOST_SHARE: NumberRule = {
  share: true,
  least: "0",
  below: "1",
  right: 'a share from 0 to below 1, such as 0.02 for 2 %, or the lossBasis "grams"',
};
/** Of loss: a share or grams, as lossBasis says. See lossOf. */
export const loss = figureBy(LOST_GRAMS, "lossBasis", (basis) => (basis === "grams" ? LOST_GRAMS : LOST_SHARE), plain);

/** The figure of a way of pricing, which `by` names. See pricingBy. */
export const priceFigure = figureBy(
  { least: "0", most: MARKUP_RULE.most ?? "100", right: "a figure" },
  "by",
  (by) => ruleOfPricing(by),
  plain,
);

/** Lengths of one call share a unit of the user's choice, which cancels: they are read as millimetres. */
const asLength = (value: Quotient): Length => lengthIn(value, "mm");
export const lengthAbove0 = figure({ above: "0", right: "a length above 0" }, asLength);
export const lengthFrom0 = figure({ least: "0", right: "a length from 0" }, asLength);

export const spot = figure({ above: "0", right: "money per troy ounce of fine gold, above 0" }, cash);
export const moneyAbove0 = figure({ above: "0", right: "money above 0" }, cash);
export const moneyFrom0 = figure({ least: "0", right: "money from 0" }, cash);
export const anyMoney = figure({ right: "money" }, cash);
export const rateAbove0 = figure({ above: "0", right: "money per gram, above 0" }, gram);
/** The metal rate of what is cast, and of what is bought by its mark: the one cannot stand for the other. */
export const potRateAbove0 = figure({ above: "0", right: "money per gram, above 0" }, (value) =>
  metalRateOf("the pot", gram(value)),
);
export const rateFrom0 = figure({ least: "0", right: "money per gram, from 0" }, gram);
export const anyRate = figure({ right: "money per gram" }, gram);

export const mark: MarkFigure<Mark> = {
  kind: "mark",
  as: "mark",
  read: (cell, argument) => fineShare(parseMark(cell, argument)),
  of: markOfShare,
};

const PRICED_BY = keys(RULE_OF);
/** A mark that is named in a sentence: as it was given, not as its share says. */
export const namedMark = choice(parseMark);

/** The three letters of a currency; undefined where none is given. */
export const currency = optional(choice(parseCurrency), undefined);

export const pricedBy = word<Pricing["by"]>(PRICED_BY);
export const taxIs = optional(word(TAX_IS), "on top" as const);
export const taxDue = optional(word(TAX_DUE), "at delivery" as const);
export const colour = choice((cell, argument) => colourNamed(cell) ?? readWord(cell, argument, COLOURS));
export const pattern = optional(choice(parsePattern), []);
export const linkCasting = word(LINK_CASTINGS);
export const closedOrOpen = word(["closed", "open"] as const);
export const lossBasis = word<LossBasis>(LOSS_BASES);
export const costBasis = word<CostBasis>(COST_BASES);
export const fit = word<Fit>(FITS);
export const weightUnit = word<WeightUnit>(keys(GRAMS_PER));
export const lengthUnit = word<LengthUnit>(keys(MILLIMETRES_PER));

/** How many decimals to round to; undefined leaves the result as it is. */
export const decimals = optional(
  choice((cell, argument) =>
    readNumber(cell, argument, {
      least: "0",
      most: "15",
      whole: true,
      right: "a whole number of decimals from 0 to 15",
    }).toNumber(),
  ),
  undefined,
);

/** Whether the cell is not blank. */
export const isGiven = optional(
  choice(() => true),
  false,
);

function choice<T>(read: (cell: unknown, argument: string) => T): Choice<T> {
  return { kind: "choice", read, isList: false, mayBeBlank: false };
}

function word<W extends string>(words: readonly W[]): Choice<W> {
  return choice((cell, argument) => readWord(cell, argument, words));
}

/** A blank or omitted cell counts as the default. */
export function optional<T, D>(reader: Choice<T>, otherwise: D): Choice<T | D> {
  const read = (cell: unknown, argument: string) => (isBlank(cell) ? otherwise : reader.read(cell, argument));
  return { ...reader, read, mayBeBlank: true };
}

/** A blank or omitted cell counts as this figure. */
export function counted<T>(reader: Figure<T>, otherwise: string): Figure<T> {
  const read = (cell: unknown, argument: string, said: Said) =>
    isBlank(cell) ? Quotient.of(otherwise) : reader.read(cell, argument, said);
  return { ...reader, read, otherwise };
}

/** A range read as one list of numbers, without its blank cells; undefined where all are blank. */
export function listOf(reader: MarkFigure<Quotient>): Choice<readonly Quotient[] | undefined> {
  const read = (cells: unknown, argument: string) => {
    const list = plainGridOf(cells)
      .flat()
      .filter((cell) => !isBlank(cell))
      .map((cell) => reader.of(reader.read(cell, argument)));
    return list.length > 0 ? list : undefined;
  };
  return { kind: "choice", read, isList: true, mayBeBlank: true };
}

/** Makers' price lists, a range with its row of headers. */
export const makers: Choice<MakersRange> = {
  kind: "choice",
  read: (cells) => makersOfCells(plainGridOf(cells)),
  isList: true,
  mayBeBlank: true,
};

/** A loss from its amount and its basis. Errors: outOfRange for a share of 1 or more. */
export function lossOf(amount: Quotient, basis: LossBasis): Loss {
  if (basis === "grams") return { basis, weight: grams(amount) };
  // Asked for the columns: they compute what shares and grams allow.
  if (!amount.isLessThan(Quotient.one)) {
    throw new CostingError("outOfRange", "loss", `found ${amount.inWords()}; give ${LOST_SHARE.right}`);
  }
  return { basis, share: amount };
}

/** A way of pricing from its word and its figure. Errors: outOfRange for a margin of 1 or more. */
export function pricingBy(by: Pricing["by"], figure: Quotient): Pricing {
  // Asked for the columns: they compute what every way of pricing allows.
  if (by === "margin" && !figure.isLessThan(Quotient.one))
    throw new CostingError("outOfRange", "figure", `found ${figure.inWords()}; give ${RULE_OF.margin.right}`);
  return pricingOf(by, figure, NO_CURRENCY);
}

function ruleOfPricing(by: unknown): NumberRule {
  const method = PRICED_BY.find((each) => each === by);
  return method ? RULE_OF[method] : { right: "a figure" };
}

function colourNamed(cell: unknown): Colour | undefined {
  const letter = wordsOf(cell).toUpperCase();
  return Object.hasOwn(PATTERN_LETTERS, letter) ? PATTERN_LETTERS[letter] : undefined;
}

export function cash(amount: Quotient): Money {
  return money(amount, NO_CURRENCY);
}

export function gram(amount: Quotient): Rate {
  return perGram(amount, NO_CURRENCY);
}

/** A result rounded once, half away from zero, where decimals are given. */
export function roundedTo(value: Quotient, places: number | undefined): Quotient {
  return places === undefined ? value : value.toDecimals(places);
}

function keys<K extends string>(record: Readonly<Record<K, unknown>>): readonly K[] {
  return Object.keys(record) as K[];
}

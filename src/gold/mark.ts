import { Decimal, decimalOfCell, parseDecimal } from "../exact/decimal";
import { CostingError, found } from "../exact/errors";
import { Quotient } from "../exact/quotient";
import { isBlank } from "../reading/number";

/** What is stamped on the gold, as the exact share of fine gold it states: 14K is 14/24, 585 is 585/1000. They differ. */
export interface Mark {
  readonly kind: "mark";
  readonly share: Quotient;
  /** How it was given. 14K and 585 are two different marks, even where both are struck for the same alloy. */
  readonly struckAs: "karat" | "fineness";
  /** As a person wrote it, such as "14 kt"; undefined where what was written is a bare figure that says less. */
  readonly given?: string;
}

const RIGHT = 'give a mark such as "14K", 585, "585/1000" or "58.5%"';
const TWENTY_FOUR = new Decimal(24);
const HUNDRED = new Decimal(100);
const THOUSAND = new Decimal(1000);
const FORTY_EIGHT = new Decimal(48);
/** What a cell keeps of a figure. */
const CELL_DIGITS = 15;

const KARAT = /^(\d+(?:\.\d+)?)\s*(?:k|kt|ct|karat|carat)$/i;
const FRACTION = /^(\d+(?:\.\d+)?)\s*\/\s*(24|1000)$/;
const PER_THOUSAND = /^(\d+(?:\.\d+)?)\s*‰$/;
const PER_CENT = /^(\d+(?:\.\d+)?)\s*%$/;

/** The share of fine gold, from 0 to 1. */
export function fineShare(mark: Mark): Quotient {
  return mark.share;
}

/** Gold in the alloy by mass, parts per thousand. */
export function fineness(mark: Mark): Quotient {
  return mark.share.times(Quotient.of(THOUSAND));
}

/** Karats: 24 x share. */
export function karats(mark: Mark): Quotient {
  return mark.share.times(Quotient.of(TWENTY_FOUR));
}

/**
 * A mark as it is struck, without the word gold: whole karats as "14K", anything else in parts per thousand, such as "585",
 * to one decimal and never above the fineness.
 */
export function showMark(mark: Mark): string {
  const inKarats = karats(mark);
  const whole = inKarats.value();
  if (mark.struckAs === "karat" && whole.isInteger()) return `${whole}K`;
  return fineness(mark).rounded(1, "down").toString();
}

/** A mark in a sentence to the person who gave it: "14 kt" stays "14 kt". */
export function nameMark(mark: Mark): string {
  return mark.given ?? showMark(mark);
}

/**
 * The share that a fineness of 15 digits means. Those of n/24, n whole or half, are n/24 itself: a cell writes 14K out as
 * 583.333333333333, and so does an assay that is copied from it.
 */
export function shareOfDigits(share: Quotient): Quotient {
  const value = share.value();
  const halves = value.times(FORTY_EIGHT).round();
  if (halves.isZero() || halves.gt(FORTY_EIGHT)) return share;
  const karat = Quotient.of(halves).dividedBy(Quotient.of(FORTY_EIGHT));
  return !karat.equals(share) && digitsOf(karat.value()).eq(digitsOf(value)) ? karat : share;
}

function digitsOf(value: Decimal): Decimal {
  return value.toSignificantDigits(CELL_DIGITS);
}

/** A mark from its share of fine gold. @param share above 0, at most 1 */
export function markOfShare(share: Quotient): Mark {
  return markOf(share, "fineness");
}

/** A mark from a fineness in parts per thousand. */
export function markOfFineness(perThousand: Quotient): Mark {
  return markOf(perThousand.dividedBy(Quotient.of(THOUSAND)), "fineness");
}

/**
 * Reads a mark. "14K", "14kt", "14 ct", "14/24" are karats; "585", "585/1000" and numbers above 24 are parts per thousand;
 * numbers above 1 up to 24 are karats; numbers below 1 and "58.5%" are shares; exactly 1 is refused as ambiguous.
 * Errors: blank, unknownMark, ambiguousMark.
 * Source: karat n is n/24 by definition.
 */
export function parseMark(value: unknown, field = "mark"): Mark {
  if (isBlank(value)) throw new CostingError("blank", field, `found nothing; ${RIGHT}`);
  const mark =
    typeof value === "number"
      ? markOfNumber(value, field)
      : typeof value === "string"
        ? markOfText(value.trim(), field)
        : undefined;
  if (mark === undefined || !mark.share.isPositive() || mark.share.isGreaterThan(Quotient.one)) {
    throw new CostingError(
      "unknownMark",
      field,
      `${found(value)}, which is not a fineness from above 0 to 24 karats; ${RIGHT}`,
    );
  }
  return mark;
}

function markOf(share: Quotient, struckAs: Mark["struckAs"], given?: string): Mark {
  return Object.freeze({ kind: "mark", share, struckAs, ...(given === undefined ? {} : { given }) });
}

function markOfNumber(value: number, field: string): Mark | undefined {
  return Number.isFinite(value) ? markOfDecimal(decimalOfCell(value), field) : undefined;
}

function markOfText(text: string, field: string): Mark | undefined {
  const karat = KARAT.exec(text)?.[1];
  if (karat !== undefined) return over(karat, TWENTY_FOUR, text);
  const fraction = FRACTION.exec(text);
  if (fraction?.[1] !== undefined && fraction[2] !== undefined) {
    return over(fraction[1], new Decimal(fraction[2]), text);
  }
  const perCent = PER_CENT.exec(text)?.[1];
  if (perCent !== undefined) return over(perCent, HUNDRED, text);
  const perThousand = PER_THOUSAND.exec(text)?.[1];
  if (perThousand !== undefined) return over(perThousand, THOUSAND, text);
  const plain = parseDecimal(text);
  return plain && markOfDecimal(plain, field);
}

function markOfDecimal(value: Decimal, field: string): Mark {
  if (value.eq(1)) {
    throw new CostingError("ambiguousMark", field, 'found 1, which may be 1 karat or pure gold; give "1K" or 1000');
  }
  if (value.lt(1)) return over(value, new Decimal(1));
  return value.lte(TWENTY_FOUR) ? over(value, TWENTY_FOUR) : over(value, THOUSAND, value.toString());
}

/** @param given as it was written, where that says what it is */
function over(value: Decimal | string, whole: Decimal, given?: string): Mark {
  const written = Quotient.of(value).dividedBy(Quotient.of(whole));
  if (whole.eq(TWENTY_FOUR)) return markOf(written, "karat", given);
  const share = shareOfDigits(written);
  if (share === written) return markOf(share, "fineness", given);
  return markOf(share, "karat", `${share.times(Quotient.of(TWENTY_FOUR)).value()}K`);
}

import { Decimal, decimalOfCell, parseDecimal } from "./decimal";
import { CostingError, found } from "./errors";
import { isBlank } from "./number";
import { Quotient } from "./quotient";

/** What is stamped on the gold, as the exact share of fine gold it states: 14K is 14/24, 585 is 585/1000. They differ. */
export interface Mark {
  readonly kind: "mark";
  readonly share: Quotient;
}

const RIGHT = 'give a mark such as "14K", 585, "585/1000" or "58.5%"';
const TWENTY_FOUR = new Decimal(24);
const THOUSAND = new Decimal(1000);

const KARAT = /^(\d+(?:\.\d+)?)\s*(?:k|kt|ct|karat|carat)$/i;
const FRACTION = /^(\d+(?:\.\d+)?)\s*\/\s*(24|1000)$/;
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

/** A mark from its share of fine gold. @param share above 0, at most 1 */
export function markOfShare(share: Quotient): Mark {
  return markOf(share);
}

/** A mark from a fineness in parts per thousand. */
export function markOfFineness(perThousand: Quotient): Mark {
  return markOf(perThousand.dividedBy(Quotient.of(THOUSAND)));
}

/**
 * Reads a mark. "14K", "14kt", "14 ct", "14/24" are karats; "585", "585/1000" and numbers above 24 are parts per thousand;
 * numbers above 1 up to 24 are karats; numbers below 1 and "58.5%" are shares; exactly 1 is refused as ambiguous.
 * Errors: blank, unknownMark, ambiguousMark.
 * Source: karat n is n/24 by definition.
 */
export function parseMark(value: unknown, field = "mark"): Mark {
  if (isBlank(value)) throw new CostingError("blank", field, `found nothing; ${RIGHT}`);
  const share =
    typeof value === "number"
      ? shareOfNumber(value, field)
      : typeof value === "string"
        ? shareOfText(value.trim(), field)
        : undefined;
  if (share === undefined || !share.isPositive() || share.isGreaterThan(Quotient.one)) {
    throw new CostingError(
      "unknownMark",
      field,
      `${found(value)}, which is not a fineness from above 0 to 24 karats; ${RIGHT}`,
    );
  }
  return markOf(share);
}

function markOf(share: Quotient): Mark {
  return Object.freeze({ kind: "mark", share });
}

function shareOfNumber(value: number, field: string): Quotient | undefined {
  return Number.isFinite(value) ? shareOfDecimal(decimalOfCell(value), field) : undefined;
}

function shareOfText(text: string, field: string): Quotient | undefined {
  const karat = KARAT.exec(text)?.[1];
  if (karat !== undefined) return over(karat, TWENTY_FOUR);
  const fraction = FRACTION.exec(text);
  if (fraction?.[1] !== undefined && fraction[2] !== undefined) return over(fraction[1], new Decimal(fraction[2]));
  const perCent = PER_CENT.exec(text)?.[1];
  if (perCent !== undefined) return over(perCent, new Decimal(100));
  const plain = parseDecimal(text);
  return plain && shareOfDecimal(plain, field);
}

function shareOfDecimal(value: Decimal, field: string): Quotient {
  if (value.eq(1)) {
    throw new CostingError("ambiguousMark", field, 'found 1, which may be 1 karat or pure gold; give "1K" or 1000');
  }
  if (value.lt(1)) return Quotient.of(value);
  return over(value, value.lte(TWENTY_FOUR) ? TWENTY_FOUR : THOUSAND);
}

function over(value: Decimal | string, whole: Decimal): Quotient {
  return Quotient.of(value).dividedBy(Quotient.of(whole));
}

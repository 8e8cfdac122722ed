import { Decimal, decimalOfCell, parseDecimal } from "../exact/decimal";
import { CostingError, found, numberToGive } from "../exact/errors";
import type { NumberRule } from "../exact/numberrule";
import { Quotient, reportGiven } from "../exact/quotient";

/** Beyond this a product of two such numbers leaves what a cell can hold. */
const LARGEST = new Decimal("1e300");

/** Nothing, an empty text or only spaces. */
export function isBlank(value: unknown): boolean {
  return value === null || value === undefined || (typeof value === "string" && value.trim() === "");
}

/**
 * A number cell as the decimal its 15 significant digits say, a text that is a plain decimal as that decimal.
 * Errors: blank, notANumber, tooLarge, outOfRange, each with a sentence that names `field`.
 */
export function readNumber(value: unknown, field: string, rule: NumberRule): Quotient {
  if (isBlank(value)) throw new CostingError("blank", field, `found nothing; give ${rule.right}`);
  const decimal = rule.share ? shareOf(value) : decimalOf(value);
  if (decimal === undefined)
    throw new CostingError(
      "notANumber",
      field,
      `${found(value)}, ${whyNot(value)}; give ${numberToGive(value, rule.right)}`,
    );
  if (decimal.abs().gte(LARGEST))
    throw new CostingError(
      "tooLarge",
      field,
      `${found(value)}, which is too large to compute with; give ${rule.right}`,
    );
  if (!within(decimal, rule)) throw new CostingError("outOfRange", field, `${found(value)}; give ${rule.right}`);
  const read = Quotient.of(decimal);
  reportGiven(field, rule, read);
  return read;
}

/** Refuses a value that its rule does not allow, as readNumber does one that is typed. Errors: outOfRange. */
export function checkNumber(value: Quotient, field: string, rule: NumberRule): void {
  if (!within(value.value(), rule))
    throw new CostingError("outOfRange", field, `found ${value.value()}; give ${rule.right}`);
}

function decimalOf(value: unknown): Decimal | undefined {
  if (typeof value === "number") return Number.isFinite(value) ? decimalOfCell(value) : undefined;
  return typeof value === "string" ? parseDecimal(value) : undefined;
}

function shareOf(value: unknown): Decimal | undefined {
  const perCent = typeof value === "string" ? /^(.*\S)\s*%$/.exec(value.trim())?.[1] : undefined;
  return perCent === undefined ? decimalOf(value) : parseDecimal(perCent)?.div(100);
}

function within(value: Decimal, rule: NumberRule): boolean {
  if (rule.above !== undefined && !value.gt(rule.above)) return false;
  if (rule.least !== undefined && !value.gte(rule.least)) return false;
  if (rule.below !== undefined && !value.lt(rule.below)) return false;
  if (rule.most !== undefined && !value.lte(rule.most)) return false;
  return !rule.whole || value.isInteger();
}

function whyNot(value: unknown): string {
  if (typeof value === "string" && /^[+-]?\d{1,3}(,\d{3})+(\.\d+)?$/.test(value.trim()))
    return "which has separators in it";
  if (typeof value === "string" && /^[+-]?\d*,\d+$/.test(value.trim()))
    return "which has a comma where a point would be right";
  return "which is not a plain number";
}

import { parseDecimal } from "../exact/decimal";
import { CostingError, found } from "../exact/errors";
import { isBlank, readNumber } from "../reading/number";
import { type Weight, weightIn } from "./weight";

/** Units that scales in workshops show. */
export const SCALE_UNITS = ["g", "dwt", "ozt", "ct"] as const;
type ScaleUnit = (typeof SCALE_UNITS)[number];

const RIGHT = "give grams above 0, or a weight with its unit g, dwt, ozt or ct, such as 8.04 dwt";
const WITH_UNIT = /^(.*?[\d.])\s*([a-z]+)\.?$/i;

/**
 * A weight as a scale shows it: "20.5" and "20.5 g" are grams, "8.04 dwt", "0.4 ozt" and "12 ct" are turned into grams exactly.
 * Errors: blank, notANumber, outOfRange, tooLarge; unknownWord for another unit.
 */
export function readScaleWeight(value: unknown, field: string): Weight {
  if (isBlank(value)) throw new CostingError("blank", field, `found nothing; ${RIGHT}`);
  const [, figure, word] = (typeof value === "string" ? WITH_UNIT.exec(value.trim()) : undefined) ?? [];
  if (figure === undefined || word === undefined || parseDecimal(figure) === undefined) {
    return weightIn(readNumber(value, field, { above: "0", right: RIGHT.replace(/^give /, "") }), "g");
  }
  const unit = SCALE_UNITS.find((known): known is ScaleUnit => known === word.toLowerCase());
  if (!unit)
    throw new CostingError("unknownWord", field, `${found(value)}, in a unit that is not known here; ${RIGHT}`);
  return weightIn(readNumber(figure, field, { above: "0", right: RIGHT.replace(/^give /, "") }), unit);
}

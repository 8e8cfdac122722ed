import { CostingError, found } from "../exact/errors";
import type { Quotient } from "../exact/quotient";
import { isBlank, readNumber } from "../reading/number";
import { type Composition, parseComposition } from "./composition";

/** A density, with the composition that it was worked out from, if any. */
export interface Density {
  /** g/cm³. */
  readonly value: Quotient;
  readonly composition: Composition | undefined;
}

/** Above the densest metal there is. */
const UPPER_LIMIT = "23";
const RANGE = "a density in g/cm³ above 0 and below 23";

/**
 * Reads a density: g/cm³, or a composition such as "Au 585 Ag 265 Cu 150", whose density is worked out.
 * Errors: blank, notANumber, outOfRange, unknownWord.
 * @param example a usual figure, for the sentence
 * @param fromComposition whether a composition will do: wax has none
 */
export function readDensity(value: unknown, field: string, example: string, fromComposition: boolean): Density {
  const right = `${RANGE}, such as ${example}${fromComposition ? ", or a composition such as Au 585 Ag 265 Cu 150" : ""}`;
  if (isBlank(value)) throw new CostingError("blank", field, `found nothing; give ${right}`);
  if (fromComposition && /^\s*\p{L}/u.test(String(value))) {
    if (!/\d/.test(String(value)))
      throw new CostingError("unknownWord", field, `${found(String(value).trim())}, which has no parts; give ${right}`);
    const composition = parseComposition(value, field);
    return Object.freeze({ value: composition.density, composition });
  }
  return Object.freeze({
    value: readNumber(value, field, { above: "0", below: UPPER_LIMIT, right }),
    composition: undefined,
  });
}

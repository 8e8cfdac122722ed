import { CostingError } from "../exact/errors";
import { isBlank } from "../reading/number";
import { readScaleWeight } from "./scaleweight";
import type { Weight } from "./weight";

/** One entry of a list of weights, with its place counted from 1: the weight, or the sentence that says why it cannot be read. */
export type ListedWeight =
  | { readonly place: number; readonly ok: true; readonly said: string; readonly weight: Weight }
  | { readonly place: number; readonly ok: false; readonly said: string; readonly sentence: string };

/**
 * Reads weights from cells, or from a text. In a text each is on its own line, or they are separated by semicolons, by spaces, or
 * by a comma and a space. Each may have its unit behind it: "8.04 dwt". Blank entries are skipped.
 */
export function readWeightList(given: string | readonly unknown[], field: string): readonly ListedWeight[] {
  const all = typeof given === "string" ? weightsIn(given) : given;
  return all.filter((each) => !isBlank(each)).map((each, at) => readListed(each, at + 1, field));
}

/** "8 12.5 dwt; 20" are three: a word of letters belongs to the figure before it. */
function weightsIn(text: string): readonly string[] {
  return text
    .split(/[;\n\r\t]+|,\s+/)
    .flatMap((part) => part.trim().split(/\s+(?![a-z]+\.?(?:\s|$))/i))
    .map((part) => part.trim());
}

function readListed(value: unknown, place: number, field: string): ListedWeight {
  const said = String(value).trim();
  try {
    return Object.freeze({ place, ok: true, said, weight: readScaleWeight(value, `${field} ${place}`) });
  } catch (error) {
    if (!(error instanceof CostingError)) throw error;
    return Object.freeze({ place, ok: false, said, sentence: error.message });
  }
}

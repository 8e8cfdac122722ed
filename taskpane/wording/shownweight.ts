import { isBlank, Quotient, type Weight } from "../../src/index";
import { showGrams, showNumber } from "./display";

const HEAVY = Quotient.of(10);

/** Grams as a scale of the workshop shows them: to the milligram under 10 g, else to the centigram. */
export function showScale(weight: Weight): string {
  const isLight = weight.grams.isLessThan(HEAVY) && Quotient.zero.minus(weight.grams).isLessThan(HEAVY);
  // A figure and its unit stay on one line.
  return showGrams(weight, isLight ? 3 : 2).replace(/ /g, "\u00a0");
}

/** A share as per cent, to two decimals: polish losses are small. */
export function showLoss(share: Quotient): string {
  return `${showNumber(share.times(Quotient.of(100)), 2)}\u00a0%`;
}

/** "Ada curb 8 mm 14K yellow", from cells or texts. */
export function linkName(link: {
  readonly model: unknown;
  readonly width: unknown;
  readonly mark: unknown;
  readonly colour: unknown;
}): string {
  const words = [link.model, isBlank(link.width) ? "" : `${String(link.width)} mm`, link.mark, link.colour];
  return words
    .filter((word) => !isBlank(word))
    .map((word) => String(word).trim())
    .join(" ");
}

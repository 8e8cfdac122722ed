import { CostingError } from "../exact/errors";
import { Quotient } from "../exact/quotient";
import { type Length, millimetres } from "../units/length";
import { addWeights, grams, timesWeight, type Weight } from "../units/weight";

/** How a count that is not whole is made whole: half up, up or down. */
export const FITS = ["nearest", "up", "down"] as const;
export type Fit = (typeof FITS)[number];

const HALF = Quotient.of("0.5");

/** The length one link adds to a closed, taut chain, from so many links in a length. */
export function pitchOf(links: Quotient, inLength: Length): Length {
  return millimetres(inLength.millimetres.dividedBy(links));
}

/**
 * Links that make up a chain: (length - clasp length) / pitch, made whole by the fit, to a multiple.
 * Errors: outOfRange where the clasp is as long as the chain.
 */
export function linkCount(
  length: Length,
  pitch: Length,
  claspLength: Length,
  fit: Fit = "nearest",
  multiple: Quotient = Quotient.one,
): Quotient {
  const chain = length.millimetres.minus(claspLength.millimetres);
  if (!chain.isPositive()) {
    throw new CostingError(
      "outOfRange",
      "claspLength",
      "found a clasp as long as the whole chain; give a clasp shorter than the length",
    );
  }
  const multiples = chain.dividedBy(pitch.millimetres.times(multiple));
  const whole = fit === "up" ? multiples.ceil() : fit === "down" ? multiples.floor() : multiples.plus(HALF).floor();
  return whole.times(multiple);
}

/** The length that links and a clasp really reach. */
export function chainLength(links: Quotient, pitch: Length, claspLength: Length): Length {
  return millimetres(links.times(pitch.millimetres).plus(claspLength.millimetres));
}

/** Links x the weight of one, and the gold findings. */
export function chainWeight(links: Quotient, linkWeight: Weight, findings: Weight): Weight {
  return addWeights(timesWeight(linkWeight, links), findings);
}

/** A link's weight when its model is scaled to another width: by the cube, since all three sides scale. */
export function resizedLink(linkWeight: Weight, fromWidth: Quotient, toWidth: Quotient): Weight {
  const cube = (width: Quotient) => width.times(width).times(width);
  return grams(linkWeight.grams.times(cube(toWidth)).dividedBy(cube(fromWidth)));
}

/** The same piece in another material, by the ratio of densities: another alloy, or metal from its wax or resin. */
export function recastWeight(weight: Weight, fromDensity: Quotient, toDensity: Quotient): Weight {
  return grams(weight.grams.times(toDensity).dividedBy(fromDensity));
}

/** The links with stones where every n-th has them; whole links only. */
export function linksWithStones(links: Quotient, every: Quotient): Quotient {
  return links.dividedBy(every).floor();
}

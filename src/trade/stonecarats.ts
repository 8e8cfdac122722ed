import { Quotient } from "../exact/quotient";

/** The cuts of stones that have a size. Of princess and others no factor is agreed on: weigh them, or bring a factor. */
export const STONE_CUTS = [
  "round",
  "oval",
  "pear",
  "marquise",
  "baguette",
  "rectangular",
  "emerald cut",
  "princess",
  "heart",
  "triangle",
  "other cut",
] as const;
export type StoneCut = (typeof STONE_CUTS)[number];

/** A stone measured in millimetres; of a round one both sides are its diameter. */
export interface StoneSize {
  readonly cut: StoneCut;
  readonly length: Quotient;
  readonly width: Quotient;
  readonly depth: Quotient;
}

/**
 * What the carat of a size is worked out with. Diamonds have factors of their own; coloured stones have others, by their specific
 * gravity. The two families differ by 3.9 % for the same round stone (0.0018 x 3.52 = 0.006336 against 0.0061) and are never mixed.
 */
export type CaratFamily =
  | { readonly family: "diamond" }
  | { readonly family: "coloured stone"; readonly gravity: Quotient };

/** What a person knows better of a stone. */
export interface CaratArguments {
  /** In place of the published factor of its cut. */
  readonly factor?: Quotient | undefined;
  /** For a thick girdle or an unusual outline, such as 1.02; nothing for none. */
  readonly adjustment?: Quotient | undefined;
}

/** Factors by length to width, lowest first. */
type ByRatio = readonly (readonly [ratio: string, factor: string])[];

/** Source: gemmology teaching formulas, in the published stone carats: no density, millimetres, carats. */
const DIAMOND: Readonly<Partial<Record<StoneCut, string | ByRatio>>> = {
  round: "0.0061",
  oval: "0.0062",
  pear: [
    ["1.25", "0.00615"],
    ["1.50", "0.00600"],
    ["1.66", "0.00590"],
    ["2.00", "0.00575"],
  ],
  marquise: [
    ["1.50", "0.00565"],
    ["1.75", "0.00570"],
    ["2.00", "0.00580"],
    ["2.25", "0.00583"],
    ["2.50", "0.00585"],
    ["2.75", "0.00590"],
    ["3.00", "0.00595"],
  ],
  baguette: "0.00915",
  // A step cut that orders from before the other cuts call so; by the baguette's factor.
  rectangular: "0.00915",
  "emerald cut": [
    ["1.00", "0.0080"],
    ["1.25", "0.0080"],
    ["1.50", "0.0092"],
    ["2.00", "0.0100"],
    ["2.50", "0.0106"],
  ],
  heart: "0.0059",
  triangle: "0.0057",
};

/** To be multiplied by the specific gravity. Source: a gemmologist's chart, in the published stone carats. */
const COLOURED: Readonly<Partial<Record<StoneCut, string>>> = {
  round: "0.0018",
  oval: "0.0020",
  pear: "0.0018",
  marquise: "0.0017",
  baguette: "0.0026",
  rectangular: "0.0026",
  "emerald cut": "0.0025",
  heart: "0.0018",
};

/**
 * Carat of a stone by its size, about; undefined where its cut has no published factor in its family and none is brought: then
 * it is weighed. Round and oval ones go by the square of their mean diameter times depth, others by length x width x depth.
 */
export function caratsBySize(
  size: StoneSize,
  of: CaratFamily,
  { factor = publishedFactor(size, of.family), adjustment = Quotient.one }: CaratArguments = {},
): Quotient | undefined {
  if (!factor) return undefined;
  const carats = outline(size).times(size.depth).times(factor).times(adjustment);
  return of.family === "diamond" ? carats : carats.times(of.gravity);
}

/** Length to width, the longer side over the shorter, whichever was called which. */
export function sideRatio({ length, width }: Pick<StoneSize, "length" | "width">): Quotient {
  return length.isLessThan(width) ? width.dividedBy(length) : length.dividedBy(width);
}

function publishedFactor(size: StoneSize, family: CaratFamily["family"]): Quotient | undefined {
  const factor = (family === "diamond" ? DIAMOND : COLOURED)[size.cut];
  if (factor === undefined) return undefined;
  return Quotient.of(typeof factor === "string" ? factor : nearest(factor, sideRatio(size)));
}

/** The factor of the nearest listed ratio; of two that are equally near, of the lower one. */
function nearest(factors: ByRatio, ratio: Quotient): string {
  const off = (listed: string) => {
    const difference = ratio.minus(Quotient.of(listed));
    return difference.isNegative() ? Quotient.zero.minus(difference) : difference;
  };
  return factors.reduce((best, each) => (off(each[0]).isLessThan(off(best[0])) ? each : best))[1];
}

const TWO = Quotient.of(2);

function outline({ cut, length, width }: StoneSize): Quotient {
  if (cut !== "round" && cut !== "oval") return length.times(width);
  const mean = length.plus(width).dividedBy(TWO);
  return mean.times(mean);
}

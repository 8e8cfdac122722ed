import {
  castWeight,
  chainLength,
  chainWeight,
  finishedWeight,
  inLengthUnit,
  lengthIn,
  linkCount,
  pitchOf,
  Quotient,
  recastWeight,
  resizedLink,
} from "../src/index";
import * as read from "./readers";
import { spread } from "./spread";

const ONE_UNIT = lengthIn(Quotient.one, "mm");

const LINKCOUNT = spread(
  {
    length: read.lengthAbove0,
    linksPerLength: read.numberAbove0,
    claspLength: read.counted(read.lengthFrom0, "0"),
    fit: read.optional(read.fit, "nearest" as const),
    multiple: read.counted(read.wholeAbove0, "1"),
  },
  (row) => linkCount(row.length, pitchOf(row.linksPerLength, ONE_UNIT), row.claspLength, row.fit, row.multiple),
);

/**
 * Links that make up a chain: (length - clasp length) x links per length, made whole. Length, links per length and clasp length are in one unit of your choice.
 * @customfunction LINKCOUNT
 * @param length Finished length; a cell or a range.
 * @param linksPerLength Links in one unit of that length, such as 4 per inch; a cell or a range.
 * @param [claspLength] Length of the clasp, 0 if omitted; a cell or a range.
 * @param [fit] "nearest" (half up, if omitted), "up" or "down"; a cell or a range.
 * @param [multiple] The count is a multiple of it: 1 if omitted, 2 where closed and open links alternate; a cell or a range.
 * @returns Links, a whole number.
 */
export function linksIn(
  length: unknown[][],
  linksPerLength: unknown[][],
  claspLength?: unknown[][],
  fit?: unknown[][],
  multiple?: unknown[][],
): unknown[][] {
  return LINKCOUNT({ length, linksPerLength, claspLength, fit, multiple });
}

const CHAINLENGTH = spread(
  {
    links: read.wholeAbove0,
    linksPerLength: read.numberAbove0,
    claspLength: read.counted(read.lengthFrom0, "0"),
  },
  (row) => inLengthUnit(chainLength(row.links, pitchOf(row.linksPerLength, ONE_UNIT), row.claspLength), "mm"),
);

/**
 * Length that links and a clasp really reach: links / links per length + clasp length, in that unit.
 * @customfunction CHAINLENGTH
 * @param links Count of links; a cell or a range.
 * @param linksPerLength Links in one unit of length; a cell or a range.
 * @param [claspLength] Length of the clasp, 0 if omitted; a cell or a range.
 * @returns Length in the unit of your choice, unrounded.
 */
export function lengthOfLinks(links: unknown[][], linksPerLength: unknown[][], claspLength?: unknown[][]): unknown[][] {
  return CHAINLENGTH({ links, linksPerLength, claspLength });
}

const CHAINWEIGHT = spread(
  {
    links: read.wholeAbove0,
    linkWeight: read.weightAbove0,
    findingsWeight: read.counted(read.weightFrom0, "0"),
  },
  (row) => chainWeight(row.links, row.linkWeight, row.findingsWeight).grams,
);

/**
 * Weight of a chain: links x weight of one link + gold findings.
 * @customfunction CHAINWEIGHT
 * @param links Count of links; a cell or a range.
 * @param linkWeight Weight of one link in grams; a cell or a range.
 * @param [findingsWeight] Weight of clasp and other gold findings in grams, 0 if omitted; a cell or a range.
 * @returns Grams, unrounded.
 */
export function weightOfChain(links: unknown[][], linkWeight: unknown[][], findingsWeight?: unknown[][]): unknown[][] {
  return CHAINWEIGHT({ links, linkWeight, findingsWeight });
}

const RESIZEDLINK = spread(
  {
    linkWeight: read.weightAbove0,
    fromWidth: read.numberAbove0,
    toWidth: read.numberAbove0,
  },
  (row) => resizedLink(row.linkWeight, row.fromWidth, row.toWidth).grams,
);

/**
 * Weight of a link whose model is scaled to another width: link weight x (to / from) cubed. Half the width weighs an eighth. Models with stone seats must not be scaled.
 * @customfunction RESIZEDLINK
 * @param linkWeight Weight of one link in grams; a cell or a range.
 * @param fromWidth Width it has, in any unit; a cell or a range.
 * @param toWidth Width wanted, in the same unit; a cell or a range.
 * @returns Grams, unrounded.
 */
export function resizedLinkWeight(linkWeight: unknown[][], fromWidth: unknown[][], toWidth: unknown[][]): unknown[][] {
  return RESIZEDLINK({ linkWeight, fromWidth, toWidth });
}

const RECASTWEIGHT = spread(
  {
    weight: read.weightAbove0,
    fromDensity: read.numberAbove0,
    toDensity: read.numberAbove0,
  },
  (row) => recastWeight(row.weight, row.fromDensity, row.toDensity).grams,
);

/**
 * Weight of the same piece in another alloy: weight x density wanted / density it has.
 * @customfunction RECASTWEIGHT
 * @param weight Weight in grams; a cell or a range.
 * @param fromDensity Density of its alloy in g/cm³; a cell or a range.
 * @param toDensity Density of the other alloy in g/cm³; a cell or a range.
 * @returns Grams, unrounded.
 */
export function recastIn(weight: unknown[][], fromDensity: unknown[][], toDensity: unknown[][]): unknown[][] {
  return RECASTWEIGHT({ weight, fromDensity, toDensity });
}

const METALFROMWAX = spread(
  {
    waxWeight: read.weightAbove0,
    waxDensity: read.numberAbove0,
    metalDensity: read.numberAbove0,
  },
  (row) => recastWeight(row.waxWeight, row.waxDensity, row.metalDensity).grams,
);

/**
 * Metal for a wax or resin piece: wax weight x density of the metal / density of the wax. Add sprue and button yourself.
 * @customfunction METALFROMWAX
 * @param waxWeight Weight of the wax or resin in grams; a cell or a range.
 * @param waxDensity Density of the wax or resin in g/cm³; a cell or a range.
 * @param metalDensity Density of the alloy in g/cm³; a cell or a range.
 * @returns Grams of metal, unrounded.
 */
export function metalForWax(waxWeight: unknown[][], waxDensity: unknown[][], metalDensity: unknown[][]): unknown[][] {
  return METALFROMWAX({ waxWeight, waxDensity, metalDensity });
}

const CASTWEIGHT = spread(
  {
    finishedWeight: read.weightAbove0,
    loss: read.loss,
    lossBasis: read.optional(read.lossBasis, "cast" as const),
  },
  (row) => castWeight(row.finishedWeight, read.lossOf(row.loss, row.lossBasis)).grams,
);

/**
 * Weight to cast for a finished weight. Loss "cast": finished / (1 - share); "finished": finished x (1 + share); "grams": finished + grams. 10 g at 2.5 % is 10.256 g or 10.25 g.
 * @customfunction CASTWEIGHT
 * @param finishedWeight Weight wanted after polishing, in grams; a cell or a range.
 * @param loss Polish loss: a share such as 0.025 for 2.5 %, or grams; a cell or a range.
 * @param [lossBasis] "cast" (share of the cast weight, if omitted), "finished" (share of the finished weight) or "grams"; a cell or a range.
 * @returns Grams, unrounded.
 */
export function weightToCast(finishedWeight: unknown[][], loss: unknown[][], lossBasis?: unknown[][]): unknown[][] {
  return CASTWEIGHT({ finishedWeight, loss, lossBasis });
}

const FINISHEDWEIGHT = spread(
  {
    castWeight: read.weightAbove0,
    loss: read.loss,
    lossBasis: read.optional(read.lossBasis, "cast" as const),
  },
  (row) => finishedWeight(row.castWeight, read.lossOf(row.loss, row.lossBasis)).grams,
);

/**
 * Weight left of a cast weight after polishing. Loss "cast": cast x (1 - share); "finished": cast / (1 + share); "grams": cast - grams.
 * @customfunction FINISHEDWEIGHT
 * @param castWeight Weight after casting, in grams; a cell or a range.
 * @param loss Polish loss: a share such as 0.025 for 2.5 %, or grams; a cell or a range.
 * @param [lossBasis] "cast" (share of the cast weight, if omitted), "finished" (share of the finished weight) or "grams"; a cell or a range.
 * @returns Grams, unrounded.
 */
export function weightFinished(castWeight: unknown[][], loss: unknown[][], lossBasis?: unknown[][]): unknown[][] {
  return FINISHEDWEIGHT({ castWeight, loss, lossBasis });
}

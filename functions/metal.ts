import {
  assayPasses,
  fineGold,
  fineness,
  inLengthUnit,
  inWeightUnit,
  karats,
  lengthIn,
  meltValue,
  metalRate,
  STANDARD_MARKS,
  standardMark,
  weightIn,
} from "../src/index";
import { densityOf } from "./alloy";
import { answer } from "./cell";
import * as read from "./readers";
import { spread } from "./spread";

const FINENESS = spread({ mark: read.mark }, (row) => fineness(row.mark));

/**
 * Fineness of a mark in parts per thousand (‰): 14K is 583.333…, 585 is 585. Karat n is n/24 by definition. The result is as good as its mark in every other function.
 * @customfunction FINENESS
 * @param mark Mark such as "14K", 585, "585/1000" or "58.5%"; a cell or a range.
 * @returns Parts per thousand, unrounded.
 */
export function finenessOf(mark: unknown[][]): unknown[][] {
  return FINENESS({ mark });
}

const KARAT = spread({ mark: read.mark }, (row) => karats(row.mark));

/**
 * Karats of a mark: 24 x its share of fine gold.
 * @customfunction KARAT
 * @param mark Mark such as "14K", 585, "585/1000" or "58.5%"; a cell or a range.
 * @returns Karats, unrounded.
 */
export function karatOf(mark: unknown[][]): unknown[][] {
  return KARAT({ mark });
}

const STANDARDMARK = spread({ fineness: read.perThousand, standards: read.listOf(read.perThousand) }, (row) =>
  standardMark(row.fineness, row.standards ?? STANDARD_MARKS),
);

/**
 * The highest standard mark not above a fineness, since a mark may understate but never overstate; #N/A below the lowest.
 * Usual standards 333 375 417 585 750 833 916 958 990 999, from encyclopedias; the table of ISO 9202 itself was not seen. Your national list comes first.
 * @customfunction STANDARDMARK
 * @param fineness Fineness in parts per thousand; a cell or a range.
 * @param [standards] Your list of standards in parts per thousand, as one range.
 * @returns Parts per thousand.
 */
export function standardMarkOf(fineness: unknown[][], standards?: unknown[][]): unknown[][] {
  return STANDARDMARK({ fineness, standards });
}

const ASSAYPASSES = spread(
  {
    assay: read.perThousand,
    mark: read.mark,
    tolerance: read.counted(read.numberFrom0, "0"),
  },
  (row) => assayPasses(row.assay, row.mark, row.tolerance),
);

/**
 * TRUE where an assay passes for a mark: assay + tolerance >= fineness of the mark, in parts per thousand.
 * 15 U.S.C. 295 allows 3 on metal free of solder and 7 on a whole article with solder; UK and Convention countries allow 0.
 * @customfunction ASSAYPASSES
 * @param assay Fineness found, in parts per thousand; a cell or a range.
 * @param mark Mark such as "14K" or 585; a cell or a range.
 * @param [tolerance] Parts per thousand allowed below the mark, 0 if omitted; a cell or a range.
 * @returns TRUE or FALSE.
 */
export function assayPassesFor(assay: unknown[][], mark: unknown[][], tolerance?: unknown[][]): unknown[][] {
  return ASSAYPASSES({ assay, mark, tolerance });
}

const FINEGOLD = spread({ weight: read.weightAbove0, mark: read.mark }, (row) => fineGold(row.weight, row.mark).grams);

/**
 * Fine gold in a weight of alloy: weight x fineness / 1000.
 * @customfunction FINEGOLD
 * @param weight Weight in grams; a cell or a range.
 * @param mark Mark such as "14K" or 585; a cell or a range.
 * @returns Grams of fine gold, unrounded.
 */
export function fineGoldIn(weight: unknown[][], mark: unknown[][]): unknown[][] {
  return FINEGOLD({ weight, mark });
}

const METALRATE = spread(
  {
    spot: read.spot,
    mark: read.mark,
    decimals: read.decimals,
  },
  (row) => read.roundedTo(metalRate(row.spot, row.mark).perGram, row.decimals),
);

/**
 * Metal rate of an alloy: spot x fineness / 1000 / 31.1034768 (grams in a troy ounce, UCUM 1.9).
 * @customfunction METALRATE
 * @param spot Price of fine gold, money per troy ounce; a cell or a range.
 * @param mark Mark such as "14K" or 585; a cell or a range.
 * @param [decimals] Decimals to round to once, half away from zero; unrounded if omitted.
 * @returns Money per gram.
 */
export function metalRateOf(spot: unknown[][], mark: unknown[][], decimals?: unknown[][]): unknown[][] {
  return METALRATE({ spot, mark, decimals });
}

const MELTVALUE = spread(
  {
    weight: read.weightAbove0,
    mark: read.mark,
    spot: read.spot,
    decimals: read.decimals,
  },
  (row) => read.roundedTo(meltValue(row.weight, row.mark, row.spot).amount, row.decimals),
);

/**
 * Melt value: what the gold in a weight of alloy is worth at spot, weight x metal rate.
 * @customfunction MELTVALUE
 * @param weight Weight in grams; a cell or a range.
 * @param mark Mark such as "14K" or 585; a cell or a range.
 * @param spot Price of fine gold, money per troy ounce; a cell or a range.
 * @param [decimals] Decimals to round to once, half away from zero; unrounded if omitted.
 * @returns Money.
 */
export function meltValueOf(
  weight: unknown[][],
  mark: unknown[][],
  spot: unknown[][],
  decimals?: unknown[][],
): unknown[][] {
  return MELTVALUE({ weight, mark, spot, decimals });
}

const WEIGHTIN = spread(
  {
    amount: read.anyNumber,
    from: read.weightUnit,
    to: read.weightUnit,
  },
  (row) => inWeightUnit(weightIn(row.amount, row.from), row.to),
);

/**
 * A weight in another unit: g, kg, mg, dwt (pennyweight), ozt (troy ounce), gr (grain), oz (avoirdupois ounce), ct (metric carat), tola. Exact figures of UCUM 1.9; tola is 180 grains.
 * @customfunction WEIGHTIN
 * @param amount Amount in the first unit; a cell or a range.
 * @param from Unit of the amount, such as "dwt"; a cell or a range.
 * @param to Unit wanted, such as "g"; a cell or a range.
 * @returns The amount in the unit wanted, unrounded.
 */
export function weightInUnit(amount: unknown[][], from: unknown[][], to: unknown[][]): unknown[][] {
  return WEIGHTIN({ amount, from, to });
}

const LENGTHIN = spread(
  {
    amount: read.anyNumber,
    from: read.lengthUnit,
    to: read.lengthUnit,
  },
  (row) => inLengthUnit(lengthIn(row.amount, row.from), row.to),
);

/**
 * A length in another unit: mm, cm, m, in, ft. Exact figures of UCUM 1.9 (1 in is 25.4 mm).
 * @customfunction LENGTHIN
 * @param amount Amount in the first unit; a cell or a range.
 * @param from Unit of the amount, such as "in"; a cell or a range.
 * @param to Unit wanted, such as "cm"; a cell or a range.
 * @returns The amount in the unit wanted, unrounded.
 */
export function lengthInUnit(amount: unknown[][], from: unknown[][], to: unknown[][]): unknown[][] {
  return LENGTHIN({ amount, from, to });
}

/**
 * Density of an alloy from its composition: 1 / sum(share / density of the metal), in grams per cubic centimetre.
 * A karat alone does not fix a density. Element densities Au 19.32, Ag 10.49, Cu 8.96, Zn 7.14, Ni 8.90, Pd 12.02; Pt 21.45 (from memory). Measured alloys differ by about 1 %.
 * @customfunction ALLOYDENSITY
 * @param metals Range of symbols: Au Ag Cu Zn Ni Pd Pt.
 * @param parts Range of parts by weight of the same shape, summing to 1, 100 or 1000 within 0.5 %.
 * @returns One density in g/cm³, unrounded.
 */
export function alloyDensityOf(metals: unknown[][], parts: unknown[][]): unknown[][] {
  return answer(() => densityOf(metals, parts));
}

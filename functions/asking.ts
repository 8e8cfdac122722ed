import { askingCheck, inWeightUnit, premium, spotLimit, weightIn } from "../src/index";
import * as read from "./readers";
import { spread } from "./spread";

const ASKINGPERGRAM = spread(
  {
    price: read.moneyFrom0,
    weight: read.numberAbove0,
    unit: read.optional(read.weightUnit, "g" as const),
  },
  (row) => row.price.amount.dividedBy(inWeightUnit(weightIn(row.weight, row.unit), "g")),
);

/**
 * Asked per gram: price / weight, the weight in any unit.
 * @customfunction ASKINGPERGRAM
 * @param price Price asked, money; a cell or a range.
 * @param weight Weight of the piece in the unit; a cell or a range.
 * @param [unit] "g" (if omitted), "dwt", "ozt" or another unit of WEIGHTIN; a cell or a range.
 * @returns Money per gram, unrounded.
 */
export function askedPerGram(price: unknown[][], weight: unknown[][], unit?: unknown[][]): unknown[][] {
  return ASKINGPERGRAM({ price, weight, unit });
}

const PREMIUM = spread(
  {
    pricePerGram: read.anyRate,
    metalRate: read.rateAbove0,
  },
  (row) => premium(row.pricePerGram, row.metalRate).perGram,
);

/**
 * Premium: a price per gram less the metal rate.
 * @customfunction PREMIUM
 * @param pricePerGram Price, money per gram; a cell or a range.
 * @param metalRate Metal rate of the alloy, money per gram; a cell or a range.
 * @returns Money per gram, below 0 where the price is under the metal; unrounded.
 */
export function premiumOf(pricePerGram: unknown[][], metalRate: unknown[][]): unknown[][] {
  return PREMIUM({ pricePerGram, metalRate });
}

const ASKINGCHECK = spread(
  {
    price: read.moneyFrom0,
    weight: read.weightAbove0,
    mark: read.mark,
    spot: read.spot,
    landedPerGram: read.counted(read.rateFrom0, "0"),
    isLandedGiven: read.isGiven,
  },
  (row) => {
    const check = askingCheck(
      row.price,
      row.weight,
      row.mark,
      row.spot,
      row.isLandedGiven ? row.landedPerGram : undefined,
    );
    return [
      check.asked.perGram,
      check.melt.perGram,
      check.premium.perGram,
      check.aboveMelt,
      check.aboveLanded?.perGram ?? "",
    ];
  },
);

/**
 * Check of an asking price: five columns, asked per gram, melt per gram, premium per gram, share above melt, and asked less our landed cost per gram (blank without it). Asked below melt is a warning (weight, mark, hollow, plated), never a bargain by itself.
 * @customfunction ASKINGCHECK
 * @param price Price asked, money; a cell or a range of one column.
 * @param weight Weight in grams; a cell or a range.
 * @param mark Mark such as "14K" or 585; a cell or a range.
 * @param spot Price of fine gold, money per troy ounce; a cell or a range.
 * @param [landedPerGram] Our landed cost per gram for the same piece; a cell or a range.
 * @returns Money per gram, money per gram, money per gram, a share, money per gram; unrounded.
 */
export function checkAsking(
  price: unknown[][],
  weight: unknown[][],
  mark: unknown[][],
  spot: unknown[][],
  landedPerGram?: unknown[][],
): unknown[][] {
  return ASKINGCHECK({ price, weight, mark, spot, landedPerGram, isLandedGiven: landedPerGram });
}

const SPOTLIMIT = spread(
  {
    price: read.moneyAbove0,
    castWeight: read.weightAbove0,
    mark: read.mark,
    otherCosts: read.moneyFrom0,
    leastMargin: read.counted(read.signedShareBelow1, "0"),
  },
  (row) => spotLimit(row.price, row.castWeight, row.mark, row.otherCosts, row.leastMargin).amount,
);

/**
 * The spot above which the margin of a price falls below the least margin: (price x (1 - least margin) - other costs) x 31.1034768 / (cast weight x fineness / 1000). #N/A where the other costs alone leave too little.
 * @customfunction SPOTLIMIT
 * @param price Price quoted, money; a cell or a range.
 * @param castWeight Weight to cast in grams; a cell or a range.
 * @param mark Mark such as "14K" or 585; a cell or a range.
 * @param otherCosts All costs besides the gold, money; a cell or a range.
 * @param [leastMargin] Share of price, 0 if omitted; a cell or a range.
 * @returns Money per troy ounce of fine gold, unrounded.
 */
export function spotLimitOf(
  price: unknown[][],
  castWeight: unknown[][],
  mark: unknown[][],
  otherCosts: unknown[][],
  leastMargin?: unknown[][],
): unknown[][] {
  return SPOTLIMIT({ price, castWeight, mark, otherCosts, leastMargin });
}

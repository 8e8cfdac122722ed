import { CostingError, goldOnScale, settledPrice } from "../src/index";
import * as read from "./readers";
import { spread } from "./spread";

const GOLDONSCALE = spread(
  { weight: read.weightAbove0, carats: read.counted(read.numberFrom0, "0"), decimals: read.decimals },
  (row) => read.roundedTo(goldOnScale(row.weight, row.carats).grams, row.decimals),
);

/**
 * Gold in what lies on a scale: the weight there less its stones, weight - carats x 0.2 g. Everything else on the scale, such as a steel spring, still counts as gold.
 * @customfunction GOLDONSCALE
 * @param weight What the scale shows, in grams; a cell or a range.
 * @param carats Carats of all stones that lie on the scale, 0 where blank; a cell or a range.
 * @param [decimals] Decimals of a gram to round to once, half away from zero; unrounded if omitted.
 * @returns Grams.
 */
export function goldOfScale(weight: unknown[][], carats: unknown[][], decimals?: unknown[][]): unknown[][] {
  return GOLDONSCALE({ weight, carats, decimals });
}

const SETTLEDPRICE = spread(
  {
    price: read.moneyFrom0,
    perGram: read.moneyFrom0,
    statedWeight: read.weightAbove0,
    goldWeight: read.weightAbove0,
    tolerance: read.counted(read.share, "0"),
    decimals: read.decimals,
  },
  ({ statedWeight: stated, goldWeight, decimals, ...quoted }) => {
    const settled = settledPrice({ ...quoted, stated }, goldWeight);
    if (settled) return read.roundedTo(settled.amount, decimals);
    throw new CostingError(
      "neverReached",
      "goldWeight",
      "found a weight that differs by more than the tolerance; agree the price with the customer",
    );
  },
);

/**
 * A price that the final weight settles: price + (goldWeight - statedWeight) x perGram. #N/A where the weight differs by more than the tolerance: the price is then to be agreed.
 * @customfunction SETTLEDPRICE
 * @param price Price quoted for one piece, money; a cell or a range.
 * @param perGram What a gram more or less changes it by, money; a cell or a range.
 * @param statedWeight Weight of the gold stated on the quote, in grams; a cell or a range.
 * @param goldWeight Final weight of the gold of one piece, in grams; a cell or a range.
 * @param tolerance Share of the stated weight by which it may differ, such as 0.05 for 5 %; none where blank; a cell or a range.
 * @param [decimals] Decimals of the currency, to round to once, half away from zero; unrounded if omitted.
 * @returns Money a piece.
 */
export function priceSettled(
  price: unknown[][],
  perGram: unknown[][],
  statedWeight: unknown[][],
  goldWeight: unknown[][],
  tolerance: unknown[][],
  decimals?: unknown[][],
): unknown[][] {
  return SETTLEDPRICE({ price, perGram, statedWeight, goldWeight, tolerance, decimals });
}

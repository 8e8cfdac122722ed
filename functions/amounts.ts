import { discountOn, goldCredit, goldUsed, linksWithStones, overheadOn, timesMoney } from "../src/index";
import * as read from "./readers";
import { spread } from "./spread";

const LINEAMOUNT = spread(
  { price: read.anyMoney, pieces: read.counted(read.wholeAbove0, "1"), decimals: read.decimals },
  (row) => read.roundedTo(timesMoney(row.price, row.pieces).amount, row.decimals),
);

/**
 * What the pieces of a line come to: price x pieces.
 * @customfunction LINEAMOUNT
 * @param price Price of one piece, money; a cell or a range.
 * @param [pieces] Pieces, 1 if omitted; a cell or a range.
 * @param [decimals] Decimals to round to once, half away from zero; unrounded if omitted.
 * @returns Money.
 */
export function amountOfLine(price: unknown[][], pieces?: unknown[][], decimals?: unknown[][]): unknown[][] {
  return LINEAMOUNT({ price, pieces, decimals });
}

const DISCOUNT = spread(
  { amount: read.anyMoney, share: read.counted(read.shareBelow1, "0"), decimals: read.decimals },
  ({ amount, share, decimals }) => read.roundedTo(discountOn(amount, share).amount, decimals),
);

/**
 * What a discount takes off an amount: amount x share.
 * @customfunction DISCOUNT
 * @param amount The pieces before the discount, money; a cell or a range.
 * @param share Share taken off, such as 0.1 for 10 %; none where blank; a cell or a range.
 * @param [decimals] Decimals to round to once, half away from zero; unrounded if omitted.
 * @returns Money, taken off.
 */
export function discountOff(amount: unknown[][], share: unknown[][], decimals?: unknown[][]): unknown[][] {
  return DISCOUNT({ amount, share, decimals });
}

const OVERHEAD = spread(
  { cost: read.moneyFrom0, share: read.counted(read.share, "0") },
  ({ cost, share }) => overheadOn(cost, share).amount,
);

/**
 * Overhead on a cost: cost x share.
 * @customfunction OVERHEAD
 * @param cost The cost before it, money; a cell or a range.
 * @param share Share of that cost, such as 0.06 for 6 %; none where blank; a cell or a range.
 * @returns Money, unrounded.
 */
export function overheadOf(cost: unknown[][], share: unknown[][]): unknown[][] {
  return OVERHEAD({ cost, share });
}

const LINKSWITHSTONES = spread({ links: read.wholeFrom0, every: read.counted(read.wholeAbove0, "1") }, (row) =>
  linksWithStones(row.links, row.every),
);

/**
 * How many links of a piece have stones where every n-th has: whole links only.
 * @customfunction LINKSWITHSTONES
 * @param links Links of the piece, a whole number; a cell or a range.
 * @param [every] Every how many links, 1 for all of them if omitted; a cell or a range.
 * @returns Links, a whole number.
 */
export function linksSet(links: unknown[][], every?: unknown[][]): unknown[][] {
  return LINKSWITHSTONES({ links, every });
}

const GOLDUSED = spread({ brought: read.weightFrom0, needed: read.weightFrom0 }, (row) => {
  return goldUsed(row.brought, row.needed).grams;
});

/**
 * How much of a customer's fine gold goes into the work: all of it, but not more than the work needs.
 * @customfunction GOLDUSED
 * @param brought Fine gold in what the customer brought, in grams; a cell or a range.
 * @param needed Fine gold in all that is cast, in grams; a cell or a range.
 * @returns Grams of fine gold.
 */
export function goldOfCustomer(brought: unknown[][], needed: unknown[][]): unknown[][] {
  return GOLDUSED({ brought, needed });
}

const GOLDCREDIT = spread(
  { fineGold: read.weightFrom0, spot: read.spot, share: read.counted(read.share, "1"), decimals: read.decimals },
  (row) => read.roundedTo(goldCredit(row.fineGold, row.spot, row.share).amount, row.decimals),
);

/**
 * What a customer's gold is paid for: fine gold x spot / 31.1034768 x the share of its melt value that is paid.
 * @customfunction GOLDCREDIT
 * @param fineGold Fine gold that counts, in grams; a cell or a range.
 * @param spot Price of fine gold, money per troy ounce; a cell or a range.
 * @param [share] Share of its melt value that is paid, all of it if omitted; a cell or a range.
 * @param [decimals] Decimals to round to once, half away from zero; unrounded if omitted.
 * @returns Money.
 */
export function creditForGold(
  fineGold: unknown[][],
  spot: unknown[][],
  share?: unknown[][],
  decimals?: unknown[][],
): unknown[][] {
  return GOLDCREDIT({ fineGold, spot, share, decimals });
}

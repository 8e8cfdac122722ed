import {
  askedPrice,
  type Money,
  money,
  netPrice,
  partAtPremium,
  priceUpToStep,
  type Quotient,
  roundUpToStep,
  shownPrice,
  taxOf,
} from "../src/index";
import * as read from "./readers";
import { spread } from "./spread";

/** How tax stands to a price, read as the Rates sheet is: a blank is no tax, on top. */
const TAX = { taxShare: read.counted(read.shareBelow1, "0"), taxIs: read.taxIs } as const;

interface TaxRead {
  readonly taxShare: Quotient;
  readonly taxIs: "on top" | "in the price";
}

function taxIn({ taxShare: share, taxIs }: TaxRead) {
  return { share, isIncluded: taxIs === "in the price" };
}

const SELLINGPRICE = spread(
  {
    cost: read.moneyFrom0,
    apart: read.counted(read.moneyFrom0, "0"),
    by: read.pricedBy,
    figure: read.priceFigure,
    weight: read.weightAbove0,
    metalRate: read.rateAbove0,
    ...TAX,
    step: read.counted(read.numberFrom0, "0"),
    decimals: read.decimals,
  },
  ({ cost: landed, apart, by, figure, weight, metalRate, step, decimals, ...tax }) => {
    const pricing = read.pricingBy(by, figure);
    if (pricing.by === "own price") return read.roundedTo(pricing.price.amount, decimals);
    const shown = shownPrice(askedPrice({ landed, apart, weight, metalRate }, pricing), taxIn(tax));
    if (decimals === undefined) return roundUpToStep(shown, step).amount;
    return priceUpToStep(withoutNoise(shown, decimals), step, decimals).amount;
  },
);

/** Places beyond the smallest coin that a cell's own sums leave right. */
const SURE_PLACES = 4;
const MOST_PLACES = 15;

/** A cost that comes from a cell holds fifteen digits: what they miss of a price on its step must not lift it a whole step. */
function withoutNoise(price: Money, decimals: number): Money {
  return money(price.amount.toDecimals(Math.min(decimals + SURE_PLACES, MOST_PLACES)), price.currency);
}

/**
 * Selling price of one piece. By "markup": cost x (1 + figure). By "margin": cost / (1 - figure). By "premium": weight x (metal rate + figure) + apart. The tax is added where prices hold it, and the price rounded up to the step; with decimals at least up to the smallest coin, where less than half a ten-thousandth of the coin over a step does not count. By "own price" the figure is the price.
 * @customfunction SELLINGPRICE
 * @param cost Landed cost of the piece, money; a cell or a range.
 * @param apart What a premium adds at cost: stones, plating, bought clasp, money; 0 where blank; a cell or a range.
 * @param by "markup", "margin", "premium" or "own price"; a cell or a range.
 * @param figure Share of cost, share of price below 1, money per gram, or money; a cell or a range.
 * @param weight Finished weight of the links in grams; a cell or a range.
 * @param metalRate Metal rate of the alloy, money per gram; a cell or a range.
 * @param taxShare Tax as a share, such as 0.08 for 8 %; none where blank; a cell or a range.
 * @param taxIs "on top" (where blank) or "in the price"; a cell or a range.
 * @param [step] Price step to round up to, such as 5; none if omitted; a cell or a range.
 * @param [decimals] Decimals of the currency, to round to once; unrounded if omitted.
 * @returns Money a piece, as the customer reads it.
 */
export function sellingPriceOf(
  cost: unknown[][],
  apart: unknown[][],
  by: unknown[][],
  figure: unknown[][],
  weight: unknown[][],
  metalRate: unknown[][],
  taxShare: unknown[][],
  taxIs: unknown[][],
  step?: unknown[][],
  decimals?: unknown[][],
): unknown[][] {
  return SELLINGPRICE({ cost, apart, by, figure, weight, metalRate, taxShare, taxIs, step, decimals });
}

const PARTATPREMIUM = spread(
  {
    weight: read.counted(read.weightFrom0, "0"),
    metalRate: read.rateAbove0,
    premium: read.rateFrom0,
    cost: read.counted(read.moneyFrom0, "0"),
  },
  (row) => partAtPremium(row.weight, row.metalRate, row.premium, row.cost).amount,
);

/**
 * What a clasp or finding brings where the price goes by premium: weight x (metal rate + premium), but never less than it cost.
 * @customfunction PARTATPREMIUM
 * @param weight Weight of the part in grams, 0 where blank; a cell or a range.
 * @param metalRate Metal rate of the alloy, money per gram; a cell or a range.
 * @param premium Money per gram over the metal rate; a cell or a range.
 * @param [cost] What the part cost, money, 0 if omitted; a cell or a range.
 * @returns Money, unrounded.
 */
export function partBrings(
  weight: unknown[][],
  metalRate: unknown[][],
  premium: unknown[][],
  cost?: unknown[][],
): unknown[][] {
  return PARTATPREMIUM({ weight, metalRate, premium, cost });
}

const NETPRICE = spread(
  {
    price: read.anyMoney,
    ...TAX,
    discount: read.counted(read.shareBelow1, "0"),
    decimals: read.decimals,
  },
  ({ price, discount, decimals, ...tax }) => read.roundedTo(netPrice(price, discount, taxIn(tax)).amount, decimals),
);

/**
 * What a shown price brings: without the discount and without the tax that it holds, price x (1 - discount) / (1 + tax). Tax on top is not in it.
 * @customfunction NETPRICE
 * @param price Price as the customer reads it, money; a cell or a range.
 * @param taxShare Tax as a share, such as 0.08 for 8 %; none where blank; a cell or a range.
 * @param taxIs "on top" (where blank) or "in the price"; a cell or a range.
 * @param [discount] Share off the price, 0 if omitted; a cell or a range.
 * @param [decimals] Decimals to round to once, half away from zero; unrounded if omitted.
 * @returns Money.
 */
export function netPriceOf(
  price: unknown[][],
  taxShare: unknown[][],
  taxIs: unknown[][],
  discount?: unknown[][],
  decimals?: unknown[][],
): unknown[][] {
  return NETPRICE({ price, taxShare, taxIs, discount, decimals });
}

const SALESTAX = spread({ amount: read.anyMoney, ...TAX, decimals: read.decimals }, ({ amount, decimals, ...tax }) =>
  read.roundedTo(taxOf(amount, taxIn(tax)).amount, decimals),
);

/**
 * The tax on a shown amount: amount x tax on top of it, or amount x tax / (1 + tax) where the amount holds it.
 * @customfunction SALESTAX
 * @param amount What is taxed, as the customer reads it, money; a cell or a range.
 * @param taxShare Tax as a share, such as 0.08 for 8 %; none where blank; a cell or a range.
 * @param taxIs "on top" (where blank) or "in the price"; a cell or a range.
 * @param [decimals] Decimals to round to once, half away from zero; unrounded if omitted.
 * @returns Money.
 */
export function salesTaxOn(
  amount: unknown[][],
  taxShare: unknown[][],
  taxIs: unknown[][],
  decimals?: unknown[][],
): unknown[][] {
  return SALESTAX({ amount, taxShare, taxIs, decimals });
}

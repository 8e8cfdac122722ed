import {
  askingCheck,
  inWeightUnit,
  margin,
  markup,
  premium,
  priceAtMargin,
  priceAtMarkup,
  priceAtPremium,
  Quotient,
  roundUpToStep,
  spotLimit,
  weightIn,
} from "../src/index";
import * as read from "./readers";
import { spread } from "./spread";

/**
 * Markup: profit as a share of cost, (price - cost) / cost.
 * @customfunction MARKUP
 * @param cost Landed cost, money above 0; a cell or a range.
 * @param price Price, money; a cell or a range.
 * @returns A share, 0.25 for 25 %; unrounded.
 */
export function markupOf(cost: unknown[][], price: unknown[][]): unknown[][] {
  return spread({ cost: [cost, read.numberAbove0], price: [price, read.numberFrom0] }, (row) =>
    markup(row.cost, row.price),
  );
}

/**
 * Margin: profit as a share of price, (price - cost) / price.
 * @customfunction MARGIN
 * @param cost Landed cost, money; a cell or a range.
 * @param price Price, money above 0; a cell or a range.
 * @returns A share, 0.20 for 20 %; unrounded.
 */
export function marginOf(cost: unknown[][], price: unknown[][]): unknown[][] {
  return spread({ cost: [cost, read.numberFrom0], price: [price, read.numberAbove0] }, (row) =>
    margin(row.cost, row.price),
  );
}

/**
 * Price at a markup on cost: cost x (1 + markup), rounded up to the step.
 * @customfunction PRICEATMARKUP
 * @param cost Landed cost, money; a cell or a range.
 * @param markup Share of cost, such as 0.3 for 30 %; a cell or a range.
 * @param [step] Price step to round up to, such as 5; none if omitted; a cell or a range.
 * @param [decimals] Decimals to round to once, half away from zero; unrounded if omitted.
 * @returns Money.
 */
export function priceByMarkup(
  cost: unknown[][],
  markup: unknown[][],
  step?: unknown[][],
  decimals?: unknown[][],
): unknown[][] {
  return spread(
    {
      cost: [cost, read.moneyFrom0],
      markup: [markup, read.share],
      ...ending(step, decimals),
    },
    (row) => read.roundedTo(roundUpToStep(priceAtMarkup(row.cost, row.markup), row.step).amount, row.decimals),
  );
}

/**
 * Price at a margin on price: cost / (1 - margin), rounded up to the step.
 * @customfunction PRICEATMARGIN
 * @param cost Landed cost, money; a cell or a range.
 * @param margin Share of price below 1, such as 0.35 for 35 %; a cell or a range.
 * @param [step] Price step to round up to, such as 5; none if omitted; a cell or a range.
 * @param [decimals] Decimals to round to once, half away from zero; unrounded if omitted.
 * @returns Money.
 */
export function priceByMargin(
  cost: unknown[][],
  margin: unknown[][],
  step?: unknown[][],
  decimals?: unknown[][],
): unknown[][] {
  return spread(
    {
      cost: [cost, read.moneyFrom0],
      margin: [margin, read.shareBelow1],
      ...ending(step, decimals),
    },
    (row) => read.roundedTo(roundUpToStep(priceAtMargin(row.cost, row.margin), row.step).amount, row.decimals),
  );
}

/**
 * Price at a premium over the metal rate: weight x (metal rate + premium), rounded up to the step.
 * @customfunction PRICEATPREMIUM
 * @param weight Weight in grams; a cell or a range.
 * @param metalRate Metal rate of the alloy, money per gram; a cell or a range.
 * @param premium Money per gram over the metal rate; a cell or a range.
 * @param [step] Price step to round up to, such as 5; none if omitted; a cell or a range.
 * @param [decimals] Decimals to round to once, half away from zero; unrounded if omitted.
 * @returns Money.
 */
export function priceByPremium(
  weight: unknown[][],
  metalRate: unknown[][],
  premium: unknown[][],
  step?: unknown[][],
  decimals?: unknown[][],
): unknown[][] {
  return spread(
    {
      weight: [weight, read.weightAbove0],
      metalRate: [metalRate, read.rateAbove0],
      premium: [premium, read.anyRate],
      ...ending(step, decimals),
    },
    (row) =>
      read.roundedTo(
        roundUpToStep(priceAtPremium(row.weight, row.metalRate, row.premium), row.step).amount,
        row.decimals,
      ),
  );
}

/**
 * Asked per gram: price / weight, the weight in any unit.
 * @customfunction ASKINGPERGRAM
 * @param price Price asked, money; a cell or a range.
 * @param weight Weight of the piece in the unit; a cell or a range.
 * @param [unit] "g" (if omitted), "dwt", "ozt" or another unit of WEIGHTIN; a cell or a range.
 * @returns Money per gram, unrounded.
 */
export function askedPerGram(price: unknown[][], weight: unknown[][], unit?: unknown[][]): unknown[][] {
  return spread(
    {
      price: [price, read.moneyFrom0],
      weight: [weight, read.numberAbove0],
      unit: [unit, read.optional(read.weightUnit, "g" as const)],
    },
    (row) => row.price.amount.dividedBy(inWeightUnit(weightIn(row.weight, row.unit), "g")),
  );
}

/**
 * Premium: a price per gram less the metal rate.
 * @customfunction PREMIUM
 * @param pricePerGram Price, money per gram; a cell or a range.
 * @param metalRate Metal rate of the alloy, money per gram; a cell or a range.
 * @returns Money per gram, below 0 where the price is under the metal; unrounded.
 */
export function premiumOf(pricePerGram: unknown[][], metalRate: unknown[][]): unknown[][] {
  return spread(
    {
      pricePerGram: [pricePerGram, read.anyRate],
      metalRate: [metalRate, read.rateAbove0],
    },
    (row) => premium(row.pricePerGram, row.metalRate).perGram,
  );
}

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
  return spread(
    {
      price: [price, read.moneyFrom0],
      weight: [weight, read.weightAbove0],
      mark: [mark, read.mark],
      spot: [spot, read.spot],
      landedPerGram: [landedPerGram, read.optional(read.rateFrom0, undefined)],
    },
    (row) => {
      const check = askingCheck(row.price, row.weight, row.mark, row.spot, row.landedPerGram);
      return [
        check.asked.perGram,
        check.melt.perGram,
        check.premium.perGram,
        check.aboveMelt,
        check.aboveLanded?.perGram ?? "",
      ];
    },
  );
}

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
  return spread(
    {
      price: [price, read.moneyAbove0],
      castWeight: [castWeight, read.weightAbove0],
      mark: [mark, read.mark],
      otherCosts: [otherCosts, read.moneyFrom0],
      leastMargin: [leastMargin, read.optional(read.signedShareBelow1, Quotient.zero)],
    },
    (row) => spotLimit(row.price, row.castWeight, row.mark, row.otherCosts, row.leastMargin).amount,
  );
}

/** How every price ends: up to a step, then rounded once. */
function ending(step: unknown, decimals: unknown) {
  return {
    step: [step, read.optional(read.numberFrom0, Quotient.zero)],
    decimals: [decimals, read.optional(read.decimals, undefined)],
  } as const;
}

import { margin, markup, priceAtMargin, priceAtMarkup, priceAtPremium, roundUpToStep } from "../src/index";
import * as read from "./readers";
import { spread } from "./spread";

/** How every price ends: up to a step, then rounded once. */
const ENDING = { step: read.counted(read.numberFrom0, "0"), decimals: read.decimals } as const;

const MARKUP = spread({ cost: read.numberAbove0, price: read.numberFrom0 }, (row) => markup(row.cost, row.price));

/**
 * Markup: profit as a share of cost, (price - cost) / cost.
 * @customfunction MARKUP
 * @param cost Landed cost, money above 0; a cell or a range.
 * @param price Price, money; a cell or a range.
 * @returns A share, 0.25 for 25 %; unrounded.
 */
export function markupOf(cost: unknown[][], price: unknown[][]): unknown[][] {
  return MARKUP({ cost, price });
}

const MARGIN = spread({ cost: read.numberFrom0, price: read.numberAbove0 }, (row) => margin(row.cost, row.price));

/**
 * Margin: profit as a share of price, (price - cost) / price.
 * @customfunction MARGIN
 * @param cost Landed cost, money; a cell or a range.
 * @param price Price, money above 0; a cell or a range.
 * @returns A share, 0.20 for 20 %; unrounded.
 */
export function marginOf(cost: unknown[][], price: unknown[][]): unknown[][] {
  return MARGIN({ cost, price });
}

const PRICEATMARKUP = spread(
  {
    cost: read.moneyFrom0,
    markup: read.share,
    ...ENDING,
  },
  (row) => read.roundedTo(roundUpToStep(priceAtMarkup(row.cost, row.markup), row.step).amount, row.decimals),
);

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
  return PRICEATMARKUP({ cost, markup, step, decimals });
}

const PRICEATMARGIN = spread(
  {
    cost: read.moneyFrom0,
    margin: read.shareBelow1,
    ...ENDING,
  },
  (row) => read.roundedTo(roundUpToStep(priceAtMargin(row.cost, row.margin), row.step).amount, row.decimals),
);

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
  return PRICEATMARGIN({ cost, margin, step, decimals });
}

const PRICEATPREMIUM = spread(
  {
    weight: read.weightAbove0,
    metalRate: read.rateAbove0,
    premium: read.anyRate,
    ...ENDING,
  },
  (row) =>
    read.roundedTo(
      roundUpToStep(priceAtPremium(row.weight, row.metalRate, row.premium), row.step).amount,
      row.decimals,
    ),
);

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
  return PRICEATPREMIUM({ weight, metalRate, premium, step, decimals });
}

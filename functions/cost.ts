import { crossoverWeight, landedCost, makeOrBuy, perGramOf, Quotient, stoneCost } from "../src/index";
import * as read from "./readers";
import { spread } from "./spread";

const NOTHING = read.cash(Quotient.zero);

/** What the three functions of landed cost read alike. */
function making(
  weight: unknown,
  metalRate: unknown,
  castingFee: unknown,
  labour: unknown,
  loss: unknown,
  lossBasis: unknown,
  other: unknown,
  basis: unknown,
) {
  return {
    weight: [weight, read.weightAbove0],
    metalRate: [metalRate, read.rateAbove0],
    castingFee: [castingFee, read.rateFrom0],
    labour: [labour, read.moneyFrom0],
    loss: [loss, read.numberFrom0],
    lossBasis: [lossBasis, read.optional(read.lossBasis, "cast" as const)],
    other: [other, read.optional(read.anyMoney, NOTHING)],
    basis: [basis, read.optional(read.costBasis, "finished" as const)],
  } as const;
}

/**
 * Landed cost: everything spent to have the finished piece in hand. Basis "finished": cast weight x (metal rate + casting fee) + labour + other. Basis "quick", the bench shorthand: weight x (metal rate + casting fee) + labour + lost grams x metal rate + other.
 * @customfunction LANDEDCOST
 * @param weight Finished or stated weight in grams; a cell or a range.
 * @param metalRate Metal rate of the alloy, money per gram; a cell or a range.
 * @param castingFee What the caster adds, money per gram cast; a cell or a range.
 * @param labour Joining, filing and polishing of the piece, money; a cell or a range.
 * @param loss Polish loss: a share such as 0.02 for 2 %, or grams; a cell or a range.
 * @param [lossBasis] "cast" (if omitted), "finished" or "grams"; a cell or a range.
 * @param [other] Findings, stones, plating and the like, money, 0 if omitted; a cell or a range.
 * @param [basis] "finished" (if omitted) or "quick"; a cell or a range.
 * @param [decimals] Decimals to round to once, half away from zero; unrounded if omitted.
 * @returns Money.
 */
export function landedCostOf(
  weight: unknown[][],
  metalRate: unknown[][],
  castingFee: unknown[][],
  labour: unknown[][],
  loss: unknown[][],
  lossBasis?: unknown[][],
  other?: unknown[][],
  basis?: unknown[][],
  decimals?: unknown[][],
): unknown[][] {
  return spread(
    {
      ...making(weight, metalRate, castingFee, labour, loss, lossBasis, other, basis),
      decimals: [decimals, read.optional(read.decimals, undefined)],
    },
    (row) => read.roundedTo(landedCost({ ...row, loss: read.lossOf(row.loss, row.lossBasis) }).amount, row.decimals),
  );
}

/**
 * Landed cost per gram: landed cost / weight, on the basis you name.
 * @customfunction LANDEDPERGRAM
 * @param weight Finished or stated weight in grams; a cell or a range.
 * @param metalRate Metal rate of the alloy, money per gram; a cell or a range.
 * @param castingFee What the caster adds, money per gram cast; a cell or a range.
 * @param labour Joining, filing and polishing of the piece, money; a cell or a range.
 * @param loss Polish loss: a share such as 0.02 for 2 %, or grams; a cell or a range.
 * @param [lossBasis] "cast" (if omitted), "finished" or "grams"; a cell or a range.
 * @param [other] Findings, stones, plating and the like, money, 0 if omitted; a cell or a range.
 * @param [basis] "finished" (if omitted) or "quick"; a cell or a range.
 * @param [decimals] Decimals to round to once, half away from zero; unrounded if omitted.
 * @returns Money per gram.
 */
export function landedPerGramOf(
  weight: unknown[][],
  metalRate: unknown[][],
  castingFee: unknown[][],
  labour: unknown[][],
  loss: unknown[][],
  lossBasis?: unknown[][],
  other?: unknown[][],
  basis?: unknown[][],
  decimals?: unknown[][],
): unknown[][] {
  return spread(
    {
      ...making(weight, metalRate, castingFee, labour, loss, lossBasis, other, basis),
      decimals: [decimals, read.optional(read.decimals, undefined)],
    },
    (row) =>
      read.roundedTo(
        perGramOf(landedCost({ ...row, loss: read.lossOf(row.loss, row.lossBasis) }), row.weight).perGram,
        row.decimals,
      ),
  );
}

/**
 * Cost of stones set: count x (stone price x (1 + breakage) + setting fee).
 * @customfunction STONECOST
 * @param count Stones, a whole number; a cell or a range.
 * @param stonePrice Price of one stone; a cell or a range.
 * @param settingFee Fee for setting one stone; a cell or a range.
 * @param [breakage] Share of stones broken in setting, 0 if omitted; a cell or a range.
 * @param [decimals] Decimals to round to once, half away from zero; unrounded if omitted.
 * @returns Money.
 */
export function stonesCost(
  count: unknown[][],
  stonePrice: unknown[][],
  settingFee: unknown[][],
  breakage?: unknown[][],
  decimals?: unknown[][],
): unknown[][] {
  return spread(
    {
      count: [count, read.wholeFrom0],
      stonePrice: [stonePrice, read.moneyFrom0],
      settingFee: [settingFee, read.moneyFrom0],
      breakage: [breakage, read.optional(read.share, Quotient.zero)],
      decimals: [decimals, read.optional(read.decimals, undefined)],
    },
    (row) => read.roundedTo(stoneCost(row.count, row.stonePrice, row.settingFee, row.breakage).amount, row.decimals),
  );
}

/**
 * The weight above which making beats buying ready chain: flat cost / (surcharge - what making adds per gram above the metal rate). #N/A where it is never reached.
 * @customfunction CROSSOVERWEIGHT
 * @param flatCost Cost of making that does not grow with weight, money; a cell or a range.
 * @param addedPerGram What making adds per gram above the metal rate: casting fee, loss x metal rate, labour per gram; a cell or a range.
 * @param surcharge What a maker of ready chain adds to the metal rate, money per gram; a cell or a range.
 * @returns Grams, unrounded.
 */
export function crossoverAt(flatCost: unknown[][], addedPerGram: unknown[][], surcharge: unknown[][]): unknown[][] {
  return spread(
    {
      flatCost: [flatCost, read.numberFrom0],
      addedPerGram: [addedPerGram, read.anyNumber],
      surcharge: [surcharge, read.anyNumber],
    },
    (row) => crossoverWeight(row.flatCost, row.addedPerGram, row.surcharge).grams,
  );
}

/**
 * Make or buy: four columns, landed cost of making per gram, cost of buying ready chain per gram (metal rate + surcharge), what making saves on the piece, and "make" or "buy". At equal cost it says buy.
 * @customfunction MAKEORBUY
 * @param weight Finished or stated weight in grams; a cell or a range of one column.
 * @param metalRate Metal rate of the alloy, money per gram; a cell or a range.
 * @param castingFee What the caster adds, money per gram cast; a cell or a range.
 * @param labour Joining, filing and polishing of the piece, money; a cell or a range.
 * @param loss Polish loss: a share such as 0.02 for 2 %, or grams; a cell or a range.
 * @param surcharge What a maker of ready chain adds to the metal rate, money per gram; a cell or a range.
 * @param [lossBasis] "cast" (if omitted), "finished" or "grams"; a cell or a range.
 * @param [other] Findings, stones, plating and the like, money, 0 if omitted; a cell or a range.
 * @param [basis] "finished" (if omitted) or "quick"; a cell or a range.
 * @returns Money per gram, money per gram, money, and a word; unrounded.
 */
export function makeOrBuyChain(
  weight: unknown[][],
  metalRate: unknown[][],
  castingFee: unknown[][],
  labour: unknown[][],
  loss: unknown[][],
  surcharge: unknown[][],
  lossBasis?: unknown[][],
  other?: unknown[][],
  basis?: unknown[][],
): unknown[][] {
  return spread(
    {
      ...making(weight, metalRate, castingFee, labour, loss, lossBasis, other, basis),
      surcharge: [surcharge, read.rateFrom0],
    },
    (row) => {
      const choice = makeOrBuy({ ...row, loss: read.lossOf(row.loss, row.lossBasis) }, row.surcharge);
      return [choice.makePerGram.perGram, choice.buyPerGram.perGram, choice.saving.amount, choice.verdict];
    },
  );
}

import { bestMaker, crossoverWeight, landedCost, makeOrBuy, metalRateOf, perGramOf, stoneCost } from "../src/index";
import * as read from "./readers";
import { spread } from "./spread";

/** What the three functions of landed cost read alike. */
const MAKING = {
  weight: read.weightAbove0,
  metalRate: read.potRateAbove0,
  castingFee: read.rateFrom0,
  labour: read.moneyFrom0,
  loss: read.loss,
  lossBasis: read.optional(read.lossBasis, "cast" as const),
  other: read.counted(read.anyMoney, "0"),
  basis: read.optional(read.costBasis, "finished" as const),
} as const;

const LANDEDCOST = spread(
  {
    ...MAKING,
    decimals: read.decimals,
  },
  (row) => read.roundedTo(landedCost({ ...row, loss: read.lossOf(row.loss, row.lossBasis) }).amount, row.decimals),
);

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
  return LANDEDCOST({ weight, metalRate, castingFee, labour, loss, lossBasis, other, basis, decimals });
}

const LANDEDPERGRAM = spread(
  {
    ...MAKING,
    decimals: read.decimals,
  },
  (row) =>
    read.roundedTo(
      perGramOf(landedCost({ ...row, loss: read.lossOf(row.loss, row.lossBasis) }), row.weight).perGram,
      row.decimals,
    ),
);

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
  return LANDEDPERGRAM({ weight, metalRate, castingFee, labour, loss, lossBasis, other, basis, decimals });
}

const STONECOST = spread(
  {
    count: read.wholeFrom0,
    stonePrice: read.moneyFrom0,
    settingFee: read.moneyFrom0,
    breakage: read.counted(read.share, "0"),
    decimals: read.decimals,
  },
  (row) => read.roundedTo(stoneCost(row.count, row.stonePrice, row.settingFee, row.breakage).amount, row.decimals),
);

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
  return STONECOST({ count, stonePrice, settingFee, breakage, decimals });
}

const CROSSOVERWEIGHT = spread(
  {
    flatCost: read.numberFrom0,
    addedPerGram: read.anyNumber,
    surcharge: read.anyNumber,
    metalDifference: read.counted(read.anyNumber, "0"),
  },
  (row) => crossoverWeight(row.flatCost, row.addedPerGram, row.surcharge, row.metalDifference).grams,
);

/**
 * The weight above which making beats buying ready chain: flat cost / (surcharge - what making adds per gram above the metal rate - metal difference). #N/A where it is never reached.
 * @customfunction CROSSOVERWEIGHT
 * @param flatCost Cost of making that does not grow with weight, money; a cell or a range.
 * @param addedPerGram What making adds per gram above the metal rate: casting fee, loss x metal rate, labour per gram; a cell or a range.
 * @param surcharge What a maker of ready chain adds to the metal rate, money per gram; a cell or a range.
 * @param [metalDifference] Metal rate of the alloy cast less that of the mark bought, money per gram, 0 if omitted: for an alloy with more gold than its mark; a cell or a range.
 * @returns Grams, unrounded.
 */
export function crossoverAt(
  flatCost: unknown[][],
  addedPerGram: unknown[][],
  surcharge: unknown[][],
  metalDifference?: unknown[][],
): unknown[][] {
  return CROSSOVERWEIGHT({ flatCost, addedPerGram, surcharge, metalDifference });
}

const MAKEORBUY = spread(
  {
    ...MAKING,
    surcharge: read.rateFrom0,
    boughtRate: read.counted(read.rateAbove0, "0"),
    isBoughtGiven: read.isGiven,
  },
  (row) => {
    const metalRate = metalRateOf("the mark", row.isBoughtGiven ? row.boughtRate : row.metalRate);
    const making = { ...row, loss: read.lossOf(row.loss, row.lossBasis) };
    const choice = makeOrBuy(making, { metalRate, surcharge: row.surcharge });
    return [choice.makePerGram.perGram, choice.buyPerGram.perGram, choice.saving.amount, choice.verdict];
  },
);

/**
 * Make or buy: four columns, landed cost of making per gram, cost of buying ready chain per gram (metal rate of its mark + surcharge), what making saves on the piece, and "make" or "buy". At equal cost it says buy.
 * @customfunction MAKEORBUY
 * @param weight Finished or stated weight in grams; a cell or a range of one column.
 * @param metalRate Metal rate of the alloy that is cast, money per gram; a cell or a range.
 * @param castingFee What the caster adds, money per gram cast; a cell or a range.
 * @param labour Joining, filing and polishing of the piece, money; a cell or a range.
 * @param loss Polish loss: a share such as 0.02 for 2 %, or grams; a cell or a range.
 * @param surcharge What a maker of ready chain adds to the metal rate, money per gram; a cell or a range.
 * @param [lossBasis] "cast" (if omitted), "finished" or "grams"; a cell or a range.
 * @param [other] Findings, stones, plating and the like, money, 0 if omitted; a cell or a range.
 * @param [basis] "finished" (if omitted) or "quick"; a cell or a range.
 * @param [boughtRate] Metal rate of the mark that is bought, money per gram; metalRate if omitted. An alloy of your own may hold more gold than its mark; a cell or a range.
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
  boughtRate?: unknown[][],
): unknown[][] {
  return MAKEORBUY({
    weight,
    metalRate,
    castingFee,
    labour,
    loss,
    surcharge,
    lossBasis,
    other,
    basis,
    boughtRate,
    isBoughtGiven: boughtRate,
  });
}

const BESTMAKER = spread(
  {
    weight: read.weightAbove0,
    mark: read.namedMark,
    makers: read.makers,
    currency: read.currency,
  },
  (row) => {
    const { maker, surcharge } = bestMaker(row.makers.in(row.currency), row.weight, row.mark);
    return [maker, surcharge.perGram];
  },
);

/**
 * The maker of ready chain who asks least for a weight, from price lists with surcharges by class of weight: two columns, the maker and the surcharge per gram. Give the surcharge on to MAKEORBUY. A maker whose minimum order in grams is more than that weight cannot sell it; minimums in money are not looked at. #N/A where nobody on the lists sells that weight.
 * @customfunction BESTMAKER
 * @param weight Weight of one chain in grams; a cell or a range.
 * @param mark Mark of the chain such as "14K" or 585; a cell or a range.
 * @param makers Price lists with their row of headers, such as Makers[#All]: Maker, Mark, From g, Surcharge per g; a range.
 * @param [currency] Three letters such as "USD", or Rate_Currency: prices in another currency are refused. If omitted, the answer is in the one currency that the lists name, and lists in several are refused.
 * @returns Text, and money per gram; a row a weight. A maker's rows for the very mark go before its rows for all marks.
 */
export function bestMakerFor(
  weight: unknown[][],
  mark: unknown[][],
  makers: unknown[][],
  currency?: unknown[][],
): unknown[][] {
  return BESTMAKER({ weight, mark, makers, currency });
}

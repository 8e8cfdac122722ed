import {
  castingCost,
  castWeight,
  chargedWeight,
  countLinks,
  labourCost,
  lostWeight,
  polishingOutcome,
  Quotient,
  stonesToBuy,
} from "../src/index";
import * as read from "./readers";
import { spread } from "./spread";

const PATTERNLINKS = spread(
  {
    links: read.wholeFrom0,
    pattern: read.pattern,
    colour: read.colour,
    casting: read.optional(read.linkCasting, "all closed" as const),
    cast: read.optional(read.closedOrOpen, "links" as const),
  },
  ({ links, pattern, colour, casting, cast }) => {
    const groups = countLinks(links, pattern.length > 0 ? pattern : [colour], casting);
    return groups.find((group) => group.colour === colour)?.[cast] ?? Quotient.zero;
  },
);

/**
 * How many of a chain's links are of one colour when its pattern repeats from the first link, such as YYW; and how many of them are cast closed, or open. The last repeat may be cut short.
 * @customfunction PATTERNLINKS
 * @param links Links of the chain, a whole number; a cell or a range.
 * @param pattern The repeating links as letters, Y yellow, R rose, W white, G green, such as YYW; blank where all are of one colour; a cell or a range.
 * @param colour The colour that is counted, a letter or a word such as "yellow"; a cell or a range.
 * @param [casting] "closed and open in turn", "all open" or "all closed" (if omitted); a cell or a range.
 * @param [cast] "closed" or "open" counts only those; all of the colour if omitted; a cell or a range.
 * @returns Links, a whole number.
 */
export function linksOfColour(
  links: unknown[][],
  pattern: unknown[][],
  colour: unknown[][],
  casting?: unknown[][],
  cast?: unknown[][],
): unknown[][] {
  return PATTERNLINKS({ links, pattern, colour, casting, cast });
}

const LABOURCOST = spread(
  {
    links: read.numberFrom0,
    weight: read.weightFrom0,
    flat: read.counted(read.moneyFrom0, "0"),
    perLink: read.counted(read.moneyFrom0, "0"),
    perGram: read.counted(read.rateFrom0, "0"),
    minimum: read.counted(read.moneyFrom0, "0"),
  },
  (row) => labourCost(row, row.links, row.weight).amount,
);

/**
 * Labour of one piece: flat + links x per link + weight x per gram, and not below the minimum.
 * @customfunction LABOURCOST
 * @param links Links of the piece; a cell or a range.
 * @param weight Finished weight of its links in grams; a cell or a range.
 * @param [flat] Money a piece, 0 if omitted; a cell or a range.
 * @param [perLink] Money a link, 0 if omitted; a cell or a range.
 * @param [perGram] Money a finished gram, 0 if omitted; a cell or a range.
 * @param [minimum] Least for a piece, money, 0 if omitted; a cell or a range.
 * @returns Money a piece, unrounded.
 */
export function labourCostOf(
  links: unknown[][],
  weight: unknown[][],
  flat?: unknown[][],
  perLink?: unknown[][],
  perGram?: unknown[][],
  minimum?: unknown[][],
): unknown[][] {
  return LABOURCOST({ links, weight, flat, perLink, perGram, minimum });
}

const CASTINGCOST = spread(
  {
    castWeight: read.weightFrom0,
    fee: read.rateFrom0,
    minimum: read.counted(read.moneyFrom0, "0"),
    pieces: read.counted(read.wholeAbove0, "1"),
  },
  (row) => castingCost(row.castWeight, { fee: row.fee, minimum: row.minimum }, row.pieces).amount,
);

/**
 * Casting of one piece: weight x the caster's fee. The caster's minimum is for all pieces cast together, and they share it.
 * @customfunction CASTINGCOST
 * @param castWeight Weight of one piece that the fee is counted on, in grams; a cell or a range.
 * @param fee What the caster adds to the metal rate, money per gram; a cell or a range.
 * @param [minimum] Least the caster charges for the pieces together, money, 0 if omitted; a cell or a range.
 * @param [pieces] Pieces cast together, 1 if omitted; a cell or a range.
 * @returns Money a piece, unrounded.
 */
export function castingCostOf(
  castWeight: unknown[][],
  fee: unknown[][],
  minimum?: unknown[][],
  pieces?: unknown[][],
): unknown[][] {
  return CASTINGCOST({ castWeight, fee, minimum, pieces });
}

/** What the two weights that a basis decides read alike. */
const LOST = {
  weight: read.weightAbove0,
  loss: read.loss,
  lossBasis: read.optional(read.lossBasis, "cast" as const),
  basis: read.optional(read.costBasis, "finished" as const),
} as const;

const CHARGEDWEIGHT = spread(LOST, (row) => {
  const loss = read.lossOf(row.loss, row.lossBasis);
  return chargedWeight({ finished: row.weight, cast: castWeight(row.weight, loss) }, row.basis).grams;
});

/**
 * The weight that the caster's fee is counted on. Basis "finished": the weight to cast. Basis "quick", the bench shorthand: the finished or stated weight.
 * @customfunction CHARGEDWEIGHT
 * @param weight Finished or stated weight in grams; a cell or a range.
 * @param loss Polish loss: a share such as 0.02 for 2 %, or grams; a cell or a range.
 * @param [lossBasis] "cast" (if omitted), "finished" or "grams"; a cell or a range.
 * @param [basis] "finished" (if omitted) or "quick"; a cell or a range.
 * @returns Grams, unrounded.
 */
export function weightCharged(
  weight: unknown[][],
  loss: unknown[][],
  lossBasis?: unknown[][],
  basis?: unknown[][],
): unknown[][] {
  return CHARGEDWEIGHT({ weight, loss, lossBasis, basis });
}

const LOSTWEIGHT = spread(LOST, (row) => {
  const loss = read.lossOf(row.loss, row.lossBasis);
  return lostWeight({ finished: row.weight, cast: castWeight(row.weight, loss) }, loss, row.basis).grams;
});

/**
 * Metal lost in polishing, as it is charged. Basis "finished": weight to cast less finished weight. Basis "quick", the bench shorthand: the grams given, or the stated weight x the share.
 * @customfunction LOSTWEIGHT
 * @param weight Finished or stated weight in grams; a cell or a range.
 * @param loss Polish loss: a share such as 0.02 for 2 %, or grams; a cell or a range.
 * @param [lossBasis] "cast" (if omitted), "finished" or "grams"; a cell or a range.
 * @param [basis] "finished" (if omitted) or "quick"; a cell or a range.
 * @returns Grams, unrounded.
 */
export function weightLost(
  weight: unknown[][],
  loss: unknown[][],
  lossBasis?: unknown[][],
  basis?: unknown[][],
): unknown[][] {
  return LOSTWEIGHT({ weight, loss, lossBasis, basis });
}

const POLISHEDLINKS = spread(
  {
    castWeight: read.weightAbove0,
    backWeight: read.weightAbove0,
    castLinks: read.counted(read.wholeFrom0, "0"),
    backLinks: read.counted(read.wholeFrom0, "0"),
    sentLinks: read.counted(read.wholeFrom0, "0"),
    isSentGiven: read.isGiven,
  },
  (row) => {
    const { out, share, spare, missing } = polishingOutcome({
      cast: row.castWeight,
      back: row.backWeight,
      castLinks: row.castLinks,
      backLinks: row.backLinks,
      sentLinks: row.isSentGiven ? row.sentLinks : undefined,
    });
    const parts = [spare, missing].flatMap((some) => [some?.links ?? "", some?.weight.grams ?? ""]);
    return [out.grams, share, ...parts];
  },
);

/**
 * What polishing took, by the piece: of 95 links cast and 91 back, the loss is held against 91/95 of the cast weight. Six columns: cast weight of the links that came back, share of it lost, spare links (cast, not sent) and their grams, missing links (sent, not back) and their grams; the last four are blank without sentLinks.
 * @customfunction POLISHEDLINKS
 * @param castWeight Weight of all links that were cast, in grams; a cell or a range of one column.
 * @param backWeight Weight of the links that came back polished, in grams; a cell or a range.
 * @param [castLinks] Links that were cast; without the counts all count as having come back; a cell or a range.
 * @param [backLinks] Links that came back; a cell or a range.
 * @param [sentLinks] Links that were sent to the polisher; a cell or a range.
 * @returns Grams, a share, links, grams, links, grams; unrounded.
 */
export function linksPolished(
  castWeight: unknown[][],
  backWeight: unknown[][],
  castLinks?: unknown[][],
  backLinks?: unknown[][],
  sentLinks?: unknown[][],
): unknown[][] {
  return POLISHEDLINKS({ castWeight, backWeight, castLinks, backLinks, sentLinks, isSentGiven: sentLinks });
}

const STONESTOBUY = spread(
  {
    count: read.wholeFrom0,
    pieces: read.counted(read.wholeAbove0, "1"),
    breakage: read.counted(read.share, "0"),
  },
  (row) => stonesToBuy(row, row.pieces),
);

/**
 * How many stones to buy: those set, and those that break in setting, in whole stones.
 * @customfunction STONESTOBUY
 * @param count Stones on one piece, a whole number; a cell or a range.
 * @param [pieces] Pieces, 1 if omitted; a cell or a range.
 * @param [breakage] Share of stones broken in setting, 0 if omitted; a cell or a range.
 * @returns Stones, a whole number.
 */
export function stonesBought(count: unknown[][], pieces?: unknown[][], breakage?: unknown[][]): unknown[][] {
  return STONESTOBUY({ count, pieces, breakage });
}

import { Quotient, sum } from "../exact/quotient";
import type { Colour } from "../gold/alloy";
import { costOf, fineGold, type MetalRate, markRate, potRate, type Rate } from "../gold/goldrate";
import type { OrderLine } from "../order/orderline";
import type { StoneSet } from "../order/stones";
import type { Rates } from "../rates/rates";
import { overheadOn } from "../trade/amounts";
import { type BoughtPart, costOfPart, goldOfPart } from "../trade/boughtpart";
import { CLASP_PARTS } from "../trade/clasp";
import { castingCost, chargedWeight, labourCost, lostWeight, type Making, stoneCost } from "../trade/landedcost";
import { type MakeOrBuy, makeOrBuy } from "../trade/makeorbuy";
import { castWeight } from "../trade/polishloss";
import { addMoney, type Money, money, subtractMoney } from "../units/money";
import { addWeights, grams, timesWeight, type Weight } from "../units/weight";

/** The cost lines of one piece, in the order of a cost sheet. */
export const COST_LINES = {
  metal: "Metal in the cast parts",
  lost: "Metal lost in polishing",
  casting: "Casting",
  labour: "Labour",
  clasp: "Clasp",
  findings: "Other findings",
  stones: "Stones",
  setting: "Setting",
  engraving: "Engraving",
  plating: "Plating",
  setup: "Model and mould share",
  overhead: "Overhead",
} as const;
export type CostLine = keyof typeof COST_LINES;

/**
 * The cost lines that are paid out before a piece is sold, each as it stands; stones besides, in whole ones. Overhead is paid
 * whether or not a piece is made.
 */
export const CASH_LINES = [
  "metal",
  "lost",
  "casting",
  "labour",
  "clasp",
  "findings",
  "setting",
  "engraving",
  "plating",
  "setup",
] as const satisfies readonly CostLine[];

/** What is cast of one alloy for one piece. */
export interface AlloyPart {
  readonly colour: Colour;
  readonly links: Quotient;
  readonly closed: Quotient;
  readonly open: Quotient;
  /** Cast parts of the clasp in this alloy. */
  readonly claspParts: Quotient;
  readonly finished: Weight;
  readonly cast: Weight;
}

/** Weights and costs of one piece at a spot: what a cost sheet rests on, and the curves over other weights and spots too. */
export interface PieceCosts {
  /** Of the metal in the pot: what is cast is paid at it. */
  readonly metalRate: MetalRate<"the pot">;
  /** Of the metal that the mark states: others sell the like at it. */
  readonly markRate: MetalRate<"the mark">;
  /** The links alone, finished. */
  readonly chainWeight: Weight;
  /** Links and a cast clasp, finished: what comes from the caster, after polishing. */
  readonly castPartsWeight: Weight;
  /** The whole piece: links, clasp, other findings. */
  readonly finishedWeight: Weight;
  /** What the caster casts: the cast parts, with what polishing takes. */
  readonly castWeight: Weight;
  /** The same by alloy. Grams of loss are shared by weight. */
  readonly alloys: readonly AlloyPart[];
  readonly costs: Readonly<Record<CostLine, Money>>;
  /** What of the costs before overhead is gold at spot, cast, lost or bought, and rises and falls with it. */
  readonly goldAtSpot: Money;
  readonly landed: Money;
}

/** Costs one piece of a line. Exact; nothing is rounded. */
export function costPiece(line: OrderLine, spot: Money, rates: Rates): PieceCosts {
  const rate = potRate(spot, line);
  const chain = addWeights(...line.linkGroups.map(({ links, linkWeight }) => timesWeight(linkWeight, links)));
  const castParts = line.clasp.cast ? addWeights(chain, line.clasp.weight) : chain;
  const cast = castWeight(castParts, rates.loss);
  const labour = labourCost(labourRates(rates), line.links, chain);
  const costs = costsOf(line, rates, rate, castParts, cast, labour, spot);
  return {
    metalRate: rate,
    markRate: markRate(spot, line),
    chainWeight: chain,
    castPartsWeight: castParts,
    finishedWeight: addWeights(chain, line.clasp.weight, line.findings.weight),
    castWeight: cast,
    alloys: Object.freeze(alloysOf(line, castParts, cast)),
    costs,
    goldAtSpot: addMoney(costs.metal, costs.lost, ...partsOf(line).map((part) => goldOfPart(part, line.mark, spot))),
    landed: money(sum(Object.values(costs).map((cost) => cost.amount)), spot.currency),
  };
}

/** Fine gold in one finished piece: a bought part of another mark by its own. */
export function fineGoldIn({ finishedWeight }: PieceCosts, line: OrderLine): Weight {
  const others = partsOf(line).flatMap(({ weight, mark }) => (mark ? [{ weight, mark }] : []));
  const ofPiece = finishedWeight.grams.minus(sum(others.map(({ weight }) => weight.grams)));
  return addWeights(fineGold(grams(ofPiece), line.gold), ...others.map(({ weight, mark }) => fineGold(weight, mark)));
}

/** The parts of a line that are bought: its findings, and its clasp where that is not cast. */
function partsOf({ clasp, findings }: OrderLine): readonly BoughtPart[] {
  return clasp.cast ? [findings] : [clasp, findings];
}

/** Fine gold that is cast for one piece. */
export function fineGoldCast({ castWeight: cast }: PieceCosts, { gold }: OrderLine): Weight {
  return fineGold(cast, gold);
}

function costsOf(
  line: OrderLine,
  rates: Rates,
  rate: Rate,
  castParts: Weight,
  cast: Weight,
  labour: Money,
  spot: Money,
): Readonly<Record<CostLine, Money>> {
  const weights = { finished: castParts, cast };
  const none = money(Quotient.zero, rates.currency);
  const stones = line.stones.map((set) => stoneCost(set.count, set.price, none, set.breakage));
  const setting = line.stones.map((set) => stoneCost(set.count, none, set.settingFee, Quotient.zero));
  const direct = {
    metal: costOf(castParts, rate),
    lost: costOf(lostWeight(weights, rates.loss, rates.costBasis), rate),
    casting: castingCost(chargedWeight(weights, rates.costBasis), castingTerms(rates), line.quantity),
    labour,
    clasp: costOfPart(line.clasp, line.mark, spot),
    findings: costOfPart(line.findings, line.mark, spot),
    stones: addMoney(none, ...stones),
    setting: addMoney(none, ...setting),
    engraving: line.engravingCost,
    plating: line.plated && rates.plating ? rates.plating : none,
    setup: line.setup,
  };
  const before = money(sum(Object.values(direct).map((cost) => cost.amount)), rates.currency);
  return Object.freeze({ ...direct, overhead: overheadOn(before, rates.overhead) });
}

/** The plain chain made, against ready chain of its weight at the surcharge on Rates. See plainChainMaking. */
export function plainChainSourcing(
  line: OrderLine,
  chain: Weight,
  links: Quotient,
  spot: Money,
  rates: Rates,
): MakeOrBuy {
  return makeOrBuy(plainChainMaking(line, chain, links, spot, rates), {
    metalRate: markRate(spot, line),
    surcharge: rates.surcharge,
  });
}

/**
 * The links alone made, as if nothing else were but their model and mould.
 * @param chain their finished weight, above zero
 */
export function plainChainMaking(line: OrderLine, chain: Weight, links: Quotient, spot: Money, rates: Rates): Making {
  const charged = chargedWeight({ finished: chain, cast: castWeight(chain, rates.loss) }, rates.costBasis);
  const byWeight = costOf(charged, rates.castingFee);
  const overMinimum = subtractMoney(castingCost(charged, castingTerms(rates), line.quantity), byWeight);
  return {
    weight: chain,
    metalRate: potRate(spot, line),
    castingFee: rates.castingFee,
    labour: labourCost(labourRates(rates), links, chain),
    loss: rates.loss,
    other: addMoney(overMinimum, line.setup),
    basis: rates.costBasis,
  };
}

function alloysOf(line: OrderLine, castParts: Weight, cast: Weight): AlloyPart[] {
  return line.linkGroups.map((group) => {
    const holdsClasp = line.clasp.cast && group.colour === line.colour;
    const links = timesWeight(group.linkWeight, group.links);
    const finished = holdsClasp ? addWeights(links, line.clasp.weight) : links;
    return Object.freeze({
      colour: group.colour,
      links: group.links,
      closed: group.closed,
      open: group.open,
      claspParts: Quotient.of(holdsClasp ? CLASP_PARTS[line.clasp.kind] : 0),
      finished,
      cast: grams(cast.grams.times(finished.grams).dividedBy(castParts.grams)),
    });
  });
}

function castingTerms(rates: Rates) {
  return { fee: rates.castingFee, minimum: rates.castingMinimum };
}

function labourRates(rates: Rates) {
  return {
    flat: rates.labourFlat,
    perLink: rates.labourPerLink,
    perGram: rates.labourPerGram,
    minimum: rates.labourMinimum,
  };
}

/** How many stones to buy for so many pieces: those set, and those that setting breaks, in whole stones. */
export function stonesToBuy(set: Pick<StoneSet, "count" | "breakage">, pieces: Quotient): Quotient {
  return set.count.times(pieces).times(Quotient.one.plus(set.breakage)).ceil();
}

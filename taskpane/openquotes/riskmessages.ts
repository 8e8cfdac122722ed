import { type Money, minorDigits, Quotient, type Rates, type SpotLimit, subtractMoney } from "../../src/index";
import type { AnswerLine } from "../controls/answerbox";
import { DECIDE_TEXTS } from "../wording/decidetexts";
import { showGrams, showList, showMoney, showShare, showSpot } from "../wording/display";
import type { QuoteRisk, Risks } from "./openquotes";

const { risk: texts } = DECIDE_TEXTS;

/** How many open quotes are in danger at today's spot. */
export function risksHead({ open }: Risks, rates: Rates): string {
  if (open.length === 0) return texts.none;
  const count = texts.count(open.length);
  const [spot, least] = [showSpot(rates.spot), showShare(rates.leastMargin)];
  const losing = open.filter(({ risk }) => risk.losesMoney).length;
  const below = open.filter(({ risk }) => risk.belowFloor && !risk.losesMoney).length;
  const said = [...(losing > 0 ? [texts.losing(losing)] : []), ...(below > 0 ? [texts.below(below, least)] : [])];
  return said.length === 0 ? texts.all(count, spot, least) : texts.some(count, spot, showList(said));
}

/** What today's spot does to one quote, and up to where its price holds. */
export function riskWords({ order, risk }: QuoteRisk, rates: Rates): readonly AnswerLine[] {
  return [
    { text: stateWords(risk, rates), isWarning: risk.losesMoney },
    {
      text: texts.both(
        limitWords(risk.floor, showShare(rates.leastMargin)),
        zeroWords(risk.zero),
        showSpot(order.spot),
      ),
    },
    ...goldWords({ order, risk }),
    ...(order.settledByWeight ? [{ text: texts.settled }] : []),
  ];
}

function stateWords({ net, landed, margin, losesMoney, belowFloor }: QuoteRisk["risk"], rates: Rates): string {
  const [brings, costs] = [showMoney(net), showMoney(landed)];
  if (!margin) return texts.bringsNothing(costs);
  if (losesMoney) return texts.loses(showMoney(subtractMoney(landed, net)), brings, costs);
  const left = showShare(margin);
  return belowFloor
    ? texts.leavesLittle(left, showShare(rates.leastMargin), brings, costs)
    : texts.leaves(left, brings, costs);
}

function goldWords({ order: { ownGold }, risk }: Pick<QuoteRisk, "order" | "risk">): readonly AnswerLine[] {
  if (!ownGold || risk.covered.grams.isZero()) return [];
  const covered = showGrams(risk.covered, 2);
  return [{ text: ownGold.use === "used" ? texts.used(covered, showGrams(risk.needed, 2)) : texts.credited(covered) }];
}

function limitWords(limit: SpotLimit, least: string): string {
  return "spot" in limit ? texts.limits[limit.kind](least, showEdge(limit)) : texts.limits[limit.kind](least);
}

function zeroWords(limit: SpotLimit): string {
  return "spot" in limit ? texts.zeros[limit.kind](showEdge(limit)) : texts.zeros[limit.kind];
}

/** Rounded to the side on which the sentence stays true. */
function showEdge({ kind, spot }: Extract<SpotLimit, { spot: Money }>): string {
  const rounding = kind === "upTo" ? "down" : "up";
  return showMoney({ ...spot, amount: Quotient.of(spot.amount.rounded(minorDigits(spot.currency), rounding)) });
}

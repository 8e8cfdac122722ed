import type { Fault } from "../exact/errors";
import type { NumberRule } from "../exact/numberrule";
import type { Quotient } from "../exact/quotient";
import { checkNumber } from "../reading/number";
import { attempt, faultsOf } from "../reading/parse";
import { moneyOf, premiumOf } from "../trade/boughtpart";
import { type Pricing, RULE_OF } from "../trade/pricemethod";
import { LINE_FIELDS, LINE_KEYS, LINE_LABELS, type LineKey } from "./fields";
import type { LineParts } from "./orderline";

type Fields = typeof LINE_FIELDS;
/** The figures that have a rule of their own. */
type FigureKey = { [K in LineKey]: Fields[K] extends { readonly rule: NumberRule } ? K : never }[LineKey];

/** The faults of figures that a person could not have typed: what a reader refuses, a line that is made of figures is not made of. */
export function figureFaults(parts: LineParts): readonly Fault[] {
  const figures: Readonly<Partial<Record<LineKey, Quotient | undefined>>> = figuresOf(parts);
  return [...LINE_KEYS.flatMap((key) => faultsIn(key, figures[key])), ...pricingFaults(parts.pricing)];
}

function faultsIn(key: LineKey, figure: Quotient | undefined): readonly Fault[] {
  const { label, rule } = LINE_FIELDS[key];
  return figure && rule ? faultsOf(attempt(key, () => checkNumber(figure, label, rule))) : [];
}

function pricingFaults(pricing: Pricing | undefined): readonly Fault[] {
  if (!pricing) return [];
  return faultsOf(
    attempt("linePriceFigure", () => checkNumber(figureOf(pricing), LINE_LABELS.linePriceFigure, RULE_OF[pricing.by])),
  );
}

function figureOf(pricing: Pricing): Quotient {
  if (pricing.by === "premium") return pricing.rate.perGram;
  return pricing.by === "own price" ? pricing.price.amount : pricing.share;
}

function figuresOf(parts: LineParts): Readonly<Record<FigureKey, Quotient | undefined>> {
  const { otherLinkWeights, clasp, stones, findings } = parts;
  const { counts, inLinks, onClasp } = stones;
  return {
    quantity: parts.quantity,
    length: parts.measured,
    ease: parts.ease,
    linksPer: parts.linksPer,
    linkWeight: parts.linkWeight.grams,
    linkWeightYellow: otherLinkWeights.yellow?.grams,
    linkWeightRose: otherLinkWeights.rose?.grams,
    linkWeightWhite: otherLinkWeights.white?.grams,
    linkWeightGreen: otherLinkWeights.green?.grams,
    claspLength: clasp.length,
    claspWeight: clasp.weight.grams,
    claspCost: moneyOf(clasp.cost),
    claspPremium: premiumOf(clasp.cost),
    stoneEvery: counts.stoneEvery,
    stoneCount: counts.stoneCount,
    stonesPerLink: counts.stonesPerLink,
    stoneDiameter: inLinks.diameter,
    stoneLength: inLinks.length,
    stoneWidth: inLinks.width,
    stoneDepth: inLinks.depth,
    stoneGravity: inLinks.gravity,
    stoneCarat: inLinks.carat,
    stonePrice: inLinks.price?.amount,
    settingFee: inLinks.settingFee?.amount,
    claspStoneCount: counts.claspStoneCount,
    claspStoneDiameter: onClasp.diameter,
    claspStoneLength: onClasp.length,
    claspStoneWidth: onClasp.width,
    claspStoneDepth: onClasp.depth,
    claspStoneGravity: onClasp.gravity,
    claspStoneCarat: onClasp.carat,
    claspStonePrice: onClasp.price?.amount,
    claspSettingFee: onClasp.settingFee?.amount,
    breakage: stones.breakage,
    findingsWeight: findings.weight.grams,
    findingsCost: moneyOf(findings.cost),
    findingsPremium: premiumOf(findings.cost),
    engravingCost: parts.engravingCost.amount,
    setup: parts.setup.amount,
  };
}

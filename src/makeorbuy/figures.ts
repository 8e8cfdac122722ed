import { Quotient } from "../exact/quotient";
import { perGram } from "../gold/goldrate";
import { LINE_LABELS } from "../order/fields";
import { RATE_ROWS } from "../rates/raterows";
import type { Rates } from "../rates/rates";
import { moneyOf, premiumOf, timesPartCost } from "../trade/boughtpart";
import type { Loss } from "../trade/polishloss";
import { timesMoney } from "../units/money";
import { grams, timesWeight } from "../units/weight";
import { type ChainChoice, compareSources, lineOfWeight } from "./chainchoice";
import { chainWeightOf } from "./crossover";
import type { Seller } from "./makers";

/** A figure that may turn out different from what was entered. */
interface Movable {
  /** In the words of the sheet or the form it comes from. */
  readonly label: string;
  /** Its current value: money, money per gram, grams or a share; undefined where there is none. */
  readonly value: (choice: ChainChoice) => Quotient | undefined;
  /** What it counts, for showing it. */
  readonly unit: (choice: ChainChoice) => "money" | "rate" | "share" | "weight";
  /** The choice with the figure multiplied by the factor. */
  readonly moved: (choice: ChainChoice, factor: Quotient) => ChainChoice;
}

/**
 * The figures that costs depend on. The last ones cost the same whether the chain is made or bought. Moving them changes nothing;
 * they are listed so that a person sees that.
 */
export const LEVERS = {
  spot: lever(RATE_ROWS.spot.label, "money", {
    value: ({ spot }) => spot.amount,
    moved: (choice, factor) => ({ ...choice, spot: timesMoney(choice.spot, factor) }),
  }),
  surcharge: lever(RATE_ROWS.surcharge.label, "rate", {
    value: (choice) => compareSources(choice).best?.offer.surcharge.perGram,
    moved: withSurcharge,
  }),
  castingFee: ofRates("castingFee", "rate"),
  castingMinimum: ofRates("castingMinimum", "money"),
  loss: {
    label: RATE_ROWS.loss.label,
    value: ({ rates }) => lossFigure(rates.loss),
    unit: ({ rates }) => (rates.loss.basis === "grams" ? "weight" : "share"),
    moved: (choice, factor) => ({ ...choice, rates: { ...choice.rates, loss: timesLoss(choice.rates.loss, factor) } }),
  },
  labourFlat: ofRates("labourFlat", "money"),
  labourPerLink: ofRates("labourPerLink", "money"),
  labourPerGram: ofRates("labourPerGram", "rate"),
  labourMinimum: ofRates("labourMinimum", "money"),
  linkWeight: lever(LINE_LABELS.linkWeight, "weight", {
    value: ({ line }) => chainWeightOf(line).grams.dividedBy(line.links),
    moved: (choice, factor) => ({
      ...choice,
      line: lineOfWeight(choice.line, timesWeight(chainWeightOf(choice.line), factor), "heavier links"),
    }),
  }),
  setup: ofLine(
    LINE_LABELS.setup,
    ({ setup }) => setup.amount,
    (line, factor) => ({
      ...line,
      setup: timesMoney(line.setup, factor),
    }),
  ),
  claspCost: ofLine(
    LINE_LABELS.claspCost,
    ({ clasp }) => moneyOf(clasp.cost),
    (line, factor) => ({
      ...line,
      clasp: { ...line.clasp, cost: timesPartCost(line.clasp.cost, "money", factor) },
    }),
  ),
  findings: ofLine(
    LINE_LABELS.findingsCost,
    ({ findings }) => moneyOf(findings.cost),
    (line, factor) => ({
      ...line,
      findings: { ...line.findings, cost: timesPartCost(line.findings.cost, "money", factor) },
    }),
  ),
  claspPremium: ofLine(
    LINE_LABELS.claspPremium,
    ({ clasp }) => premiumOf(clasp.cost),
    (line, factor) => ({ ...line, clasp: { ...line.clasp, cost: timesPartCost(line.clasp.cost, "premium", factor) } }),
    "rate",
  ),
  findingsPremium: ofLine(
    LINE_LABELS.findingsPremium,
    ({ findings }) => premiumOf(findings.cost),
    (line, factor) => ({
      ...line,
      findings: { ...line.findings, cost: timesPartCost(line.findings.cost, "premium", factor) },
    }),
    "rate",
  ),
  settingFee: ofRates("settingFee", "money"),
  plating: lever(RATE_ROWS.plating.label, "money", {
    value: ({ rates }) => rates.plating?.amount,
    moved: ({ rates, ...choice }, factor) => ({
      ...choice,
      rates: { ...rates, plating: rates.plating && timesMoney(rates.plating, factor) },
    }),
  }),
  overhead: lever(RATE_ROWS.overhead.label, "share", {
    value: ({ rates }) => rates.overhead,
    moved: ({ rates, ...choice }, factor) => ({
      ...choice,
      rates: { ...rates, overhead: rates.overhead.times(factor) },
    }),
  }),
} as const satisfies Record<string, Movable>;
export type Lever = keyof typeof LEVERS;
export const LEVER_KEYS = Object.keys(LEVERS) as readonly Lever[];

/** A choice with one figure multiplied by a factor. @param factor from 0 */
export function moved(choice: ChainChoice, key: Lever, factor: Quotient): ChainChoice {
  return LEVERS[key].moved(choice, factor);
}

/** The figure's current value; undefined where there is none. */
export function leverValue(choice: ChainChoice, key: Lever): Quotient | undefined {
  return LEVERS[key].value(choice);
}

function lever(
  label: string,
  unit: ReturnType<Movable["unit"]>,
  { value, moved }: Pick<Movable, "value" | "moved">,
): Movable {
  return { label, value, unit: () => unit, moved };
}

type CashRate = "castingMinimum" | "labourFlat" | "labourPerLink" | "labourMinimum" | "settingFee";
type GramRate = "castingFee" | "labourPerGram";

function ofRates(key: CashRate, unit: "money"): Movable;
function ofRates(key: GramRate, unit: "rate"): Movable;
function ofRates(key: CashRate | GramRate, unit: "money" | "rate"): Movable {
  return lever(RATE_ROWS[key].label, unit, {
    value: ({ rates }) => {
      const rate = rates[key];
      return rate.kind === "money" ? rate.amount : rate.perGram;
    },
    moved: ({ rates, ...choice }, factor) => {
      const rate = rates[key];
      const times = rate.kind === "money" ? timesMoney(rate, factor) : timesRate(rate, factor);
      return { ...choice, rates: { ...rates, [key]: times } satisfies Rates };
    },
  });
}

function ofLine(
  label: string,
  value: (line: ChainChoice["line"]) => Quotient | undefined,
  change: (line: ChainChoice["line"], factor: Quotient) => ChainChoice["line"],
  unit: "money" | "rate" = "money",
): Movable {
  return lever(label, unit, {
    value: ({ line }) => value(line),
    moved: (choice, factor) => ({ ...choice, line: change(choice.line, factor) }),
  });
}

/** Changes the surcharge of the maker who is cheapest now only. The others stay as they are, and may then be the cheapest. */
function withSurcharge(choice: ChainChoice, factor: Quotient): ChainChoice {
  const cheapest = compareSources(choice).best?.seller;
  const times = (seller: Seller): Seller => ({
    ...seller,
    classes: seller.classes.map((each) => ({ ...each, surcharge: timesRate(each.surcharge, factor) })),
  });
  return { ...choice, sellers: choice.sellers.map((seller) => (seller === cheapest ? times(seller) : seller)) };
}

function lossFigure(loss: Loss): Quotient {
  return loss.basis === "grams" ? loss.weight.grams : loss.share;
}

/** A loss as a share of the cast weight must stay below 1. */
function timesLoss(loss: Loss, factor: Quotient): Loss {
  if (loss.basis === "grams") return { basis: loss.basis, weight: grams(loss.weight.grams.times(factor)) };
  const share = loss.share.times(factor);
  if (loss.basis === "finished" || share.isLessThan(Quotient.one)) return { basis: loss.basis, share };
  return { basis: loss.basis, share: loss.share.plus(Quotient.one).dividedBy(Quotient.of(2)) };
}

function timesRate(rate: Rates["castingFee"], factor: Quotient): Rates["castingFee"] {
  return perGram(rate.perGram.times(factor), rate.currency);
}

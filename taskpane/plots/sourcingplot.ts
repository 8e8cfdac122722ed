import { crossingWeight, grams, type Quotient, type SourcingPoint, sourcingCurve, type Weight } from "../../src/index";
import type { Costed } from "../order/reckoning";
import { crossingSentences } from "../wording/crossingwords";
import { showFixed, showGrams, showRate } from "../wording/display";
import { TEXTS } from "../wording/texts";
import { ticksOf, xTicks } from "./axis";
import type { Plot } from "./figure";
import type { Flag } from "./flag";
import { type Curve, draw } from "./picture";
import type { Point } from "./points";
import { around, decimalsOf, exactly, isInSight, ratioSteps, showTicks, sorted } from "./span";

const texts = TEXTS.plots.sourcing;

/** What the curves are of: heavier links at the length that the customer wants, the usual question. */
const HEAVIER = "heavier links";
/** Weights between the ends at which the curves are reckoned: close enough that they look round. */
const STEPS = 40;

/** Cost per gram made and bought against the weight of the plain chain, with the crossing and this order. */
export function sourcingPlot({ order, sheets, rates }: Costed, line: number, width: number): Plot {
  const sheet = sheets[line];
  if (!sheet) throw new Error("A line that was not costed cannot be drawn");
  const own = sheet.chainWeight;
  const crossing = crossingWeight(sheet.line, order.spot, rates, HEAVIER);
  const near = crossing && isInSight(crossing.grams.toNumber(), own.grams.toNumber()) ? crossing : undefined;
  const marked = [own, ...(near ? [near] : [])].map((weight) => weight.grams);
  const numbers = marked.map((weight) => weight.toNumber());
  const span = { from: Math.min(...numbers) / 2, to: Math.max(...numbers) * 1.4 };
  const at = (weights: readonly Quotient[]) =>
    sourcingCurve(sheet.line, order.spot, rates, weights.map(grams), HEAVIER);

  const curve = at(sorted([...ratioSteps(span, STEPS).map(exactly), ...marked]));
  const made = curve.map((point) => pointOf(point, "make"));
  const bought = curve.map((point) => pointOf(point, "buy"));
  const ticks = ticksOf(span, xTicks(width));
  const decimals = Math.max(1, decimalsOf(ticks));
  const weightText = (weight: Weight) => showGrams(weight, decimals);
  const [ownPoint, crossingPoint] = at(marked);
  if (!ownPoint) throw new Error("This order's weight has no point");
  const y = around(
    [...made, ...bought].map((point) => point.y),
    0.12,
  );

  return {
    title: texts.title,
    sentence: [
      ...crossingSentences(sheet.line, order.spot, rates, weightText),
      ...(crossing && !near && !crossing.grams.isZero() ? [texts.outside] : []),
      texts.curves,
      texts.order(weightText(own), showRate(ownPoint.make), showRate(ownPoint.buy)),
    ].join(" "),
    picture: draw({
      width,
      x: { title: texts.weight, ...span, show: showTicks },
      y: { title: texts.perGram(rates.currency), ...y, show: showTicks },
      curves: curvesOf(made, bought),
      flags: [
        ...(crossingPoint ? [flagOf(crossingPoint, "crossing", texts.crossing(weightText(crossingPoint.weight)))] : []),
        flagOf(ownPoint, "order", texts.thisOrder(weightText(own))),
      ],
    }),
    heads: [texts.weight, texts.madeHead(rates.currency), texts.boughtHead(rates.currency)],
    rows: at(sorted([...ticks.filter((tick) => tick > 0).map(exactly), ...marked])).map((point) => [
      showFixed(point.weight.grams, decimals),
      showRate(point.make),
      showRate(point.buy),
    ]),
  };
}

function pointOf({ weight, make, buy }: SourcingPoint, side: "make" | "buy"): Point {
  return { x: weight.grams.toNumber(), y: (side === "make" ? make : buy).perGram.toNumber() };
}

/** This order has a dot on both lines; at the crossing they are one. */
function flagOf(point: SourcingPoint, kind: Flag["kind"], text: string): Flag {
  const { x, y } = pointOf(point, "make");
  return { x, dots: kind === "order" ? [pointOf(point, "buy").y, y] : [y], kind, text };
}

/** Made is named where it starts and bought where it ends, each on the side away from the other. */
function curvesOf(made: readonly Point[], bought: readonly Point[]): readonly Curve[] {
  const isAbove = (at: number) => (made.at(at)?.y ?? 0) > (bought.at(at)?.y ?? 0);
  return [
    { name: texts.bought, kind: "bought", points: bought, nameAt: "end", nameSide: isAbove(-1) ? "below" : "above" },
    { name: texts.made, kind: "made", points: made, nameAt: "start", nameSide: isAbove(0) ? "above" : "below" },
  ];
}

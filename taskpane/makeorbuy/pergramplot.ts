import {
  type ChainChoice,
  type Comparison,
  compareSources,
  grams,
  type HeavierBy,
  lineOfWeight,
  makingRanges,
  offerStarts,
  Quotient,
  type WinningRange,
} from "../../src/index";
import { ticksOf, xTicks } from "../plots/axis";
import type { Plot } from "../plots/figure";
import type { Flag } from "../plots/flag";
import { type Curve, draw } from "../plots/picture";
import type { Point } from "../plots/points";
import { around, decimalsOf, exactly, isInSight, ratioSteps, type Span, showTicks, sorted } from "../plots/span";
import { showFixed, showRate } from "../wording/display";
import { showScale } from "../wording/shownweight";
import { SOURCING_TEXTS } from "../wording/sourcingtexts";
import { TEXTS } from "../wording/texts";
import { nameOf, showBound } from "./messages";

const { plot: texts, makers } = SOURCING_TEXTS;
const axes = TEXTS.plots.sourcing;

/** Weights between the ends at which the costs are reckoned: close enough that the curve looks round. */
const STEPS = 32;
/** More flags than these leave no room for the plot. */
const MOST_FLAGS = 3;

/** Cost a gram made and bought from the cheapest maker against the chain's weight, its links heavier or lighter, with every crossing and this order. */
export function perGramPlot(said: Comparison, ranges: readonly WinningRange[], width: number): Plot {
  const { weight, makePerGram, best } = said;
  const sentence = best
    ? texts.order(showScale(weight), showRate(makePerGram), showRate(best.perGram))
    : texts.orderMade(showScale(weight), showRate(makePerGram));
  return plotOf(
    [said],
    ranges,
    "heavier links",
    width,
    [sentence],
    [flag(said, "order", axes.thisOrder(showScale(weight)))],
  );
}

/** The same for many weights of one chain, each a dot on what it costs the cheaper way. @param all at least one */
export function perGramOfMany(all: readonly Comparison[], ranges: readonly WinningRange[], width: number): Plot {
  return plotOf(all, ranges, "more links", width, [], []);
}

function plotOf(
  all: readonly Comparison[],
  ranges: readonly WinningRange[],
  heavier: HeavierBy,
  width: number,
  sentences: readonly string[],
  flags: readonly Flag[],
): Plot {
  const [first] = all;
  if (!first) throw new Error("A plot of no chain");
  const { choice } = first;
  const own = all.map(({ weight }) => weight.grams);
  const turns = ranges.slice(1).filter(({ winner }, at) => isTurn(ranges[at]?.winner.kind, winner.kind));
  const near = turns
    .map(({ from }) => from.grams)
    .filter((turn) => own.some((weight) => isInSight(turn.toNumber(), weight.toNumber())));
  const numbers = [...own, ...near].map((value) => value.toNumber());
  const span = { from: Math.min(...numbers) / 2, to: Math.max(...numbers) * 1.4 };
  const at = (weights: readonly Quotient[]) => weights.map((each) => comparedAt(choice, each, heavier));
  const starts = startsIn(choice, span);
  const curve = at(sorted([...ratioSteps(span, STEPS).map(exactly), ...starts.flatMap(justBelow), ...near, ...own]));
  const made = curve.map(({ weight: each, makePerGram }) => pointOf(each.grams, makePerGram.perGram));
  const bought = stretchesOf(curve);
  const ticks = ticksOf(span, xTicks(width));
  const y = around(
    [...made, ...bought.flat()].map((point) => point.y),
    0.12,
  );
  const { currency } = choice.rates;
  return {
    title: texts.title,
    sentence: [
      ...sentences,
      texts.by[heavier],
      ...(making(ranges).length > 0 ? [texts.band] : []),
      ...(near.length < turns.length ? [texts.outside] : []),
    ].join(" "),
    picture: draw({
      width,
      x: { title: axes.weight, ...span, show: showTicks },
      y: { title: axes.perGram(currency), ...y, show: showTicks },
      bands: making(ranges),
      curves: curvesOf(made, bought),
      dots: flags.length > 0 ? [] : all.map(cheaperPoint),
      flags: [...turnFlags(first, near, at), ...flags],
    }),
    heads: [axes.weight, axes.madeHead(currency), axes.boughtHead(currency), makers.heads[0]],
    rows: at(sorted([...ticks.filter((tick) => tick > 0).map(exactly), ...near, ...own])).map((each) => [
      showFixed(each.weight.grams, Math.max(1, decimalsOf(ticks))),
      showRate(each.makePerGram),
      each.best ? showRate(each.best.perGram) : texts.notSold,
      each.best ? nameOf(each.best.seller.maker) : "",
    ]),
  };
}

function cheaperPoint({ weight, makePerGram, best, verdict }: Comparison): Point {
  return pointOf(weight.grams, verdict === "buy" && best ? best.perGram.perGram : makePerGram.perGram);
}

/** From one way to the other; where nobody sells there is no choice to turn. */
function isTurn(before: WinningRange["winner"]["kind"] | undefined, after: WinningRange["winner"]["kind"]): boolean {
  return [before, after].includes("buy") && [before, after].includes("make");
}

function comparedAt(choice: ChainChoice, weight: Quotient, heavier: HeavierBy): Comparison {
  return compareSources({ ...choice, line: lineOfWeight(choice.line, grams(weight), heavier) });
}

function making(ranges: readonly WinningRange[]): readonly Span[] {
  return makingRanges(ranges).map(({ from, to }) => ({
    from: from.grams.toNumber(),
    to: to ? to.grams.toNumber() : Number.POSITIVE_INFINITY,
  }));
}

/** The weights in sight at which some maker's offer begins. */
function startsIn(choice: ChainChoice, span: Span): readonly Quotient[] {
  return offerStarts(choice).filter((start) => start.toNumber() > span.from && start.toNumber() < span.to);
}

/** A step is drawn upright: the last weight before it, and its own. */
function justBelow(start: Quotient): readonly Quotient[] {
  return [start.times(Quotient.of("0.999999")), start];
}

/** The bought curve, in pieces where nobody sells between. */
function stretchesOf(curve: readonly Comparison[]): readonly (readonly Point[])[] {
  const stretches: Point[][] = [];
  let open = false;
  for (const { weight, best } of curve) {
    if (!best) {
      open = false;
      continue;
    }
    const point = pointOf(weight.grams, best.perGram.perGram);
    if (open) stretches.at(-1)?.push(point);
    else stretches.push([point]);
    open = true;
  }
  return stretches;
}

function pointOf(weight: Quotient, perGram: Quotient): Point {
  return { x: weight.toNumber(), y: perGram.toNumber() };
}

/** Each is named on the side away from the other, bought at its end and made at its start. */
function curvesOf(made: readonly Point[], bought: readonly (readonly Point[])[]): readonly Curve[] {
  const last = bought.at(-1);
  const first = bought[0]?.[0];
  const isBelow = (last?.at(-1)?.y ?? 0) <= (made.at(-1)?.y ?? 0);
  const isAbove = (made[0]?.y ?? 0) > (first?.y ?? 0);
  return [
    ...bought.map(
      (points, at): Curve => ({
        name: at === bought.length - 1 ? axes.bought : "",
        kind: "bought",
        points,
        nameAt: "end",
        nameSide: isBelow ? "below" : "above",
      }),
    ),
    { name: axes.made, kind: "made", points: made, nameAt: "start", nameSide: isAbove ? "above" : "below" },
  ];
}

/** The turns nearest to a chain, lightest first. */
function turnFlags(
  said: Comparison,
  turns: readonly Quotient[],
  at: (weights: readonly Quotient[]) => readonly Comparison[],
): readonly Flag[] {
  const own = said.weight.grams.toNumber();
  const nearest = [...turns]
    .sort((a, b) => Math.abs(a.toNumber() - own) - Math.abs(b.toNumber() - own))
    .slice(0, MOST_FLAGS - 1)
    .sort((a, b) => a.compare(b));
  return at(nearest).map((each) => flag(each, "crossing", axes.crossing(showBound(each.weight))));
}

function flag({ weight, makePerGram, best }: Comparison, kind: Flag["kind"], text: string): Flag {
  const made = makePerGram.perGram.toNumber();
  const bought = best?.perGram.perGram.toNumber();
  const dots = kind === "order" && bought !== undefined ? [bought, made] : [made];
  return { x: weight.grams.toNumber(), dots, kind, text };
}

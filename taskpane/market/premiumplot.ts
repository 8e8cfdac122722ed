import {
  grams,
  type OrderLine,
  perGramOf,
  premiumOverMark,
  priceCurve,
  Quotient,
  type Rate,
  type Rates,
  type SeenAsking,
  type SeenPremium,
  showMark,
  WEIGHT_CLASSES,
  type Weight,
} from "../../src/index";
import { dateSerial } from "../excel/template/fields";
import type { Plot } from "../plots/figure";
import { legend } from "../plots/legend";
import { draw } from "../plots/picture";
import { type Points, sample } from "../plots/points";
import { around, exactly, ratioSteps, showTicks } from "../plots/span";
import { ASKING_TEXTS } from "../wording/askingtexts";
import { markWords, showCellDate, showGrams, showNumber, showRate } from "../wording/display";
import { showScale } from "../wording/shownweight";

const { plot: texts } = ASKING_TEXTS.premiums;

/** A price that was seen, with what it was over the metal. */
export interface Seen {
  readonly seen: SeenAsking;
  readonly premium: SeenPremium;
}

/** Our own price for pieces of one mark, made of one link; or why there is none. */
export type OwnPrice =
  | { readonly found: true; readonly line: OrderLine }
  | { readonly found: false; readonly sentence: string };

/** Weights between the ends at which our price is reckoned. */
const STEPS = 40;
/** So many times what was seen our price is still drawn. */
const HIGHEST = 1.5;
/** Below this share of the largest a least premium is drawn with the metal's own line. */
const NEAR_METAL = 0.5;

/**
 * What was asked over the metal against weight, a shape a mark, with our own price for one of the marks through it.
 * @param all at least one @param mark as shown, of at least one of them
 */
export function premiumPlot(all: readonly Seen[], mark: string, own: OwnPrice, rates: Rates, width: number): Plot {
  const marks = marksOf(all);
  const weights = all.map(({ premium: { weight } }) => weight.grams.toNumber());
  const span = { from: Math.min(...weights) / 1.4, to: Math.max(...weights) * 1.4 };
  const ours = (of: readonly Weight[]) => (own.found ? ownPremiums(own.line, rates, of) : []);
  const steps = ratioSteps(span, STEPS);
  const curveWeights = steps.map((step) => grams(exactly(step)));
  const premiums = all.map(({ premium: each }) => each.premium.perGram.toNumber());
  const whole = ours(curveWeights).map((rate, at) => ({ x: steps[at] ?? 0, y: rate.perGram.toNumber() }));
  // Flat labour on a light piece would make everything else flat.
  const highest = HIGHEST * Math.max(...premiums, ...whole.map(({ y: each }) => each).slice(-1));
  const curve = whole.filter((point) => point.y <= highest);
  const heights = [...premiums, ...curve.map((point) => point.y)];
  const showsMetal = Math.min(...heights) < NEAR_METAL * Math.max(...heights);
  const y = around(showsMetal ? [...heights, 0] : heights, 0.08);
  return {
    title: texts.title,
    sentence: sentencesOf(all, mark, own, ours).join(" "),
    picture: draw({
      width,
      x: {
        title: texts.weight,
        ...span,
        isLog: true,
        lines: WEIGHT_CLASSES.map(Number).filter((least) => least > span.from && least < span.to),
        show: showRatios,
      },
      y: { title: texts.premium(rates.currency), ...y, show: showTicks },
      curves:
        curve.length > 0
          ? [{ name: `${texts.ourLine} ${mark}`, kind: "made", points: curve, nameAt: "end", nameSide: "above" }]
          : [],
      ...(showsMetal ? { level: { text: texts.metal, y: 0 } } : {}),
      flags: [],
      points: marks.map(
        ({ mark: each, seen }, shape): Points => ({
          shape,
          isStrong: each === mark,
          points: seen.map(({ premium: { weight, premium: over } }) => ({
            x: weight.grams.toNumber(),
            y: over.perGram.toNumber(),
          })),
        }),
      ),
    }),
    legend: legendOf(marks, mark),
    ...tableOf(all, mark, ours, rates),
  };
}

/** The marks that were seen, the most frequent first, each with its prices. */
export function marksOf(all: readonly Seen[]): readonly { readonly mark: string; readonly seen: readonly Seen[] }[] {
  const groups = new Map<string, Seen[]>();
  for (const each of all) {
    const mark = markOf(each);
    groups.set(mark, [...(groups.get(mark) ?? []), each]);
  }
  return [...groups].map(([mark, seen]) => ({ mark, seen })).sort((a, b) => b.seen.length - a.seen.length);
}

/** A piece's mark, and whether it is hollow: what is not alike in both is never seen together. */
function markOf({ premium }: Seen): string {
  return markWords(showMark(premium.mark), premium.hollow);
}

/** What our price as the customer reads it is over the metal, per gram. */
function ownPremiums(line: OrderLine, rates: Rates, weights: readonly Weight[]): readonly Rate[] {
  return priceCurve(line, rates, rates, weights).map(({ sheet, weight }) =>
    premiumOverMark(perGramOf(sheet.price, weight), sheet.markRate),
  );
}

function sentencesOf(
  all: readonly Seen[],
  mark: string,
  own: OwnPrice,
  ours: (of: readonly Weight[]) => readonly Rate[],
): readonly string[] {
  const sorted = [...all].sort((a, b) => a.premium.premium.perGram.compare(b.premium.premium.perGram));
  const [least, most] = [sorted[0], sorted.at(-1)];
  const seen =
    least && most
      ? [texts.seen(count(all.length), showRate(least.premium.premium), showRate(most.premium.premium))]
      : [];
  if (!own.found) return [...seen, texts.noCurve(own.sentence)];
  const alike = all.filter((each) => markOf(each) === mark);
  const weights = alike.map(({ premium: { weight } }) => weight).sort((a, b) => a.grams.compare(b.grams));
  const [light, heavy] = [weights[0], weights.at(-1)];
  if (!light || !heavy) return seen;
  const [atLight, atHeavy] = ours([light, heavy]);
  const atEach = ours(alike.map(({ premium: { weight } }) => weight));
  const below = alike.filter((each, at) =>
    each.premium.premium.perGram.isLessThan(atEach[at]?.perGram ?? Quotient.zero),
  );
  if (!atLight || !atHeavy) return seen;
  return [
    ...seen,
    texts.ours(mark, showScale(light), showRate(atLight), showScale(heavy), showRate(atHeavy)),
    below.length === 0
      ? texts.belowNone(mark)
      : (below.length === alike.length ? texts.belowAll : texts.below)(count(below.length), mark, count(alike.length)),
  ];
}

function legendOf(marks: ReturnType<typeof marksOf>, strong: string): HTMLElement {
  return legend(
    marks.map(({ mark, seen }, shape) => ({
      sample: sample(shape, mark === strong),
      text: texts.legend(mark, count(seen.length)),
    })),
  );
}

function tableOf(
  all: readonly Seen[],
  mark: string,
  ours: (of: readonly Weight[]) => readonly Rate[],
  rates: Rates,
): Pick<Plot, "heads" | "rows"> {
  const sorted = [...all].sort((a, b) => a.premium.weight.grams.compare(b.premium.weight.grams));
  const own = ours(sorted.map(({ premium: { weight } }) => weight));
  return {
    heads: [
      texts.weight,
      texts.markHead,
      texts.premiumHead(rates.currency),
      texts.oursHead(rates.currency),
      texts.dateHead,
      texts.sourceHead,
    ],
    rows: sorted.map((each, at) => {
      const {
        seen,
        premium: { weight, premium: over },
      } = each;
      const ofOurs = markOf(each) === mark ? own[at] : undefined;
      return [
        showGrams(weight, 2),
        markOf(each),
        showRate(over),
        ofOurs ? showRate(ofOurs) : "",
        seen.date === "" ? "" : showCellDate(dateSerial(seen.date)),
        seen.source,
      ];
    }),
  };
}

/** Ratio ticks need no decimals but below one. */
function showRatios(ticks: readonly number[]): readonly string[] {
  return ticks.map((tick) => showNumber(exactly(tick), 3));
}

function count(whole: number): string {
  return showNumber(Quotient.of(whole));
}

import { scaleLinear } from "d3-scale";
import { type BreakEven, type Comparison, LEVERS, type Lever, type Swing, type Tornado } from "../../src/index";
import { showTicks } from "../plots/axes";
import type { Plot } from "../plots/figure";
import { ticksOf } from "../plots/picture";
import { svg } from "../plots/svg";
import { showMoney } from "../wording/display";
import { SOURCING_TEXTS } from "../wording/sourcingtexts";
import { movedBy, sameSentence, showLever } from "./messages";

const { hinge: texts } = SOURCING_TEXTS;

/** Bars beyond these say little; the table has them all. */
const MOST_BARS = 8;
/** Heights in pixels; texts are 12 px high (taskpane.css). */
const LINE = 16;
const BAR = 10;
const GAP = 3;
const ROW = LINE + GAP + BAR + 9;
const CHARACTER = 6.3;

/** What the answer of one chain hangs on: a bar a figure, the widest first. */
export function tornadoPlot(
  said: Comparison,
  tornado: Tornado,
  level: (lever: Lever) => BreakEven | undefined,
  width: number,
): Plot {
  const moving = movingOf(tornado);
  return {
    title: texts.title,
    sentence: legendOf(tornado).join(" "),
    picture: drawn(tornado, said.choice.rates.currency, width),
    heads: texts.heads(movedBy()),
    rows: moving.map((swing) => {
      const even = level(swing.lever);
      return [...ends(swing), even ? showLever(said, swing.lever, even.value) : texts.noLevel];
    }),
  };
}

/** The same of many chains: how many answers each figure turns. */
export function tornadoOfMany(tornado: Tornado, width: number): Plot {
  return {
    title: texts.title,
    sentence: legendOf(tornado).join(" "),
    picture: drawn(tornado, tornado.saving.currency, width),
    heads: texts.headsOfMany(movedBy()),
    rows: movingOf(tornado).map((swing) => [...ends(swing), `${swing.turnedByLess} / ${swing.turnedByMore}`]),
  };
}

function movingOf({ swings }: Tornado): readonly Swing[] {
  return swings.filter(({ width }) => !width.isZero());
}

function legendOf(tornado: Tornado): readonly string[] {
  const same = sameSentence(tornado);
  return movingOf(tornado).length === 0 ? [same] : [texts.legend(movedBy()), same].filter((said) => said !== "");
}

function ends({ lever, less, more }: Swing): readonly string[] {
  return [LEVERS[lever].label, showMoney(less), showMoney(more)];
}

function drawn(tornado: Tornado, currency: string, width: number): SVGSVGElement {
  const bars = movingOf(tornado).slice(0, MOST_BARS);
  const now = tornado.saving.amount.toNumber();
  const reached = bars.flatMap(({ less, more }) => [less.amount.toNumber(), more.amount.toNumber()]);
  const [least, most] = [Math.min(now, ...reached), Math.max(now, ...reached)];
  // Level is drawn where it is near: a figure that turns the answer reaches beyond it.
  const room = (most - least) * 0.25;
  const showsLevel = least - room <= 0 && most + room >= 0;
  const [from, to] = showsLevel ? [Math.min(least, 0), Math.max(most, 0)] : [least, most];
  const edge = Math.max((to - from) * 0.04, 1e-6);
  const domain = { from: from - edge, to: to + edge };
  const across = scaleLinear()
    .domain([domain.from, domain.to])
    .range([12, width - 12]);
  const above = showsLevel ? LINE : 0;
  const top = above + LINE + 6;
  const bottom = top + bars.length * ROW;
  const height = bottom + 2 * LINE + 6;
  const ticks = ticksOf(domain, Math.max(2, Math.round(width / 110)));
  const tickTexts = showTicks(ticks);
  return svg(
    "svg",
    { width, height, viewBox: `0 0 ${width} ${height}`, focusable: "false" },
    ...ticks.map((tick) => svg("line", { class: "grid", x1: across(tick), x2: across(tick), y1: top, y2: bottom })),
    ...(showsLevel
      ? [
          svg("line", { class: "level", x1: across(0), x2: across(0), y1: LINE, y2: bottom }),
          centred(texts.levelLabel, across(0), LINE - 4, width, "name"),
        ]
      : []),
    svg("line", { class: "hairline", x1: across(now), x2: across(now), y1: above + LINE + 2, y2: bottom }),
    centred(texts.nowLabel, across(now), above + LINE - 2, width, "flag order"),
    ...bars.flatMap((swing, at) => bar(swing, now, across, top + at * ROW, width)),
    svg("line", { class: "axis", x1: 0, x2: width, y1: bottom, y2: bottom }),
    ...ticks.map((tick, at) => centred(tickTexts[at] ?? "", across(tick), bottom + LINE, width, "")),
    svg("text", { class: "axistitle", x: width, y: height - 2, "text-anchor": "end" }, texts.axis(currency)),
  );
}

function bar(
  { lever, less, more }: Swing,
  now: number,
  across: (value: number) => number,
  top: number,
  width: number,
): readonly SVGElement[] {
  const [low, high, at] = [across(less.amount.toNumber()), across(more.amount.toNumber()), across(now)];
  const part = (end: number) =>
    svg("rect", {
      class: `swing ${end < at ? "bought" : "made"}`,
      x: Math.min(end, at),
      y: top + LINE + GAP,
      width: Math.max(1, Math.abs(end - at)),
      height: BAR,
      rx: 1.5,
    });
  const sign = (end: number, other: number, text: string) =>
    svg(
      "text",
      {
        class: "sign",
        x: end + (end < other ? -5 : 5),
        y: top + LINE + GAP + BAR - 1,
        "text-anchor": end < other ? "end" : "start",
      },
      text,
    );
  return [
    svg("text", { class: "barname", x: 0, y: top + LINE - 4 }, shortened(LEVERS[lever].label, width)),
    part(low),
    part(high),
    sign(low, high, "−"),
    sign(high, low, "+"),
  ];
}

function centred(text: string, x: number, y: number, width: number, kind: string): SVGElement {
  const half = (text.length * CHARACTER) / 2;
  const middle = Math.max(half, Math.min(width - half, x));
  return svg("text", { class: kind, x: middle, y, "text-anchor": "middle" }, text);
}

function shortened(text: string, width: number): string {
  const most = Math.floor(width / CHARACTER);
  return text.length > most ? `${text.slice(0, most - 1)}…` : text;
}

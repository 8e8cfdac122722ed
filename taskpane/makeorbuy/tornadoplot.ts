import { type BreakEven, type Comparison, LEVERS, type Lever, type Swing, type Tornado } from "../../src/index";
import { type Axis, BELOW, LINE, type Scale, scaleOf, shortened, xAxis } from "../plots/axis";
import type { Plot } from "../plots/figure";
import { type Flag, flagTexts, hairlines } from "../plots/flag";
import { type Span, showTicks } from "../plots/span";
import { svg } from "../plots/svg";
import { showMoney } from "../wording/display";
import { SOURCING_TEXTS } from "../wording/sourcingtexts";
import { movedBy, sameSentence, showLever } from "./messages";

const { hinge: texts } = SOURCING_TEXTS;

/** Bars beyond these say little; the table has them all. */
const MOST_BARS = 8;
/** Heights in pixels; a bar stands below its name. */
const BAR = 10;
const ROW = LINE + BAR + 10;
/** Room for the signs at the ends of the widest bar. */
const EDGE = 12;

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
  const { showsLevel, ...span } = spanOf(now, bars);
  const flags: readonly Flag[] = [
    ...(showsLevel ? [{ x: 0, dots: [], text: texts.levelLabel, kind: "level" } as const] : []),
    { x: now, dots: [], text: texts.nowLabel, kind: "order" },
  ];
  const top = LINE * flags.length + 6;
  const bottom = top + bars.length * ROW;
  const height = bottom + BELOW;
  const axis: Axis = { title: texts.axis(currency), ...span, show: showTicks, lines: "ticks" };
  const across = scaleOf(axis, EDGE, width - EDGE);
  const room = { top: 0, bottom, width };
  return svg(
    "svg",
    { width, height, viewBox: `0 0 ${width} ${height}`, focusable: "false" },
    ...xAxis(axis, across, { left: 0, right: width, top, bottom }, width),
    ...hairlines(flags, across, room),
    ...flagTexts(flags, across, room),
    ...bars.flatMap((swing, at) => bar(swing, now, across, top + at * ROW, width)),
  );
}

/** What the bars reach; level is shown where it is near: a figure that turns the answer reaches beyond it. */
function spanOf(now: number, bars: readonly Swing[]): Span & { readonly showsLevel: boolean } {
  const reached = bars.flatMap(({ less, more }) => [less.amount.toNumber(), more.amount.toNumber()]);
  const [least, most] = [Math.min(now, ...reached), Math.max(now, ...reached)];
  const room = (most - least) * 0.25;
  const showsLevel = least - room <= 0 && most + room >= 0;
  const [from, to] = showsLevel ? [Math.min(least, 0), Math.max(most, 0)] : [least, most];
  const edge = Math.max((to - from) * 0.04, 1e-6);
  return { from: from - edge, to: to + edge, showsLevel };
}

function bar(
  { lever, less, more }: Swing,
  now: number,
  across: Scale,
  top: number,
  width: number,
): readonly SVGElement[] {
  const [low, high, at] = [across(less.amount.toNumber()), across(more.amount.toNumber()), across(now)];
  const y = top + LINE + 3;
  const part = (end: number) =>
    svg("rect", {
      class: `swing ${end < at ? "bought" : "made"}`,
      x: Math.min(end, at),
      y,
      width: Math.max(1, Math.abs(end - at)),
      height: BAR,
      rx: 1.5,
    });
  const sign = (end: number, other: number, text: string) => {
    const [x, anchor] = end < other ? [end - 5, "end"] : [end + 5, "start"];
    return svg("text", { class: "sign", x, y: y + BAR - 1, "text-anchor": anchor }, text);
  };
  return [
    svg("text", { class: "barname", x: 0, y: top + LINE - 4 }, shortened(LEVERS[lever].label, width)),
    part(low),
    part(high),
    sign(low, high, "−"),
    sign(high, low, "+"),
  ];
}

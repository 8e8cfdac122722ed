import { type ScaleContinuousNumeric, scaleLinear, scaleLog } from "d3-scale";
import { line } from "d3-shape";
import { type Point, type Points, pointsOf } from "./points";
import { svg } from "./svg";

export interface Axis {
  /** What is measured, with its unit. */
  readonly title: string;
  readonly from: number;
  readonly to: number;
  /** How the ticks are written. @param ticks all of them, for as many decimals as their step needs */
  readonly show: (ticks: readonly number[]) => readonly string[];
  /** Even steps are even ratios: 1, 2, 5, 10, 20 … From above zero. */
  readonly isLog?: boolean;
  /** Quiet lines up from these places, where classes begin. */
  readonly lines?: readonly number[];
}

/** A line of the plot; its name stands on it, at the end where there is room. */
export interface Curve {
  readonly name: string;
  readonly kind: "made" | "bought" | "margin";
  readonly points: readonly Point[];
  readonly nameAt: "start" | "end";
  readonly nameSide: "above" | "below";
}

/** A place on the axis worth a flag above the plot, with a hairline down and a dot on each line it is read from. */
export interface Flag {
  readonly x: number;
  readonly dots: readonly number[];
  readonly text: string;
  readonly kind: "order" | "crossing";
}

export interface Picture {
  readonly width: number;
  readonly x: Axis;
  readonly y: Axis;
  readonly curves: readonly Curve[];
  /** A quiet dashed line across, with its name. */
  readonly level?: Level;
  readonly flags: readonly Flag[];
  readonly points?: readonly Points[];
  /** Stretches of the axis with a soft ground, cut at its ends. */
  readonly bands?: readonly { readonly from: number; readonly to: number }[];
  /** Places on the lines without words of their own. */
  readonly dots?: readonly Point[];
}

/** Its name stands under it, at the start where nothing else is said. */
export interface Level {
  readonly text: string;
  readonly y: number;
  readonly nameAt?: "start" | "end";
}

type Scale = ScaleContinuousNumeric<number, number>;

/** Room for one line of text, in pixels; the texts are 12 px high (taskpane.css). */
const LINE = 18;
/** About the width of one character of those texts. */
const CHARACTER = 6.3;
const PLOT_HEIGHT = 150;

/** How many ticks an axis wants, for ticks that do not touch at this width. */
export function ticksOf({ isLog, ...axis }: Pick<Axis, "from" | "to" | "isLog">, count: number): readonly number[] {
  if (isLog) return ratioTicks(axis.from, axis.to, count);
  return scaleLinear().domain([axis.from, axis.to]).ticks(count);
}

export const Y_TICKS = 5;
export const xTicks = (width: number): number => Math.max(3, Math.round(width / 80));

/** 1, 2, 5, 10, 20 … between two ends; where those are too many, 1, 10, 100 … */
function ratioTicks(from: number, to: number, count: number): readonly number[] {
  const tens = Array.from({ length: 16 }, (_, power) => 10 ** (power - 4));
  const isWithin = (tick: number) => tick >= from && tick <= to;
  const all = tens.flatMap((ten) => [ten, 2 * ten, 5 * ten]).filter(isWithin);
  return all.length > 2 * count ? tens.filter(isWithin) : all;
}

/** Draws a plot: flags above, lines with their names, axes with titles and units. Colours come from taskpane.css. */
export function draw(picture: Picture): SVGSVGElement {
  const { width, x, y, curves, level, flags, points = [], bands = [], dots = [] } = picture;
  const yTicks = ticksOf(y, Y_TICKS);
  const yTexts = y.show(yTicks);
  const left = Math.ceil(Math.max(...yTexts.map(widthOf))) + 8;
  const right = width - 6;
  const top = LINE * (1 + flags.length) + 18;
  const bottom = top + PLOT_HEIGHT;
  const height = bottom + 2 * LINE + 4;
  const across = (x.isLog ? scaleLog() : scaleLinear()).domain([x.from, x.to]).range([left, right]);
  const up = scaleLinear().domain([y.from, y.to]).range([bottom, top]);
  const trace = line<Point>()
    .x((point) => across(point.x))
    .y((point) => up(point.y));
  return svg(
    "svg",
    { width, height, viewBox: `0 0 ${width} ${height}`, focusable: "false" },
    ...bands.map(({ from, to }) => {
      const [start, end] = [across(Math.max(from, x.from)), across(Math.min(to, x.to))];
      return svg("rect", { class: "band", x: start, y: top, width: Math.max(0, end - start), height: bottom - top });
    }),
    svg("text", { class: "axistitle", x: 0, y: 12 }, y.title),
    ...yTicks.flatMap((tick, at) => [
      svg("line", { class: "grid", x1: left, x2: right, y1: up(tick), y2: up(tick) }),
      svg("text", { x: left - 6, y: up(tick) + 4, "text-anchor": "end" }, yTexts[at] ?? ""),
    ]),
    ...(x.lines ?? []).map((at) => svg("line", { class: "grid", x1: across(at), x2: across(at), y1: top, y2: bottom })),
    ...xAxis(x, across, width, bottom),
    svg("text", { class: "axistitle", x: right, y: height - 6, "text-anchor": "end" }, x.title),
    ...(level ? levelOf(level, up, left, right) : []),
    ...flags.map((flag, row) => hairline(flag, across, LINE * (row + 2), bottom)),
    ...points.flatMap((group) => pointsOf(group, across, up)),
    ...curves.map((curve) => svg("path", { class: `curve ${curve.kind}`, d: trace(curve.points) ?? "" })),
    ...curves.map((curve) => nameOf(curve, across, up)),
    ...dots.map((dot) => svg("circle", { class: "dot small", cx: across(dot.x), cy: up(dot.y), r: 3 })),
    ...flags.flatMap(({ x, dots, kind }) =>
      dots.map((dot) => svg("circle", { class: `dot ${kind}`, cx: across(x), cy: up(dot), r: 4 })),
    ),
    ...flags.map((flag, row) => flagText(flag, flags, across, LINE * (row + 2) - 5)),
  );
}

function xAxis(axis: Axis, across: Scale, width: number, bottom: number): readonly SVGElement[] {
  const [start = 0, end = 0] = across.range();
  const ticks = ticksOf(axis, xTicks(width));
  const texts = axis.show(ticks);
  return [
    svg("line", { class: "axis", x1: start, x2: end, y1: bottom, y2: bottom }),
    ...ticks.flatMap((tick, at) => {
      const text = texts[at] ?? "";
      const x = across(tick);
      const middle = Math.min(x, end + 6 - widthOf(text) / 2);
      return [
        svg("line", { class: "axis", x1: x, x2: x, y1: bottom, y2: bottom + 4 }),
        svg("text", { x: middle, y: bottom + LINE - 1, "text-anchor": "middle" }, text),
      ];
    }),
  ];
}

function levelOf({ text, y, nameAt = "start" }: Level, up: Scale, left: number, right: number) {
  const atStart = nameAt === "start";
  return [
    svg("line", { class: "level", x1: left, x2: right, y1: up(y), y2: up(y) }),
    svg(
      "text",
      { class: "name", x: atStart ? left + 6 : right - 4, y: up(y) + 15, "text-anchor": atStart ? "start" : "end" },
      text,
    ),
  ];
}

function hairline({ x }: Flag, across: Scale, from: number, to: number): SVGElement {
  return svg("line", { class: "hairline", x1: across(x), x2: across(x), y1: from, y2: to });
}

/** A flag's words, centred on its hairline as far as the edges and the hairlines of other flags allow. */
function flagText(flag: Flag, flags: readonly Flag[], across: Scale, y: number): SVGElement {
  const half = widthOf(flag.text) / 2;
  const [, end = 0] = across.range();
  const own = across(flag.x);
  const others = flags.map((other) => across(other.x));
  const left = Math.max(0, ...others.filter((x) => x < own).map((x) => x + 5));
  const right = Math.min(end, ...others.filter((x) => x > own).map((x) => x - 5));
  const between = Math.max(left + half, Math.min(right - half, own));
  const x = Math.max(half, Math.min(end - half, between));
  return svg("text", { class: `flag ${flag.kind}`, x, y, "text-anchor": "middle" }, flag.text);
}

function nameOf({ name, kind, points, nameAt, nameSide }: Curve, across: Scale, up: Scale): SVGElement {
  const [start = 0, end = 0] = across.range();
  const atStart = nameAt === "start";
  const inset = atStart ? start + 8 : end - 4;
  // The name stands clear of the line where that is nearest to it over the name's own width.
  const covered = points.filter(({ x }) => {
    const at = across(x);
    return atStart ? at <= inset + widthOf(name) : at >= inset - widthOf(name);
  });
  const heights = (covered.length > 0 ? covered : points).map((point) => up(point.y));
  const y = nameSide === "above" ? Math.min(...heights) - 7 : Math.max(...heights) + 16;
  return svg("text", { class: `name ${kind}`, x: inset, y, "text-anchor": atStart ? "start" : "end" }, name);
}

function widthOf(text: string): number {
  return text.length * CHARACTER;
}

import { line } from "d3-shape";
import { type Axis, BELOW, type Frame, LINE, roomFor, type Scale, scaleOf, widthOf, xAxis, yAxis } from "./axis";
import { type Flag, flagTexts, hairlines } from "./flag";
import { type Point, type Points, pointsOf } from "./points";
import type { Span } from "./span";
import { svg } from "./svg";

/** A line of the plot; its name stands on it, at the end where there is room. */
export interface Curve {
  readonly name: string;
  readonly kind: "made" | "bought" | "margin";
  readonly points: readonly Point[];
  readonly nameAt: "start" | "end";
  readonly nameSide: "above" | "below";
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
  readonly bands?: readonly Span[];
  /** Places on the lines without words of their own. */
  readonly dots?: readonly Point[];
}

/** Its name stands under it, at the start where nothing else is said. */
export interface Level {
  readonly text: string;
  readonly y: number;
  readonly nameAt?: "start" | "end";
}

const PLOT_HEIGHT = 150;

/** Draws a plot: flags above, lines with their names, axes with titles and units. Colours come from taskpane.css. */
export function draw(picture: Picture): SVGSVGElement {
  const { width, x, y, curves, level, flags, points = [], bands = [], dots = [] } = picture;
  const top = LINE * (1 + flags.length) + 18;
  const frame: Frame = { left: roomFor(y), right: width - 6, top, bottom: top + PLOT_HEIGHT };
  const { left, right, bottom } = frame;
  const height = bottom + BELOW;
  const across = scaleOf(x, left, right);
  const up = scaleOf({ from: y.from, to: y.to }, bottom, top);
  const flagRoom = { top: LINE, bottom, width: right };
  const trace = line<Point>()
    .x((point) => across(point.x))
    .y((point) => up(point.y));
  return svg(
    "svg",
    { width, height, viewBox: `0 0 ${width} ${height}`, focusable: "false" },
    ...bands.map((band) => bandOf(band, x, across, frame)),
    ...yAxis(y, up, frame),
    ...xAxis(x, across, frame, width),
    ...(level ? levelOf(level, up, frame) : []),
    ...hairlines(flags, across, flagRoom),
    ...points.flatMap((group) => pointsOf(group, across, up)),
    ...curves.map((curve) => svg("path", { class: `curve ${curve.kind}`, d: trace(curve.points) ?? "" })),
    ...curves.map((curve) => nameOf(curve, across, up)),
    ...dots.map((dot) => svg("circle", { class: "dot small", cx: across(dot.x), cy: up(dot.y), r: 3 })),
    ...flags.flatMap(({ x: at, dots: places, kind }) =>
      places.map((dot) => svg("circle", { class: `dot ${kind}`, cx: across(at), cy: up(dot), r: 4 })),
    ),
    ...flagTexts(flags, across, flagRoom),
  );
}

function bandOf({ from, to }: Span, x: Axis, across: Scale, { top, bottom }: Frame): SVGElement {
  const [start, end] = [across(Math.max(from, x.from)), across(Math.min(to, x.to))];
  return svg("rect", { class: "band", x: start, y: top, width: Math.max(0, end - start), height: bottom - top });
}

function levelOf({ text, y, nameAt = "start" }: Level, up: Scale, { left, right }: Frame) {
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

import { type ScaleContinuousNumeric, scaleLinear, scaleLog } from "d3-scale";
import type { Span } from "./span";
import { svg } from "./svg";

export interface Axis extends Span {
  /** What is measured, with its unit. */
  readonly title: string;
  /** How the ticks are written. @param ticks all of them, for as many decimals as their step needs */
  readonly show: (ticks: readonly number[]) => readonly string[];
  /** Even steps are even ratios: 1, 2, 5, 10, 20 … From above zero. */
  readonly isLog?: boolean;
  /** Quiet lines up from these places, such as where classes begin, or from every tick. */
  readonly lines?: readonly number[] | "ticks";
}

/** From what is measured to pixels. */
export type Scale = ScaleContinuousNumeric<number, number>;

/** The edges of what is drawn within, in pixels. */
export interface Frame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Room for one line of text, in pixels; the texts are 12 px high (taskpane.css). */
export const LINE = 18;
/** Room below the frame for ticks and title. */
export const BELOW = 2 * LINE + 4;
/** About the width of one character of those texts. */
const CHARACTER = 6.3;
const Y_TICKS = 5;

/** About as wide as a text is drawn; a sign of per cent is as wide as two figures. */
export function widthOf(text: string): number {
  return text.replaceAll("%", "%%").length * CHARACTER;
}

/** As much of a text as there is room for. */
export function shortened(text: string, width: number): string {
  const most = Math.floor(width / CHARACTER);
  return text.length > most ? `${text.slice(0, most - 1)}…` : text;
}

export function scaleOf({ from, to, isLog }: Pick<Axis, "from" | "to" | "isLog">, start: number, end: number): Scale {
  return (isLog ? scaleLog() : scaleLinear()).domain([from, to]).range([start, end]);
}

/** Ticks of an axis, about as many as are wanted. */
export function ticksOf({ isLog, ...axis }: Pick<Axis, "from" | "to" | "isLog">, count: number): readonly number[] {
  if (isLog) return ratioTicks(axis, count);
  return scaleLinear().domain([axis.from, axis.to]).ticks(count);
}

/** Ticks whose texts do not touch at this width. */
export const xTicks = (width: number): number => Math.max(3, Math.round(width / 80));

/** 1, 2, 5, 10, 20 … between two ends; where those are too many, 1, 10, 100 … */
function ratioTicks({ from, to }: Span, count: number): readonly number[] {
  const tens = Array.from({ length: 16 }, (_, power) => 10 ** (power - 4));
  const isWithin = (tick: number) => tick >= from && tick <= to;
  const all = tens.flatMap((ten) => [ten, 2 * ten, 5 * ten]).filter(isWithin);
  return all.length > 2 * count ? tens.filter(isWithin) : all;
}

/** Room that the ticks of an upright axis take at its left. */
export function roomFor(axis: Axis): number {
  return Math.ceil(Math.max(...axis.show(ticksOf(axis, Y_TICKS)).map(widthOf))) + 8;
}

/** An upright axis: its title above, its ticks as quiet lines across. */
export function yAxis(axis: Axis, up: Scale, { left, right }: Frame): readonly SVGElement[] {
  const ticks = ticksOf(axis, Y_TICKS);
  const texts = axis.show(ticks);
  return [
    svg("text", { class: "axistitle", x: 0, y: 12 }, axis.title),
    ...ticks.flatMap((tick, at) => [
      svg("line", { class: "grid", x1: left, x2: right, y1: up(tick), y2: up(tick) }),
      svg("text", { x: left - 6, y: up(tick) + 4, "text-anchor": "end" }, texts[at] ?? ""),
    ]),
  ];
}

/** An axis along the bottom: its ticks, quiet lines up where it wants them, and its title below. */
export function xAxis(
  axis: Axis,
  across: Scale,
  { left, right, top, bottom }: Frame,
  width: number,
): readonly SVGElement[] {
  const ticks = ticksOf(axis, xTicks(width));
  const texts = axis.show(ticks);
  const lines = axis.lines === "ticks" ? ticks : (axis.lines ?? []);
  return [
    ...lines.map((at) => svg("line", { class: "grid", x1: across(at), x2: across(at), y1: top, y2: bottom })),
    svg("line", { class: "axis", x1: left, x2: right, y1: bottom, y2: bottom }),
    ...ticks.flatMap((tick, at) => {
      const x = across(tick);
      return [
        svg("line", { class: "axis", x1: x, x2: x, y1: bottom, y2: bottom + 4 }),
        centred(texts[at] ?? "", x, bottom + LINE - 1, { from: 0, to: width }),
      ];
    }),
    svg("text", { class: "axistitle", x: right, y: bottom + BELOW - 6, "text-anchor": "end" }, axis.title),
  ];
}

/** A text in the middle of a place, as far as its edges allow. */
export function centred(text: string, x: number, y: number, within: Span, kind = ""): SVGElement {
  const half = widthOf(text) / 2;
  const middle = Math.max(within.from + half, Math.min(within.to - half, x));
  return svg("text", { class: kind, x: middle, y, "text-anchor": "middle" }, text);
}

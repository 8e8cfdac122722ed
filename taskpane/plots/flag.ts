import { centred, LINE, type Scale, widthOf } from "./axis";
import { svg } from "./svg";

/** A place on the axis worth a flag above the plot, with a line down and a dot on each curve it is read from. */
export interface Flag {
  readonly x: number;
  readonly dots: readonly number[];
  readonly text: string;
  readonly kind: "order" | "crossing" | "level";
}

/** Where the words of a plot's flags stand, one under the other. */
export interface FlagRoom {
  /** Below what stands there already. */
  readonly top: number;
  readonly bottom: number;
  readonly width: number;
}

export function hairlines(flags: readonly Flag[], across: Scale, { top, bottom }: FlagRoom): readonly SVGElement[] {
  return flags.map(({ x, kind }, row) => {
    const look = kind === "level" ? "level" : "hairline";
    return svg("line", { class: look, x1: across(x), x2: across(x), y1: top + LINE * (row + 1), y2: bottom });
  });
}

/** The words of flags, each centred on its line as far as the edges and the lines of other flags allow. */
export function flagTexts(flags: readonly Flag[], across: Scale, { top, width }: FlagRoom): readonly SVGElement[] {
  const places = flags.map(({ x }) => across(x));
  return flags.map(({ x, text, kind }, row) => {
    const half = widthOf(text) / 2;
    const own = across(x);
    const left = Math.max(0, ...places.filter((place) => place < own).map((place) => place + 5));
    const right = Math.min(width, ...places.filter((place) => place > own).map((place) => place - 5));
    const between = Math.max(left + half, Math.min(right - half, own));
    return centred(text, between, top + LINE * (row + 1) - 5, { from: 0, to: width }, `flag ${kind}`);
  });
}

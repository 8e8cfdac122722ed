import type { ScaleContinuousNumeric } from "d3-scale";
import { symbol, symbolCircle, symbolDiamond, symbolSquare, symbolTriangle, symbolWye } from "d3-shape";
import { svg } from "./svg";

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Points that belong together; each group has a shape of its own, so that colour alone tells nothing. */
export interface Points {
  readonly points: readonly Point[];
  /** The place of its shape among SHAPES. */
  readonly shape: number;
  /** Filled, or an outline. */
  readonly isStrong: boolean;
}

/** What groups of points are drawn as, in their order; beyond them they begin anew. */
const SHAPES = [symbolCircle, symbolSquare, symbolTriangle, symbolDiamond, symbolWye] as const;
/** Square pixels. */
const SIZE = 42;

type Scale = ScaleContinuousNumeric<number, number>;

export function pointsOf({ points, shape, isStrong }: Points, across: Scale, up: Scale): readonly SVGElement[] {
  return points.map(({ x, y }) =>
    svg("path", { ...lookOf(shape, isStrong), transform: `translate(${across(x)} ${up(y)})` }),
  );
}

/** A group's shape alone, for a legend. */
export function sample(shape: number, isStrong: boolean): SVGSVGElement {
  const box = { class: "sample", width: 12, height: 12, viewBox: "-6 -6 12 12", focusable: "false" };
  return svg("svg", { ...box, "aria-hidden": "true" }, svg("path", lookOf(shape, isStrong)));
}

function lookOf(shape: number, isStrong: boolean) {
  const d = symbol(SHAPES[shape % SHAPES.length] ?? symbolCircle, SIZE)() ?? "";
  return { class: isStrong ? "point strong" : "point", d };
}

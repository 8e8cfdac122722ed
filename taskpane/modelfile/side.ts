import { type Length, lengthIn, type ModelUnit, modelMillimetres, Quotient } from "../../src/index";
import { showNumber } from "../wording/display";

/** A length in the model's unit. */
export function lengthOf(length: number, unit: ModelUnit): Length {
  return lengthIn(modelMillimetres(length, unit), "mm");
}

/** Sides in mm, to be read at a glance: "8.2", "0.35", "127". */
export function showSides(
  sides: readonly [number, number, number],
  unit: ModelUnit,
  scale = Quotient.one,
): [string, string, string] {
  const shown = (side: number) => {
    const length = modelMillimetres(side, unit).times(scale);
    return showNumber(length, length.isLessThan(Quotient.of("100")) ? 2 : 1);
  };
  return [shown(sides[0]), shown(sides[1]), shown(sides[2])];
}

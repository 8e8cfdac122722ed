import { decimalOfCell } from "../exact/decimal";
import { CostingError } from "../exact/errors";
import { Quotient } from "../exact/quotient";
import { type LengthUnit, MILLIMETRES_PER } from "../units/length";
import { grams, type Weight } from "../units/weight";

const MM3_PER_CM3 = Quotient.of("1000");
const HUNDRED = Quotient.of("100");

/** The units a model is drawn in. An STL file does not say which. */
export const MODEL_UNITS = ["mm", "in"] as const satisfies readonly LengthUnit[];
export type ModelUnit = (typeof MODEL_UNITS)[number];

/** A volume measured in the model's unit, in mm³. Takes the 15 significant digits of the measure as exact. */
export function cubicMillimetres(volume: number, unit: ModelUnit): Quotient {
  return Quotient.of(decimalOfCell(volume)).times(cube(Quotient.of(MILLIMETRES_PER[unit])));
}

/** A length measured in the model's unit, in mm. */
export function modelMillimetres(length: number, unit: ModelUnit): Quotient {
  return Quotient.of(decimalOfCell(length)).times(Quotient.of(MILLIMETRES_PER[unit]));
}

/**
 * What a model weighs when cast: volume x scale³ x density x (1 - linear shrinkage)³.
 * Units: mm³, g/cm³; scale 1 is the model's own size; shrinkage is a share of each length.
 */
export function modelWeight(
  volume: Quotient,
  density: Quotient,
  scale: Quotient = Quotient.one,
  shrinkage: Quotient = Quotient.zero,
): Weight {
  const kept = scale.times(Quotient.one.minus(shrinkage));
  return grams(volume.times(density).times(cube(kept)).dividedBy(MM3_PER_CM3));
}

/**
 * One linear shrinkage from those of each step (mould, wax, metal): 1 - (1 - a)(1 - b)…
 * Errors: outOfRange for a step that is not a share from 0 to below 1.
 */
export function compoundShrinkage(steps: readonly Quotient[]): Quotient {
  let kept = Quotient.one;
  for (const step of steps) {
    if (step.isNegative() || !step.isLessThan(Quotient.one)) {
      throw new CostingError(
        "outOfRange",
        "shrinkage",
        `found ${step.value()}; give a share of the length from 0 to below 1, such as 0.0125 for 1.25 %`,
      );
    }
    kept = kept.times(Quotient.one.minus(step));
  }
  return Quotient.one.minus(kept);
}

/** How a model is to be scaled: to a width that it has along one of its sides, or by a share. */
export type Scaling =
  | { readonly kind: "toWidth"; readonly from: Quotient; readonly to: Quotient }
  | { readonly kind: "byPercent"; readonly percent: Quotient };

/**
 * What every length of the model is multiplied by. Weight is multiplied by its cube, pitch by the factor once.
 * Errors: outOfRange for a width or per cent that is not above zero, and for a model with seats for stones whose size would
 * change: the stones keep theirs.
 */
export function scaleOf(scaling: Scaling, hasSeats: boolean): Quotient {
  const wanted = scaling.kind === "toWidth" ? scaling.to : scaling.percent;
  if (!wanted.isPositive() || (scaling.kind === "toWidth" && !scaling.from.isPositive())) {
    throw new CostingError("outOfRange", "scale", `found ${wanted.value()}; give a size above 0`);
  }
  const scale = scaling.kind === "toWidth" ? scaling.to.dividedBy(scaling.from) : scaling.percent.dividedBy(HUNDRED);
  if (hasSeats && !scale.equals(Quotient.one)) {
    throw new CostingError(
      "outOfRange",
      "scale",
      "found a model with seats for stones, which would no longer fit their stones; scale a model without seats, or have it drawn anew at this size",
    );
  }
  return scale;
}

/** The sides a link's largest may have without a doubt, mm (common practice: no source was seen). */
export const PLAUSIBLE_LINK = { least: Quotient.of("1"), most: Quotient.of("60") } as const;

/** Whether a link of this largest side would be too small or too large to be one. */
export function implausibleLink(side: Quotient): "small" | "large" | undefined {
  if (side.isLessThan(PLAUSIBLE_LINK.least)) return "small";
  return side.isGreaterThan(PLAUSIBLE_LINK.most) ? "large" : undefined;
}

function cube(value: Quotient): Quotient {
  return value.times(value).times(value);
}

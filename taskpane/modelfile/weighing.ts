import {
  atStage,
  cubicMillimetres,
  grams,
  type ModelUnit,
  modelWeight,
  Quotient,
  type StagedWeight,
  type Weight,
} from "../../src/index";
import type { Report } from "./message";

/** What a person has chosen about a model; undefined for what is not chosen yet, or has a fault. */
export interface Choices {
  readonly unit: ModelUnit | undefined;
  /** Indexes of the solids that are metal in the finished piece. */
  readonly ticked: ReadonlySet<number>;
  /** g/cm³. */
  readonly density: Quotient | undefined;
  readonly scale: Quotient | undefined;
  readonly shrinkage: Quotient | undefined;
  readonly links: Quotient | undefined;
}

export interface Weighing {
  /** mm³ as drawn, by solid; undefined without a unit or without a volume. */
  readonly volumes: readonly (Quotient | undefined)[];
  /** Weight as cast, by solid. */
  readonly weights: readonly (Weight | undefined)[];
  /** Indexes of the ticked solids that have no volume: nothing is summed while there is one. */
  readonly faulty: readonly number[];
  /** All ticked solids; undefined while something is missing. */
  readonly ticked: Weight | undefined;
  /** Whether the ticked solids are several of one volume, to a hundredth: links alike, or halves of one. */
  readonly areAlike: boolean;
  /** The weight of the ticked solids divided by the links. */
  readonly link: StagedWeight<"cast"> | undefined;
  /** The weight of all solids that have a volume; undefined where it is the same as `ticked`. */
  readonly withSprue: Weight | undefined;
}

/** What the solids of a model weigh. */
export function weighSolids(report: Report, choices: Choices): Weighing {
  const { unit, density, scale, shrinkage, links } = choices;
  const volumes = report.solids.map(({ volume }) =>
    unit === undefined || volume === undefined ? undefined : cubicMillimetres(volume, unit),
  );
  const weights = volumes.map((volume) =>
    volume && density && scale && shrinkage ? modelWeight(volume, density, scale, shrinkage) : undefined,
  );
  const chosen = [...choices.ticked];
  const faulty = chosen.filter((solid) => report.solids[solid]?.volume === undefined).sort((a, b) => a - b);
  const ticked = faulty.length > 0 || chosen.length === 0 ? undefined : total(chosen.map((solid) => weights[solid]));
  const sound = report.solids.flatMap(({ volume }, solid) => (volume === undefined ? [] : [solid]));
  const all = sound.length > chosen.length ? total(sound.map((solid) => weights[solid])) : undefined;
  return {
    volumes,
    weights,
    faulty,
    ticked,
    areAlike: areAlike(chosen.map((solid) => volumes[solid])),
    link: ticked && links ? atStage("cast", grams(ticked.grams.dividedBy(links))) : undefined,
    withSprue: ticked && all,
  };
}

function total(weights: readonly (Weight | undefined)[]): Weight | undefined {
  let sum = Quotient.zero;
  for (const weight of weights) {
    if (!weight) return undefined;
    sum = sum.plus(weight.grams);
  }
  return grams(sum);
}

const HUNDRED = Quotient.of(100);

function areAlike(volumes: readonly (Quotient | undefined)[]): boolean {
  const [first, ...others] = volumes;
  if (!first || others.length === 0) return false;
  return others.every((other) => {
    const apart = other?.minus(first).times(HUNDRED);
    return apart && !apart.isGreaterThan(first) && !Quotient.zero.minus(apart).isGreaterThan(first);
  });
}

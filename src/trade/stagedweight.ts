import type { Weight } from "../units/weight";
import { finishedWeight, type Loss } from "./polishloss";

/** What lies on the scale: the wax or resin model, the casting, what came back polished, the finished piece. */
export const STAGES = ["model", "cast", "polished", "finished"] as const;
export type Stage = (typeof STAGES)[number];

/** A weight and the stage of the work it belongs to: what was cast does not weigh what is sold. */
export interface StagedWeight<S extends Stage = Stage> {
  readonly stage: S;
  readonly weight: Weight;
}

export function atStage<S extends Stage>(stage: S, weight: Weight): StagedWeight<S> {
  return Object.freeze({ stage, weight });
}

/** A loss that says how much of a single link is lost. Grams are per piece, and are not known of one link. */
export type LossShare = Exclude<Loss, { readonly basis: "grams" }>;

/** What polishing leaves of a link as cast. Exact. */
export function castToFinished(cast: StagedWeight<"cast">, loss: LossShare): StagedWeight<"finished"> {
  return atStage("finished", finishedWeight(cast.weight, loss));
}

import { CostingError } from "../exact/errors";

/** Beyond this, in the file's unit, no coordinate is one of a link: a kilometre where the unit is a millimetre. */
export const FARTHEST = 1e6;

/** Refuses a coordinate that is not a number or is too far away. @param at which corner it is, in words */
export function refuseCoordinate(value: number, field: string, at: string): never {
  if (Number.isFinite(value)) {
    throw new CostingError(
      "outOfRange",
      field,
      `found a coordinate of ${value} at ${at}; give coordinates within ${FARTHEST.toLocaleString("en-US")} of the origin`,
    );
  }
  throw new CostingError(
    "notANumber",
    field,
    `found a coordinate that is no number (${value}) at ${at}; repair the model and export it anew`,
  );
}

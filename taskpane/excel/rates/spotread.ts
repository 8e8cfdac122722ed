import type { SpotRead } from "../../../src/index";
import type { RateValues } from "./rates";

/** When and where the spot on Rates was read, as far as Rates say. */
export function spotReadOf({ spotTime, spotSource }: RateValues): SpotRead {
  return {
    time: typeof spotTime === "number" ? spotTime : undefined,
    source: typeof spotSource === "string" ? spotSource.trim() : "",
  };
}

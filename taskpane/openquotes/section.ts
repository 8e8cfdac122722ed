import { type LazyPart, lazyPart } from "../views/lazypart";
import { DECIDE_PARTS } from "../wording/decidetitles";
import type { SpotRiskEvents } from "./spotriskpart";

/** The folded part about open quotes and the spot up to which each keeps its margin. */
export function spotRiskSection(on: SpotRiskEvents): LazyPart {
  return lazyPart(
    { ...DECIDE_PARTS.risk, name: "decide" },
    async (place) => {
      const { openSpotRisk } = await import(/* webpackChunkName: "openquotes" */ "./spotriskpart");
      return openSpotRisk(place, on);
    },
    on.attempt,
  );
}

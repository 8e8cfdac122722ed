import type { DecideEvents } from "../views/askedpiece";
import { type LazyPart, lazyPart } from "../views/lazypart";
import { DECIDE_PARTS } from "../wording/decidetitles";

/** The budget for a start or a batch, folded away. */
export function budgetSection(on: DecideEvents): LazyPart {
  return lazyPart(
    { ...DECIDE_PARTS.budget, name: "decide" },
    async (place) => {
      const { openBudget } = await import(/* webpackChunkName: "cashplan" */ "./budget");
      return openBudget(place, on);
    },
    on.attempt,
  );
}

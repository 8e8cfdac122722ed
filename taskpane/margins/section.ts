import type { DecideEvents } from "../views/askedpiece";
import { type LazyPart, lazyPart } from "../views/lazypart";
import { DECIDE_PARTS } from "../wording/decidetitles";

/** The price that a target margin asks for, folded away. */
export function targetPriceSection(on: DecideEvents): LazyPart {
  return lazyPart(
    { ...DECIDE_PARTS.mustBring, name: "decide" },
    async (place) => {
      const { openMustBring } = await import(/* webpackChunkName: "margins" */ "./targetprice");
      return openMustBring(place, on);
    },
    on.attempt,
  );
}

/** What stones in the links would cost and bring, folded away. */
export function stonesSection(on: DecideEvents): LazyPart {
  return lazyPart(
    { ...DECIDE_PARTS.stones, name: "decide" },
    async (place) => {
      const { openStones } = await import(/* webpackChunkName: "margins" */ "./stones");
      return openStones(place, on);
    },
    on.attempt,
  );
}

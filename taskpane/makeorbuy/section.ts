import { type LazyPart, lazyPart } from "../views/lazypart";
import { SOURCING_PART } from "../wording/sourcingtitles";
import type { SourcingEvents } from "./sourcingevents";

/** Make or buy, for the order in the form, a list of weights or a catalogue. */
export function sourcingSection(on: SourcingEvents): LazyPart {
  return lazyPart(
    { ...SOURCING_PART, name: "sourcing", isOpen: true },
    async (place) => {
      const { openMakeOrBuy } = await import(/* webpackChunkName: "sourcing" */ "./part");
      return openMakeOrBuy(place, on);
    },
    on.attempt,
  );
}

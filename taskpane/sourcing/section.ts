import { type LazyPart, lazyPart, type PartEvents } from "../part";
import { SOURCING_PART } from "../texts/sourcingpart";

/** What making or buying needs to know of the rest of the pane. */
export interface SourcingEvents extends PartEvents {
  /** The open line of the order, counted from 0. */
  readonly line: () => number;
}

/** Make or buy, for the order in the form, a list of weights or a catalogue. */
export function sourcingSection(on: SourcingEvents): LazyPart {
  return lazyPart(
    { ...SOURCING_PART, name: "sourcing", isOpen: true },
    async (place) => {
      const { openMakeOrBuy } = await import(/* webpackChunkName: "sourcing" */ "./desk");
      return openMakeOrBuy(place, on);
    },
    on.attempt,
  );
}

import { type LazyPart, lazyPart, type PartEvents } from "../views/lazypart";
import { SCALE_TEXTS } from "../wording/scaletexts";
import type { ScaleDesk } from "./part";
import type { ScaleEvents } from "./weightevents";

/** Kept links, weigh-ins and estimates. The first two share one desk, loaded when either is seen. */
export function scaleSections(on: ScaleEvents, attempt: PartEvents["attempt"]): readonly LazyPart[] {
  let desk: ScaleDesk | undefined;
  const reading = async () => {
    const { openScaleDesk } = await import(/* webpackChunkName: "scale" */ "./part");
    desk ??= openScaleDesk({ links: links.place, weighIn: weighIn.place }, on);
    return desk;
  };
  const estimating = async (place: HTMLElement) => {
    const { estimates } = await import(/* webpackChunkName: "scale" */ "./estimates");
    const made = estimates(on);
    place.replaceChildren(made.root);
    return made;
  };
  const name = "scale";
  const links = lazyPart({ title: SCALE_TEXTS.links.title, name, isOpen: true }, reading, attempt);
  const weighIn = lazyPart({ title: SCALE_TEXTS.weighIn.title, name }, reading, attempt);
  const guesses = lazyPart({ title: SCALE_TEXTS.estimates.title, name }, estimating, attempt);
  return [links, weighIn, guesses];
}

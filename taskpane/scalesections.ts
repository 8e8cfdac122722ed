import type { LineKey } from "../src/index";
import { type LazyPart, lazyPart, type PartEvents } from "./part";
import type { ScaleDesk } from "./scale/desk";
import { SCALE_TEXTS } from "./texts/scale";

/** What the parts about weighing need of the order form. */
export interface ScaleEvents {
  /** Puts texts into the open line of the order, as if typed. */
  readonly takeLink: (texts: Readonly<Partial<Record<LineKey, string>>>) => void;
  /** The open line as typed. */
  readonly line: () => Readonly<Partial<Record<LineKey, string>>>;
}

/** Kept links, weigh-ins and estimates. The first two share one desk, loaded when either is seen. */
export function scaleSections(on: ScaleEvents, attempt: PartEvents["attempt"]): readonly LazyPart[] {
  let desk: ScaleDesk | undefined;
  const reading = async () => {
    const { openScaleDesk } = await import(/* webpackChunkName: "scale" */ "./scale/desk");
    desk ??= openScaleDesk({ links: links.place, weighIn: weighIn.place }, on);
    return desk;
  };
  const estimating = async (place: HTMLElement) => {
    const { estimates } = await import(/* webpackChunkName: "scale" */ "./scale/estimates");
    place.replaceChildren(estimates(on));
    return { follow() {} };
  };
  const name = "scale";
  const links = lazyPart({ title: SCALE_TEXTS.links.title, name, isOpen: true }, reading, attempt);
  const weighIn = lazyPart({ title: SCALE_TEXTS.weighIn.title, name }, reading, attempt);
  const guesses = lazyPart({ title: SCALE_TEXTS.estimates.title, name }, estimating, attempt);
  return [links, weighIn, guesses];
}

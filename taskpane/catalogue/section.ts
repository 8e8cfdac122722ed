import { type LazyPart, lazyPart, type PartEvents } from "../part";
import { TEXTS } from "../texts";

const texts = TEXTS.catalogue;

/** The whole catalogue at once. */
export function catalogueSection(on: PartEvents): LazyPart {
  return lazyPart(
    { title: texts.title, name: "catalogue", about: texts.about, isOpen: true },
    async (place) => {
      const { openBoard } = await import(/* webpackChunkName: "catalogue" */ "./board");
      return openBoard(place, on);
    },
    on.attempt,
  );
}

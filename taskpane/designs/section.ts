import { type LazyPart, lazyPart, type PartEvents } from "../views/lazypart";
import { TEXTS } from "../wording/texts";

const texts = TEXTS.catalogue;

/** The whole catalogue at once. */
export function catalogueSection(on: PartEvents): LazyPart {
  return lazyPart(
    { title: texts.title, name: "catalogue", about: texts.about, isOpen: true },
    async (place) => {
      const { openBoard } = await import(/* webpackChunkName: "catalogue" */ "./part");
      return openBoard(place, on);
    },
    on.attempt,
  );
}

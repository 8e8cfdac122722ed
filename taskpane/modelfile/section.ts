import { type LazyPart, lazyPart, type PartEvents } from "../views/lazypart";
import { TEXTS } from "../wording/texts";
import type { ModelEvents } from "./part";

/** The part in which a link's model file is weighed. */
export function modelSection(on: ModelEvents, attempt: PartEvents["attempt"]): LazyPart {
  // A file dropped beside its place would replace the whole pane, with all that is typed in it.
  for (const kind of ["dragover", "drop"] as const) {
    window.addEventListener(kind, (event) => {
      if (event.dataTransfer?.types.includes("Files")) event.preventDefault();
    });
  }
  return lazyPart(
    { title: TEXTS.model.title, name: "model" },
    async (place) => {
      const { openModel } = await import(/* webpackChunkName: "model" */ "./part");
      return openModel(place, on);
    },
    attempt,
  );
}

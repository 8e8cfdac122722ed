import { element, setText } from "./element";
import type { ModelEvents } from "./model/modeldesk";
import { TEXTS } from "./texts";

/** The fold in which a link's model file is weighed. What examines it is loaded when it is first opened. */
export function modelSection(on: ModelEvents): { readonly root: HTMLDetailsElement } {
  const note = element("p", { class: "help", role: "status" });
  const place = element("div", { class: "model" });
  const root = element("details", { class: "earlier" }, element("summary", {}, TEXTS.model.title), note, place);
  note.hidden = true;
  let opened = false;
  const say = (sentence: string) => {
    setText(note, sentence);
    note.hidden = sentence === "";
  };
  const open = async () => {
    if (opened) return;
    say(TEXTS.model.loading);
    try {
      const { openModel } = await import(/* webpackChunkName: "model" */ "./model/modeldesk");
      if (!opened) openModel(place, on);
      opened = true;
      say("");
    } catch (error) {
      // A network that failed is tried anew at the next opening; anything else is our mistake.
      if (!(error instanceof Error && error.name === "ChunkLoadError")) throw error;
      say(TEXTS.model.notLoaded);
    }
  };
  // A file that misses its place would replace the whole pane, with all that is typed in it.
  for (const kind of ["dragover", "drop"] as const) {
    window.addEventListener(kind, (event) => {
      if (event.dataTransfer?.types.includes("Files")) event.preventDefault();
    });
  }
  root.addEventListener("toggle", () => {
    if (root.open) void open();
  });
  return { root };
}

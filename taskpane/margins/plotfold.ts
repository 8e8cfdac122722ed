import { element, setText } from "../controls/element";
import { DECIDE_TEXTS } from "../wording/decidetexts";
import type { Drawn, openMarginFigure } from "./marginplot";

const { plot: texts } = DECIDE_TEXTS.mustBring;

/** Long enough that nothing is drawn between two keys. */
const REST = 150;

export interface PlotFold {
  readonly root: HTMLDetailsElement;
  /** Draws once typing rests, where it is unfolded; undefined hides the whole fold. */
  show(drawn: Drawn | undefined): void;
}

/** A plot that is folded away; what draws it is loaded when it is first unfolded. */
export function plotFold(): PlotFold {
  const note = element("p", { class: "help", role: "status" });
  const place = element("div", { class: "plots" });
  const root = element("details", {}, element("summary", {}, texts.fold), note, place);
  let figure: ReturnType<typeof openMarginFigure> | undefined;
  let current: Drawn | undefined;
  let waiting: number | undefined;
  note.hidden = true;
  root.hidden = true;

  const say = (sentence: string) => {
    setText(note, sentence);
    note.hidden = sentence === "";
  };
  const paint = () => {
    window.clearTimeout(waiting);
    place.removeAttribute("aria-busy");
    if (root.open && current && figure && place.clientWidth > 0) figure.show(current, place.clientWidth);
  };
  const load = async () => {
    if (figure) return;
    say(texts.loading);
    try {
      const chunk = await import(/* webpackChunkName: "decideplot" */ "./marginplot");
      figure ??= chunk.openMarginFigure();
      place.replaceChildren(figure.root);
      say("");
    } catch {
      // A network that failed is tried anew at the next opening.
      say(texts.notLoaded);
    }
  };
  root.addEventListener("toggle", () => {
    if (root.open) void load().then(paint);
  });
  // Also the first width, once the fold is open.
  new ResizeObserver(paint).observe(place);

  return {
    root,
    show(drawn) {
      current = drawn;
      root.hidden = drawn === undefined;
      window.clearTimeout(waiting);
      if (!drawn || !root.open) return;
      place.setAttribute("aria-busy", "true");
      waiting = window.setTimeout(paint, REST);
    },
  };
}

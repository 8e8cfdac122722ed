import { element, setText } from "../controls/element";
import { hold } from "../controls/keepplace";
import type { Costed } from "../order/reckoning";
import type { Drawing } from "../plots/drawing";
import { TEXTS } from "../wording/texts";

/** Milliseconds; long enough that nothing is drawn between two keys. */
const REST = 150;

export interface PlotSection {
  readonly root: HTMLElement;
  /** Draws the plots of a line, counted from 0, if the section is open and once typing pauses; undefined draws nothing. */
  show(costed: Costed | undefined, line: number): void;
}

/** The plots of an order. What draws them is loaded when the section is first opened. */
export function plotSection(): PlotSection {
  const note = element("p", { class: "help", role: "status" });
  const place = element("div", { class: "plots" });
  const which = element("span", { class: "holds" });
  const summary = element("summary", {}, element("span", {}, TEXTS.plots.title), " ", which);
  const root = element("details", {}, summary, note, place);
  note.hidden = true;
  let current: Costed | undefined;
  let drawn = 0;
  let drawing: Drawing | undefined;
  let waiting: number | undefined;

  const say = (sentence: string) => {
    setText(note, sentence);
    note.hidden = sentence === "";
  };
  const draw = () => {
    window.clearTimeout(waiting);
    if (!root.open || !current || !drawing || place.clientWidth === 0) return;
    const stay = hold(root);
    drawing.draw(current, drawn, place.clientWidth);
    place.removeAttribute("aria-busy");
    stay();
  };
  const load = async () => {
    if (drawing) return;
    say(TEXTS.plots.loading);
    try {
      const { openDrawing } = await import(/* webpackChunkName: "plots" */ "../plots/drawing");
      drawing ??= openDrawing(place);
      say("");
    } catch {
      // After a network failure the next opening tries again.
      say(TEXTS.plots.notLoaded);
    }
  };

  root.addEventListener("toggle", () => {
    if (root.open) void load().then(draw);
  });
  // Also the first width, once the section is open.
  new ResizeObserver(draw).observe(place);

  return {
    root,
    show(costed, line) {
      if (costed === current && line === drawn) return;
      current = costed;
      drawn = line;
      setText(which, costed && costed.sheets.length > 1 ? TEXTS.plots.ofLine(line + 1) : "");
      window.clearTimeout(waiting);
      if (!costed || !root.open) return;
      place.setAttribute("aria-busy", "true");
      waiting = window.setTimeout(draw, REST);
    },
  };
}

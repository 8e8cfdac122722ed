import { type Child, element, say } from "../controls/element";
import { hold } from "../controls/keepplace";

/** Long enough that nothing is drawn between two keys. */
const REST = 150;

export interface DrawnFold<T> {
  readonly root: HTMLDetailsElement;
  /** Draws it where the fold is open, once typing rests; undefined draws nothing. */
  show(drawn: T | undefined): void;
}

/**
 * A fold with pictures in it, drawn as wide as there is room.
 * @param load brings what draws them, when the fold is first opened
 */
export function drawnFold<T>(
  summary: readonly Child[],
  texts: { readonly loading: string; readonly notLoaded: string },
  load: (place: HTMLElement) => Promise<(drawn: T, width: number) => void>,
): DrawnFold<T> {
  const note = element("p", { class: "help", role: "status" });
  const place = element("div", { class: "plots" });
  const root = element("details", {}, element("summary", {}, ...summary), note, place);
  let draw: ((drawn: T, width: number) => void) | undefined;
  let current: T | undefined;
  let waiting: number | undefined;
  note.hidden = true;

  const paint = () => {
    window.clearTimeout(waiting);
    if (!root.open || !current || !draw || place.clientWidth === 0) return;
    const stay = hold(root);
    draw(current, place.clientWidth);
    place.removeAttribute("aria-busy");
    stay();
  };
  const open = async () => {
    if (!draw) say(note, texts.loading);
    try {
      draw ??= await load(place);
      say(note, "");
    } catch {
      // A network that failed is tried anew at the next opening.
      say(note, texts.notLoaded);
    }
    paint();
  };
  root.addEventListener("toggle", () => {
    if (root.open) void open();
  });
  // Also the first width, once the fold is open.
  new ResizeObserver(paint).observe(place);

  return {
    root,
    show(drawn) {
      current = drawn;
      window.clearTimeout(waiting);
      if (!drawn || !root.open) return;
      place.setAttribute("aria-busy", "true");
      waiting = window.setTimeout(paint, REST);
    },
  };
}

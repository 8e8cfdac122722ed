import { type Button, button } from "../controls/button";
import { element, say } from "../controls/element";
import { TEXTS } from "../wording/texts";

/** The frame of the pane: the head, the work in the middle, and a foot with the button that makes the quote. */
export interface Frame {
  readonly foot: HTMLElement;
  readonly press: Button;
  /** Shows or hides the tabs, the work and the button; without rates there is nothing to work with yet. */
  showWork(isReady: boolean): void;
  /** Whether a quote can be made of what is shown. */
  allowPress(isAllowed: boolean): void;
  /** The result in a few words, beside the button while its headline is out of sight. */
  glance(words: string): void;
  /** Shows a sentence about the age of spot; "" for none. */
  spotAge(sentence: string): void;
}

/** Lays out the pane. @param pressed called when the quote is to be made, by the button or its keys */
export function paneFrame(
  place: HTMLElement,
  parts: {
    readonly head: HTMLElement;
    readonly tabs: HTMLElement;
    readonly work: readonly HTMLElement[];
    readonly ending: HTMLElement;
    /** Questions beside the button, shown while a quote can be made of what is shown. */
    readonly ask: HTMLElement;
    readonly voice: HTMLElement;
  },
  pressed: () => void,
): Frame {
  const press = button(TEXTS.make.press, "primary", pressed);
  press.root.setAttribute("aria-keyshortcuts", "Control+Enter");
  press.root.title = TEXTS.make.keys;
  const glance = element("div", { class: "glance", "aria-hidden": "true" });
  const pressBar = element("div", { class: "press" }, glance, press.root);
  const oldSpot = element("p", { class: "spotage", role: "status" });
  const ask = element("div", {}, parts.ask);
  const foot = element("footer", {}, parts.ending, oldSpot, ask, pressBar);
  const work = element("main", {}, ...parts.work);
  const body = element("div", { class: "body" });
  let isReady = false;
  let isAllowed = true;
  const show = () => {
    pressBar.hidden = !(isReady && isAllowed);
    ask.hidden = pressBar.hidden;
    foot.classList.toggle("ready", !pressBar.hidden);
  };
  const head = element("header", {}, element("h1", {}, TEXTS.name), parts.head);
  place.replaceChildren(head, body, foot, parts.voice);
  oldSpot.hidden = true;
  pressBar.hidden = true;
  ask.hidden = true;
  document.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" || !(event.ctrlKey || event.metaKey) || event.isComposing || pressBar.hidden) return;
    event.preventDefault();
    pressed();
  });
  return {
    foot,
    press,
    showWork(ready) {
      if (ready !== body.contains(work)) body.replaceChildren(...(ready ? [parts.tabs, work] : []));
      isReady = ready;
      show();
    },
    allowPress(allowed) {
      isAllowed = allowed;
      show();
    },
    glance(words) {
      glance.dataset.text = words;
    },
    spotAge(sentence) {
      say(oldSpot, sentence);
    },
  };
}

import { element, setText } from "./element";

/** Long enough that a screen reader is told of a price once typing rests, not at each key. */
const REST = 900;

export interface Announcer {
  readonly root: HTMLElement;
  /** Says it at once. */
  say(sentence: string): void;
  /** Says it once nothing newer has come for a moment. */
  sayAtRest(sentence: string): void;
}

/** The pane's one unseen live region. */
export function announcer(): Announcer {
  const root = element("div", { class: "unseen", role: "status", "aria-live": "polite", "aria-atomic": "true" });
  let waiting: number | undefined;
  const say = (sentence: string) => {
    window.clearTimeout(waiting);
    setText(root, sentence);
  };
  return {
    root,
    say,
    sayAtRest(sentence) {
      window.clearTimeout(waiting);
      waiting = window.setTimeout(() => say(sentence), REST);
    },
  };
}

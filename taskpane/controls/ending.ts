import { KIT_TEXTS } from "../wording/kittexts";
import { button } from "./button";
import { element } from "./element";

/** How a step ended. */
export interface Ended {
  /** `noted`: worth a look, though nothing went wrong. */
  readonly kind: "done" | "noted" | "failed";
  readonly sentence: string;
  /** What is good to know beside it. */
  readonly remarks?: readonly string[];
  readonly ways?: readonly Way[];
}

/** Where to go from there. */
export interface Way {
  readonly words: string;
  readonly press: () => void;
}

export interface Ending {
  readonly root: HTMLElement;
  show(ended: Ended): void;
  failed(sentence: string): void;
  clear(): void;
}

/** @param sheet what was made, where there is one to go to */
export function doneWith(sentence: string, goTo: (sheet: string) => void, sheet?: string): Ended {
  return { kind: "done", sentence, ways: sheet === undefined ? [] : [wayTo(sheet, goTo)] };
}

export function wayTo(sheet: string, goTo: (sheet: string) => void, words = KIT_TEXTS.show(sheet)): Way {
  return { words, press: () => goTo(sheet) };
}

/** How the last step ended; a live region, so it is said as well as shown. It comes into sight where it stands. */
export function stepEnding(): Ending {
  const root = element("div", { class: "ending", role: "status", "aria-live": "polite", "aria-atomic": "true" });
  const show = (ended: Ended) => {
    root.replaceChildren(endedElement(ended));
    root.scrollIntoView({ block: "nearest" });
  };
  return {
    root,
    show,
    failed: (sentence) => show({ kind: "failed", sentence }),
    clear: () => root.replaceChildren(),
  };
}

function endedElement({ kind, sentence, remarks = [], ways = [] }: Ended): HTMLElement {
  const isHead = kind === "done" || ways.length > 0;
  const buttons = ways.map(({ words, press }) => button(words, "outline", press, "small").root);
  return element(
    "div",
    { class: `banner ${kind}` },
    element("p", { class: isHead ? "bannerhead" : undefined }, sentence),
    ...remarks.map((remark) => element("p", { class: "help" }, remark)),
    buttons.length > 0 ? element("div", { class: "actions" }, ...buttons) : undefined,
  );
}

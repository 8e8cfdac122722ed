import { button } from "./button";
import { element } from "./element";
import type { Ended } from "./ended";

export interface Ending {
  readonly root: HTMLElement;
  show(ended: Ended): void;
  failed(sentence: string): void;
  clear(): void;
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

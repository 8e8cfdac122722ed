import { element } from "./element";

export interface FaultList {
  readonly root: HTMLElement;
  /** Shows what could not be read, one sentence an entry, under what they are; nothing hides it. */
  show(sentences: readonly string[], head?: string): void;
}

/** What could not be read of many things at once; told to a screen reader as it changes. */
export function faultList(): FaultList {
  const root = element("div", { class: "faults", role: "status" });
  root.hidden = true;
  return {
    root,
    show(sentences, head) {
      const entries = sentences.map((sentence) => element("li", { class: "fault" }, sentence));
      root.replaceChildren(
        ...(head === undefined ? [] : [element("p", { class: "fault" }, head)]),
        element("ul", {}, ...entries),
      );
      root.hidden = sentences.length === 0;
    },
  };
}

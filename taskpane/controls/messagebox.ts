import { element } from "./element";

/** A sentence of a part's answer; the first of them is its head. */
export interface SaidLine {
  readonly text: string;
  readonly isWarning?: boolean;
}

export interface SaidBox {
  readonly root: HTMLElement;
  /** Shows what there is to say, and whatever stands under it; nothing hides the box. */
  show(lines: readonly SaidLine[], ...under: readonly HTMLElement[]): void;
}

/** The answer of a part, the sentence first; told to a screen reader as it changes. */
export function saidBox(): SaidBox {
  const words = element("div", { class: "saidwords", role: "status" });
  const below = element("div", { class: "saidbelow" });
  const root = element("div", { class: "decidesaid" }, words, below);
  root.hidden = true;
  let shown = "";
  return {
    root,
    show(lines, ...under) {
      const now = JSON.stringify(lines);
      // A live region that is filled with the same words would be spoken again.
      if (now !== shown) {
        words.replaceChildren(
          ...lines.map(({ text, isWarning }, at) =>
            element("p", { class: isWarning ? "warning" : at === 0 ? "saidhead" : "saidline" }, text),
          ),
        );
      }
      shown = now;
      below.replaceChildren(...under);
      below.hidden = under.length === 0;
      root.hidden = lines.length === 0;
    },
  };
}

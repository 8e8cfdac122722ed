import { element } from "./element";

/** A sentence of a part's answer; the first of them is its head. */
export interface AnswerLine {
  readonly text: string;
  readonly isWarning?: boolean;
}

export interface AnswerBox {
  readonly root: HTMLElement;
  /** Shows what there is to say, and whatever stands under it; nothing hides the box. */
  show(lines: readonly AnswerLine[], ...under: readonly HTMLElement[]): void;
}

/** The answer of a part, the sentence first; told to a screen reader as it changes. @param title what it is about */
export function answerBox(title?: HTMLElement): AnswerBox {
  const words = element("div", { class: "answerlines", role: "status" });
  const below = element("div", { class: "answerunder" });
  const root = element("div", { class: "answerbox" }, title, words, below);
  root.hidden = true;
  let shown = "";
  return {
    root,
    show(lines, ...under) {
      const now = JSON.stringify(lines);
      // A live region that is filled with the same words would be spoken again.
      if (now !== shown) words.replaceChildren(...lines.map(lineElement));
      shown = now;
      below.replaceChildren(...under);
      below.hidden = under.length === 0;
      root.hidden = lines.length === 0;
    },
  };
}

function lineElement({ text, isWarning }: AnswerLine, at: number): HTMLElement {
  return element("p", { class: isWarning ? "warning" : at === 0 ? "answerhead" : undefined }, text);
}

import { Quotient } from "../../src/index";
import { button } from "../controls/button";
import { element, setText } from "../controls/element";
import { showShare } from "../wording/display";
import { TEXTS } from "../wording/texts";

const { work: texts } = TEXTS.model;

export interface ProgressBar {
  readonly root: HTMLElement;
  show(sentence: string, share: number): void;
  /** Shows a further sentence under the bar. */
  note(sentence: string): void;
  focus(): void;
}

/** Shows how far the work has come, with a button that ends it. */
export function progressBar(cancel: () => void): ProgressBar {
  const sentence = element("p", { class: "help" });
  const bar = element("progress", { max: "1", "aria-label": texts.label });
  const more = element("p", { class: "help" });
  const percent = element("span", { class: "help" });
  const press = button(texts.cancel, "outline", cancel, "small");
  return {
    root: element(
      "div",
      { class: "working" },
      sentence,
      element("div", { class: "workline" }, bar, percent, press.root),
      more,
    ),
    show(words, share) {
      setText(sentence, words);
      bar.value = share;
      setText(percent, texts.share(showShare(Quotient.of(Math.floor(100 * share)).dividedBy(Quotient.of("100")))));
    },
    note(words) {
      setText(more, words);
      more.hidden = words === "";
    },
    focus: () => press.root.focus(),
  };
}

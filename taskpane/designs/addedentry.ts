import { type Button, button, linkButton } from "../controls/button";
import { element } from "../controls/element";
import { type DoneEvents, WHOLE } from "../controls/ended";
import { TEXTS } from "../wording/texts";

const texts = TEXTS.catalogue.added;

/** What an undo came to: it is done, or something is to be asked before it is. */
export type Undone =
  | { readonly said: string }
  | { readonly found: string; readonly sentences: readonly string[]; readonly agree: () => Promise<Undone> };

/** Something that was put into the workbook, and how it is undone. */
export interface Undoable {
  readonly what: string;
  /** The button's words, and those that say of what. */
  readonly press: string;
  readonly pressOf: string;
  readonly busy: string;
  readonly undo: () => Promise<Undone>;
}

/** One of the things put into the workbook, with its undo; a question about it stands below it. */
export function addedEntry(
  { what, press, pressOf, busy, undo }: Undoable,
  on: {
    readonly attempt: (step: () => Promise<void>) => Promise<void>;
    readonly done: DoneEvents["done"];
    readonly say: (sentence: string) => void;
    readonly refresh: () => Promise<void>;
  },
): HTMLElement {
  const out = button(press, "outline", () => go(out, busy, undo), "small");
  const question = element("div", { class: "whole" });
  out.root.setAttribute("aria-label", pressOf);

  function go(pressed: Button, words: string, step: () => Promise<Undone>): void {
    void on.attempt(async () => {
      pressed.work(words);
      let undone: Undone | undefined;
      try {
        undone = await step();
        if ("said" in undone) on.done(undone.said, WHOLE);
        else ask(undone);
      } finally {
        pressed.rest();
        if (!undone || "said" in undone) await on.refresh();
      }
    });
  }

  function ask({ found, sentences, agree }: Exclude<Undone, { said: string }>): void {
    const yes = button(texts.keepMine, "outline", () => go(yes, busy, agree), "small");
    const no = linkButton(texts.leave, () => {
      question.replaceChildren();
      out.root.focus();
    });
    question.replaceChildren(
      element(
        "div",
        { class: "banner noted", role: "group", "aria-label": found },
        element("p", { class: "bannerhead" }, found),
        element("ul", {}, ...sentences.map((sentence) => element("li", {}, sentence))),
        element("div", { class: "actions" }, yes.root, no),
      ),
    );
    on.say([found, ...sentences].join(" "));
    question.scrollIntoView({ block: "nearest" });
    yes.root.focus();
  }

  return element("li", {}, element("span", {}, what), out.root, question);
}

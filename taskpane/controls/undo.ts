import { TEXTS } from "../wording/texts";
import { button } from "./button";
import { element, setText } from "./element";

export interface UndoNotice<T> {
  readonly root: HTMLElement;
  /** Says that something was taken away, and goes to the way back. */
  offer(taken: T, said: string): void;
  /** Says it, and leaves the person where they are. */
  note(taken: T, said: string): void;
  /** What gives back the notice as it is now. */
  snapshot(): () => void;
  clear(): void;
}

/** What was taken away last, with the way back; what was taken before it comes back after it. */
export function undoNotice<T>(back: (taken: T) => void): UndoNotice<T> {
  let taken: readonly { readonly what: T; readonly said: string }[] = [];
  const words = element("span", {});
  const undo = button(
    TEXTS.form.undo,
    "outline",
    () => {
      const last = taken.at(-1);
      taken = taken.slice(0, -1);
      show();
      if (last) back(last.what);
    },
    "small",
  );
  const root = element("div", { class: "undo", role: "status", "aria-live": "polite" }, words, undo.root);
  const show = () => {
    setText(words, taken.at(-1)?.said ?? "");
    root.hidden = taken.length === 0;
  };
  const note = (what: T, said: string) => {
    taken = [...taken, { what, said }];
    show();
  };
  show();
  return {
    root,
    note,
    offer(what, said) {
      note(what, said);
      undo.root.focus();
    },
    snapshot() {
      const kept = taken;
      return () => {
        taken = kept;
        show();
      };
    },
    clear() {
      taken = [];
      show();
    },
  };
}

import { Cancelled, type Slicing } from "../running/slices";
import { KIT_TEXTS } from "../wording/kittexts";
import { button } from "./button";
import { element, say, setText } from "./element";
import { type Progressed, shownShare } from "./progressed";

export interface ProgressBar {
  readonly root: HTMLElement;
  /** Undefined takes it out of sight. */
  show(progressed: Progressed | undefined): void;
  /** Goes to the button that ends the work. */
  focus(): void;
}

/** How far long work has come, with a button that ends it. @param label of the bar, for whoever listens */
export function progressBar(label: string, cancel: () => void): ProgressBar {
  const doing = element("p", { class: "help" });
  const bar = element("progress", { max: "1", value: "0", "aria-label": label });
  const percent = element("span", { class: "help" });
  const found = element("p", { class: "help" });
  const press = button(KIT_TEXTS.cancel, "outline", cancel, "small");
  const line = element("div", { class: "progressline" }, bar, percent, press.root);
  const root = element("div", { class: "progress" }, doing, line, found);
  root.hidden = true;
  return {
    root,
    show(progressed) {
      root.hidden = progressed === undefined;
      if (!progressed) return;
      bar.value = progressed.share;
      setText(percent, shownShare(progressed.share));
      say(doing, progressed.doing ?? "");
      say(found, progressed.found ?? "");
    },
    focus: () => press.root.focus(),
  };
}

export interface Progress {
  readonly root: HTMLElement;
  /** Runs long work with a bar and a Cancel button; undefined where it was called off. One work at a time. */
  follow<T>(work: (slicing: Slicing) => Promise<T>): Promise<T | undefined>;
}

/** Long work of the pane's own, a slice at a time. @param called told when it was called off */
export function progress(called: (sentence: string) => void): Progress {
  let abort = new AbortController();
  const bar = progressBar(KIT_TEXTS.howFar, () => abort.abort());
  return {
    root: bar.root,
    async follow(work) {
      abort = new AbortController();
      const tell = (share: number) => bar.show({ share });
      tell(0);
      try {
        return await work({ progress: tell, signal: abort.signal });
      } catch (error) {
        if (!(error instanceof Cancelled)) throw error;
        called(KIT_TEXTS.cancelled);
        return undefined;
      } finally {
        bar.show(undefined);
      }
    },
  };
}

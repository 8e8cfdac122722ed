import { Quotient } from "../../src/index";
import { Cancelled, type Slicing } from "../running/slices";
import { showShare } from "../wording/display";
import { TEXTS } from "../wording/texts";
import { button } from "./button";
import { element, setText } from "./element";

const texts = TEXTS.catalogue;

export interface Progress {
  readonly root: HTMLElement;
  /** Runs long work with a bar and a Cancel button; undefined where it was called off. One work at a time. */
  follow<T>(work: (slicing: Slicing) => Promise<T>): Promise<T | undefined>;
}

/** How far long work is, and a button to call it off. @param called told when it was called off */
export function progress(called: (sentence: string) => void): Progress {
  const bar = element("progress", { max: "1", value: "0", "aria-label": texts.working("") });
  const words = element("span", { class: "help" });
  let abort = new AbortController();
  const cancel = button(texts.cancel, "outline", () => abort.abort(), "small");
  const root = element("div", { class: "progress" }, bar, words, cancel.root);
  root.hidden = true;
  return {
    root,
    async follow(work) {
      abort = new AbortController();
      root.hidden = false;
      const tell = (share: number) => {
        bar.value = share;
        setText(words, texts.working(showShare(Quotient.of(share.toFixed(2)))));
      };
      tell(0);
      try {
        return await work({ progress: tell, signal: abort.signal });
      } catch (error) {
        if (!(error instanceof Cancelled)) throw error;
        called(texts.cancelled);
        return undefined;
      } finally {
        root.hidden = true;
      }
    },
  };
}

import { KIT_TEXTS } from "../wording/kittexts";

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

/** @param sheet what was made, where there is one to go to */
export function doneWith(sentence: string, goTo: (sheet: string) => void, sheet?: string): Ended {
  return { kind: "done", sentence, ways: sheet === undefined ? [] : [wayTo(sheet, goTo)] };
}

export function wayTo(sheet: string, goTo: (sheet: string) => void, words = KIT_TEXTS.show(sheet)): Way {
  return { words, press: () => goTo(sheet) };
}

import { Quotient } from "../../src/index";
import { showShare } from "../wording/display";
import { KIT_TEXTS } from "../wording/kittexts";

/** How far long work has come. */
export interface Progressed {
  /** Of the work, from 0 to 1. */
  readonly share: number;
  /** What is being done; none where the button that began it says so. */
  readonly doing?: string;
  /** What is known by now. */
  readonly found?: string;
}

/** Whole per cents, and 100 % only when all is done. */
export function shownShare(share: number): string {
  return KIT_TEXTS.done(showShare(Quotient.of(Math.floor(100 * share)).dividedBy(Quotient.of(100))));
}

import { RATE_ROWS, type RateKey } from "../../../src/index";
import { nameOf } from "./rates";

/**
 * What a row of Rates says, for a formula that must know it itself: a word in its usual letters, a figure, a blank as what counts in
 * its place. The add-in reads the cell as the pane does. Where a worksheet function takes the cell, it goes there as it stands.
 */
export function rateSays(key: Exclude<RateKey, "loss">): string {
  return `CURB.RATEVALUE("${RATE_ROWS[key].label}",${nameOf(key)})`;
}

/** Whether a row of Rates says a word, as a condition. */
export function rateIs(key: Parameters<typeof rateSays>[0], word: string): string {
  return `${rateSays(key)}="${word}"`;
}

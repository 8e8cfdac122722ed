import { expect, test } from "vitest";
import { RATE_KEYS, RATE_ROWS, type RateRow } from "../../../src/rates/raterows";

test("every row says what it is counted in, or what words it takes, or is words and dates of one's own", () => {
  for (const key of RATE_KEYS) {
    const row: RateRow = RATE_ROWS[key];
    if (row.shown === "word") expect(row.words?.length, key).toBeGreaterThan(1);
    else expect(row.words, key).toBeUndefined();
    if (row.shown === "money" || row.shown === "share") expect(row.unit, key).not.toBe("");
  }
});

test("a word a new sheet starts from is one of its words", () => {
  const rows: readonly RateRow[] = RATE_KEYS.map((key) => RATE_ROWS[key]);
  for (const { label, words, start } of rows) if (words) expect(words, label).toContain(start);
});

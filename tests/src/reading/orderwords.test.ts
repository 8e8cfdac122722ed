import { expect, test } from "vitest";
import * as words from "../../../src/reading/orderwords";

const LABELS = [words.ORDER_LABELS, words.LINE_LABELS, words.EXTRA_LABELS] as const;

test("every field has a label of its own, so that a fault or a header names one field only", () => {
  const labels = LABELS.flatMap((each) => Object.values<string>(each)).map((label) => label.toLowerCase());
  expect(labels.filter((label, index) => labels.indexOf(label) !== index)).toEqual([]);
});

test("the keys are those of the labels, in their order", () => {
  expect([words.ORDER_KEYS, words.LINE_KEYS, words.EXTRA_KEYS]).toEqual(LABELS.map(Object.keys));
});

test("no list offers a word twice", () => {
  for (const [name, list] of Object.entries(words)) {
    if (Array.isArray(list)) expect(new Set(list).size, name).toBe(list.length);
  }
});

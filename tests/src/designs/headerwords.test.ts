import { expect, test } from "vitest";
import { FIELD_WORDS, keyOfHeader, ROW_KEYS, ROW_LABELS, unitOfHeader } from "../../../src/designs/headerwords";

test.each([
  ["Length (in)", "in"],
  ["Length [CM]", "cm"],
  ["Clasp weight, dwt", "dwt"],
  ["Length (inches)", "in"],
  ["Weight of one link (grams)", "g"],
  ["Weight (troy oz)", "ozt"],
  ["Length", undefined],
  ["Length (in) asked", undefined],
])("the unit of %s is %s", (header, unit) => {
  expect(unitOfHeader(header)).toBe(unit);
});

test("no label of a field looks like one with a unit", () => {
  for (const key of ROW_KEYS) expect(unitOfHeader(ROW_LABELS[key]), key).toBeUndefined();
});

test("every word that names a field leads to it", () => {
  for (const { words, key } of FIELD_WORDS) expect(keyOfHeader(words), words).toBe(key);
});

import { expect, test } from "vitest";
import {
  countedOf,
  FIELD_WORDS,
  keyOfHeader,
  ROW_FIELDS,
  ROW_KEYS,
  ROW_LABELS,
  type RowKey,
  unitOfHeader,
} from "../../../src/designs/headerwords";

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

test("headers say the unit of lengths, sizes, weights, money and links per length, and of figures alone", () => {
  const counted = ROW_KEYS.filter((key) => countedOf(key) !== undefined);
  expect(counted.filter((key) => ROW_FIELDS[key].is !== "figure")).toEqual([]);
  expect(
    ["length", "ease", "stoneWidth", "linkWeight", "spot", "setup", "linksPer"].map((key) => countedOf(key as RowKey)),
  ).toEqual(["length", "length", "size", "weight", "money", "money", "linksPer"]);
  expect(["quantity", "breakage", "stoneCarat", "linePriceFigure"].map((key) => countedOf(key as RowKey))).toEqual(
    Array(4).fill(undefined),
  );
});

test("every word that names a field leads to it", () => {
  for (const { words, key } of FIELD_WORDS) expect(keyOfHeader(words), words).toBe(key);
});

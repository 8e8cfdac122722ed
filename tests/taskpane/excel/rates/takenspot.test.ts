import fc from "fast-check";
import { expect, test } from "vitest";
import { takenSpotIn } from "../../../../taskpane/excel/rates/takenspot";

const TAKEN = {
  currency: "USD",
  was: "777.58692",
  is: "930",
  cells: [
    { key: "spot", was: 777.58692, is: 930 },
    { key: "spotTime", was: "", is: 46173.5 },
    { key: "spotSource", was: "=own words", is: "noon" },
  ],
};

test("what was kept of a spot is read as it was written", () => {
  expect(takenSpotIn(JSON.stringify(TAKEN))).toEqual(TAKEN);
});

test("a setting that is another program's, or damaged, offers nothing to put back", () => {
  const damaged: readonly unknown[] = [
    undefined,
    "",
    "{",
    "[]",
    "null",
    JSON.stringify({ ...TAKEN, currency: "gold" }),
    JSON.stringify({ ...TAKEN, was: "-1" }),
    JSON.stringify({ ...TAKEN, is: 930 }),
    JSON.stringify({ ...TAKEN, cells: [] }),
    JSON.stringify({ ...TAKEN, cells: [{ key: "markup", was: 1, is: 2 }] }),
    JSON.stringify({ ...TAKEN, cells: [{ key: "spot", was: null, is: 2 }] }),
  ];
  for (const each of damaged) expect(takenSpotIn(each)).toBeUndefined();
  fc.assert(
    fc.property(fc.json(), (text) => {
      expect(takenSpotIn(text)).toBeUndefined();
    }),
  );
});

import { afterAll, beforeEach, describe, expect, it } from "vitest";
import {
  decimalMark,
  faultWithLocalMark,
  twoReadings,
  withLocalMark,
  withPoint,
} from "../../../taskpane/wording/decimalmark";
import { writeAs } from "../../../taskpane/wording/language";

afterAll(() => writeAs(() => "en-US"));

const at = (language: string) => () => {
  writeAs(() => language);
};

// Decimal marks: Unicode CLDR, through Intl.
it.each([
  ["en-US", "."],
  ["de-DE", ","],
  ["fr-FR", ","],
  ["de-CH", "."],
  ["ja-JP", "."],
])("numbers in %s have %s before the fraction", (language, mark) => {
  writeAs(() => language);
  expect(decimalMark()).toBe(mark);
});

describe("where a comma stands before the fraction", () => {
  beforeEach(at("de-DE"));

  it.each([
    ["24,5", "24.5"],
    [" 24,5 ", " 24.5 "],
    ["-0,05", "-0.05"],
    ["5,5 %", "5.5 %"],
    ["58,5%", "58.5%"],
    ["1,500", "1.500"],
    ["24", "24"],
    ["24.5", "24.5"],
    ["1.234,5", "1.234,5"],
    ["1,2,3", "1,2,3"],
    ["EUR 1200,50", "EUR 1200.50"],
    ["€12,5", "€12.5"],
    ["0,4 oz av", "0.4 oz av"],
    ["vier", "vier"],
    ["", ""],
  ])("a figure typed as %j is read as %j", (typed, read) => {
    expect(withPoint(typed, "figure")).toBe(read);
  });

  it("shows what the library holds with a comma, and reads that back as it was", () => {
    for (const text of ["24.5", "1.500", "0.05", "5.5 %", "24", "1e5", "14K", ""]) {
      expect(withPoint(withLocalMark(text, "figure"), "figure")).toBe(text);
    }
    expect(withLocalMark("24.5", "figure")).toBe("24,5");
    expect(withLocalMark("Au 58.5 Ag 41.5", "figures")).toBe("Au 58,5 Ag 41,5");
  });

  it("reads the figures of a composition, and leaves the commas between its parts", () => {
    expect(withPoint("Au 58,5, Ag 20, Cu 21,5", "figures")).toBe("Au 58.5, Ag 20, Cu 21.5");
  });

  it("leaves words as they are", () => {
    expect(withPoint("Curb 2,5 mm", "words")).toBe("Curb 2,5 mm");
    expect(withLocalMark("Curb 2.5 mm", "words")).toBe("Curb 2.5 mm");
  });

  it.each([
    ["1.500", "1,5", "1500"],
    ["-12.000", "-12", "-12000"],
    ["2.650", "2,65", "2650"],
    ["EUR 1.500", "EUR 1,5", "EUR 1500"],
    ["1.500 g", "1,5 g", "1500 g"],
  ])("%s may be %s or %s", (typed, fraction, whole) => {
    expect(twoReadings(typed, "figure")).toEqual({ fraction, whole });
  });

  it.each(["24.5", "0.125", "1.5000", "1.500.000", "2650.125", "1,500", "14K", ""])(
    "%j can be read in one way at most",
    (typed) => {
      expect(twoReadings(typed, "figure")).toBeUndefined();
    },
  );

  it("says a fault with what was typed, and its examples with a comma", () => {
    expect(faultWithLocalMark('Length: found "-24.5"; give grams above 0, such as 2.05', "-24.5", "-24,5")).toBe(
      'Length: found "-24,5"; give grams above 0, such as 2,05',
    );
    expect(faultWithLocalMark('Length: found "1.2.3", which is not a plain number', "1.2.3", "1.2.3")).toBe(
      'Length: found "1.2.3", which is not a plain number',
    );
  });
});

describe("where a point stands before the fraction", () => {
  beforeEach(at("en-US"));

  it.each(["24.5", "24,5", "1,500", "1.500", "5 %"])("%s is left to the library as typed", (typed) => {
    expect(withPoint(typed, "figure")).toBe(typed);
    expect(withLocalMark(typed, "figure")).toBe(typed);
    expect(twoReadings(typed, "figure")).toBeUndefined();
    expect(faultWithLocalMark(`found "${typed}"; such as 2.05`, typed, typed)).toContain("such as 2.05");
  });
});

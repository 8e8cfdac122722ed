import { expect, test } from "vitest";
import { freeSheetName } from "../../../taskpane/excel/sheetname";

test("a free name is taken as it is; one that is there gets ours behind it, counted up", () => {
  expect(freeSheetName("Price list", new Set())).toBe("Price list");
  expect(freeSheetName("Price list", new Set(["price list"]))).toBe("Price list (Curbwright)");
  expect(freeSheetName("Price list", new Set(["price list", "price list (curbwright)"]))).toBe(
    "Price list (Curbwright 2)",
  );
});

test("no name is longer than the 31 letters that Excel takes (Excel specifications and limits)", () => {
  const taken = new Set<string>();
  for (let sheet = 0; sheet < 120; sheet += 1) {
    for (const wanted of ["Prices at other spots", "x".repeat(40)]) {
      const name = freeSheetName(wanted, taken);
      expect(name.length).toBeLessThanOrEqual(31);
      expect(taken.has(name.toLowerCase())).toBe(false);
      taken.add(name.toLowerCase());
    }
  }
  // 31 less the 13 of " (Curbwright)" are 18: "spots" does not fit any more.
  expect(taken).toContain("prices at other (curbwright)");
});

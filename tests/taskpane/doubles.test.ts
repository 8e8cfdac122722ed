import { describe, expect, test } from "vitest";
import { CostingError } from "../../src/exact/errors";
import { designColumns, makersOfCells, RATE_ROWS, type RateKey, ratesOfCells, readPriceLists } from "../../src/index";
import { doubledOf as doubledDesigns, matchHeaders } from "../../taskpane/designtable/columnmatching";
import { doubledOf as doubledAskings, matchAskingHeaders } from "../../taskpane/market/askingcolumns";
import { RATES } from "../src/orders";
import { rowsOf } from "../src/pricelists";

const refused = (act: () => unknown): string => {
  try {
    act();
  } catch (error) {
    if (error instanceof CostingError) return error.message;
    throw error;
  }
  return "nothing was refused";
};
const isRate = (key: string): key is RateKey => Object.hasOwn(RATE_ROWS, key);
const DESIGNS = ["Design", "Mark", "Colour", "Length", "Karat"];

/** Every reading in which something must stand once; what is found in it twice, and where. */
const READINGS: readonly (readonly [reading: string, said: () => string, sentence: string])[] = [
  [
    "the headers of designs, in PRICELIST and PRICELINE",
    () => refused(() => designColumns(DESIGNS)),
    "lines: found Mark in column 2 and in column 5; keep one of them",
  ],
  [
    "the headers of designs in the pane, by their addresses",
    () => doubledDesigns(matchHeaders(DESIGNS), (place) => `${"CDEFG".charAt(place)}3`).join(),
    "Mark in D3 and in G3; keep one of them",
  ],
  [
    "the headers of a list of asking prices",
    () => doubledAskings(matchAskingHeaders(["Price", "Weight", "Mark", "Asked price"])).join(),
    "Asked price in column 1 and in column 4; keep one of them",
  ],
  [
    "rates in two columns",
    () =>
      refused(() =>
        ratesOfCells([
          ["Rate", "Value"],
          ["Spot", RATES.spot],
          ["Casting fee", 1],
          ["My note", ""],
          ["Casting fee", 2],
        ]),
      ),
    "rates: found Casting fee in row 3 and in row 5; keep one of them",
  ],
  [
    "the headers of makers' price lists",
    () => refused(() => makersOfCells([["Maker", "Mark", "Surcharge per g", "mark"]])),
    "makers: found Mark in column 2 and in column 4; keep one of them",
  ],
  [
    "a maker's class of weight",
    () => {
      const rows = rowsOf(["Fennick", "14K", 20, 3], ["Orrin", "14K", 20, 3], [" fennick", "14kt", 20, 4]);
      return readPriceLists(rows, "USD").faults[0]?.sentence ?? "";
    },
    "Row 5, Fennick: From g: found the class from 20 g for 14K in row 5 and in row 7; keep one of them",
  ],
];

describe("what must stand once is a fault where it stands twice, with both places", () => {
  test.each(READINGS)("%s", (_, said, sentence) => {
    expect(said()).toBe(sentence);
  });

  test("three places are all named, and what stands once is none", () => {
    const thrice = [...DESIGNS, "mark"];
    expect(refused(() => designColumns(thrice))).toBe(
      "lines: found Mark in column 2, in column 5 and in column 6; keep one of them",
    );
    // A heading of the Rates sheet that is called like a rate has no value beside it.
    const sheet = Object.entries(RATES).map(([key, value]) => [isRate(key) ? RATE_ROWS[key].label : key, value]);
    expect(refused(() => ratesOfCells([["Markup", ""], ...sheet]))).toBe("nothing was refused");
    expect(refused(() => designColumns(DESIGNS.slice(0, 4)))).toBe("nothing was refused");
  });

  test("of a class that stands twice both rows are left out, and both are told", () => {
    const lists = readPriceLists(
      rowsOf(["Fennick", "14K", 20, 3], ["Fennick", "14K", 20, 4], ["Orrin", 585, 0, 3]),
      "USD",
    );
    expect(lists.offers.map(({ maker }) => maker)).toEqual(["Orrin"]);
    expect(lists.faults.map(({ row }) => row)).toEqual([5, 6]);
    // 18K and 750 are one gold; 14K and 585 are two.
    const marks = readPriceLists(
      rowsOf(["Fennick", "18K", 0, 3], ["Fennick", 750, 0, 3], ["Orrin", "14K", 0, 3], ["Orrin", 585, 0, 3]),
      "USD",
    );
    expect(marks.faults.map(({ row }) => row)).toEqual([5, 6]);
  });
});

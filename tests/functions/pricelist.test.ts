import { describe, expect, test } from "vitest";
import { published } from "../src/published";
import { call } from "./built";
import { ERROR_CELLS } from "./errorcells";

/** Fine gold at exactly 100 a gram; a mark of 250 has the metal rate 25.00 of the common figures. */
const RATES = [
  ["Rates", ""],
  ["Gold", ""],
  ["Currency", "USD"],
  ["Spot", 3110.34768],
  ["Casting fee", 1.5],
  ["Polish loss", 2],
  ["Loss counted from", "grams"],
  ["Cost basis", "quick"],
  ["Labour, flat", 50],
  ["Maker's surcharge", 3.25],
  ["Price by", "markup"],
  ["Markup", 0.3],
  ["Price step", 5],
  ["Quote valid for", 7],
  ["Next quote number", 1001],
];
const HEADER = ["Design", "Mark", "Colour", "Length (in)", "Links per in", "Weight of one link"];
/** 25 in at 4 links an inch of 1 g. */
const CURB = ["Curb", 250, "yellow", 25, 4, 1];

const listOf = (lines: unknown[][], columns?: unknown[][], rates: unknown[][] = RATES) =>
  call("PRICELIST", lines, rates, ...(columns ? [columns] : [])) as unknown[][];
const refused = (words: string) => ({ code: "#VALUE!", message: expect.stringContaining(words) });

describe("a price list", () => {
  test("100 g at a metal rate of 25.00, casting fee 1.50, labour 50, 2 g lost: 2,750 landed, 27.50 a gram (common practice), 3,575 asked at 30 % in steps of 5 (hand arithmetic)", () => {
    const [header = [], row = []] = listOf([HEADER, CURB]);
    expect(Object.fromEntries(header.map((title, index) => [title, row[index]]))).toMatchObject({
      Design: "Curb",
      Links: 100,
      "Finished weight": 100,
      "Cast weight": 102,
      "Fine gold": 25,
      "Metal in the cast parts": 2500,
      "Metal lost in polishing": 50,
      Casting: 150,
      Labour: 50,
      Stones: 0,
      "Landed cost": 2750,
      "Landed cost per gram": 27.5,
      Price: 3575,
      Margin: 825 / 3575,
    });
  });

  test("columns picks and orders them", () => {
    expect(listOf([HEADER, CURB], [["Price", "Design", "landed cost"]])).toEqual([
      ["Price", "Design", "Landed cost"],
      [3575, "Curb", 2750],
    ]);
  });

  test("headers in another order, with other units: 0.1 ozt a link is 3.11034768 g (UCUM)", () => {
    const header = ["Weight of one link (ozt)", "Links per in", "Length (in)", "Color", "Karat", "Design", "Shelf"];
    expect(listOf([header, [0.1, 4, 25, "yellow", "6K", "Curb", "B2"]], [["Design", "Finished weight"]])).toEqual([
      ["Design", "Finished weight"],
      ["Curb", 311.034768],
    ]);
  });

  test("a fault stays in its own row, and an empty row stays empty", () => {
    const bad = ["Curb", "25K", "yellow", 25, 4, 1];
    expect(listOf([HEADER, bad, ["", "", "", "", "", ""], CURB], [["Design", "Price"]])).toEqual([
      ["Design", "Price"],
      ["Curb", refused('Mark: found "25K"')],
      ["", ""],
      ["Curb", 3575],
    ]);
  });

  test.each(Object.entries(ERROR_CELLS))(
    "an error cell that comes %s is a fault in its own row, whichever field it stands in",
    (_how, errorCell) => {
      const header = [...HEADER, "Clasp cost", "Engraving", "Quantity"];
      const curb = [...CURB, 30, "Ada", 1];
      const list = (...rows: unknown[][]) => listOf([header, ...rows], [["Design", "Landed cost"]]);
      // 2,750 and a clasp of 30.
      const whole = ["Curb", 2780];
      expect(list(curb)).toEqual([["Design", "Landed cost"], whole]);
      for (const [place, label] of header.entries()) {
        const broken = curb.map((value, at) => (at === place ? errorCell("#N/A") : value));
        const name = place === 0 ? "#N/A" : "Curb";
        expect(list(curb, broken, curb).slice(1), label).toEqual([
          whole,
          [name, refused("found the error #N/A")],
          whole,
        ]);
      }
      const rates = RATES.map(([name, value]) => [name, name === "Spot" ? errorCell("#N/A") : value]);
      expect(listOf([header, curb], undefined, rates)).toEqual(refused("Spot: found the error #N/A"));
    },
  );

  test("gold coins as a catalogue: weight and mark give the fine gold of the statute (31 U.S.C. 5112)", () => {
    const { rows } = published<{ rows: { grossGrams: string; mark: string; fineOunces: string }[] }>(
      "coin-content.json",
    );
    // One link, the coin, in an inch.
    const lines = rows.map(({ grossGrams, mark }) => ["Coin", mark, "yellow", 1, 1, grossGrams]);
    const [, ...fine] = listOf([HEADER, ...lines], [["Fine gold"]]);
    const ounces = fine.map(([gold]) => (Number(gold) / 31.1034768).toFixed(4));
    expect(ounces).toEqual(rows.map(({ fineOunces }) => fineOunces));
  });
});

describe("bad input: one sentence that names the argument, what was found and what would be right", () => {
  test("a first row without the headers", () => {
    expect(call("PRICELIST", [CURB, CURB], RATES)).toEqual(
      refused("lines: found no first row with the headers Design, Mark and Length"),
    );
  });

  test("a column that a price list has not", () => {
    expect(call("PRICELIST", [HEADER, CURB], RATES, [["Profit"]])).toEqual(
      refused('columns: found "Profit"; give of "Design", "Links"'),
    );
  });

  test("rates that lack one", () => {
    expect(call("PRICELIST", [HEADER, CURB], RATES.slice(0, 3))).toEqual(refused("Spot: found nothing"));
  });

  test("a unit that is none", () => {
    const header = ["Design", "Mark", "Colour", "Length (yd)", "Links per in", "Weight of one link"];
    expect(listOf([header, CURB], [["Price"]])).toEqual([["Price"], [refused('Length (yd): found "yd" as its unit')]]);
  });
});

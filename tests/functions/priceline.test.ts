import { describe, expect, test } from "vitest";
import { designs, RATES } from "../benchlist.mjs";
import { type CellError, call, cell } from "./built";

const [HEADERS = [], ...LINES] = designs(60) as unknown[][];
const list = (lines: unknown[][], rates: unknown[][] = RATES) => call("PRICELIST", lines, rates) as unknown[][];
const lineOf = (line: unknown[], column: unknown, rates: unknown[][] = RATES, headers: unknown[] = HEADERS) =>
  cell("PRICELINE", [headers], [line], rates, column);
const withRate = (name: string, value: unknown) => RATES.map((row) => (row[0] === name ? [name, value] : row));

describe("one column of one design", () => {
  test("is what the price list gives in that cell, at one spot and the next", () => {
    for (const rates of [RATES, withRate("Spot", 2511.3), withRate("Tax is", " In the Price "), RATES]) {
      const [titles = [], ...rows] = list([HEADERS, ...LINES], rates);
      rows.forEach((row, at) => {
        titles.forEach((title, column) => {
          expect(lineOf(LINES[at] ?? [], title, rates), `${at} ${title}`).toBe(row[column]);
        });
      });
    }
  });

  test("knows stones, patterns and alloys of one's own", () => {
    const headers = [
      "Design",
      "Mark",
      "Colour",
      "Pattern",
      "Composition",
      "Name of the colour",
      "Length (cm)",
      "Links per cm",
      "Weight of one link (dwt)",
      "Weight of one white link (dwt)",
      "Links with stones",
      "Price of one stone",
    ];
    const lines = [
      ["Two tones", "18K", "yellow", "YYW", "", "", 45, 2, 0.4, 0.45, "all links", 4],
      ["Champagne", 585, "own", "", "Au 585, Ag 200, Cu 215", "champagne", 45, 2, 0.4, "", "no links", ""],
    ];
    const [titles = [], ...rows] = list([headers, ...lines]);
    expect(rows.flat().filter((each) => typeof each === "object")).toEqual([]);
    rows.forEach((row, at) => {
      expect(titles.map((title) => lineOf(lines[at] ?? [], title, RATES, headers))).toEqual(row);
    });
  });

  test("of several rows gives a cell for each, an empty row a blank", () => {
    const empty = HEADERS.map(() => "");
    const [, one = [], other = []] = list([HEADERS, LINES[0] ?? [], LINES[1] ?? []]);
    const price = (list([HEADERS])[0] ?? []).indexOf("Price");
    expect(call("PRICELINE", [HEADERS], [LINES[0], empty, LINES[1]], RATES, [["price "]])).toEqual([
      [one[price]],
      [""],
      [other[price]],
    ]);
  });

  test("tells a fault of its row, and of its neighbours nothing", () => {
    const wrong = (LINES[0] ?? []).with(1, "99K");
    const answer = lineOf(wrong, "Price") as CellError;
    expect(answer).toMatchObject({ code: "#VALUE!", message: expect.stringContaining("99K") });
    const [, , inList] = list([HEADERS, wrong]);
    expect(inList).toBeUndefined();
    expect(typeof lineOf(LINES[1] ?? [], "Price")).toBe("number");
    // The same text in a cell that is no text is another row.
    expect(lineOf((LINES[0] ?? []).with(1, true), "Price")).toMatchObject({ code: "#VALUE!" });
  });

  test("says what is wrong with the headers, the rates or the column", () => {
    expect(lineOf(LINES[0] ?? [], "Cost")).toMatchObject({ message: expect.stringContaining("column: found") });
    expect(lineOf(LINES[0] ?? [], "")).toMatchObject({ message: expect.stringContaining("column: found") });
    expect(lineOf(LINES[0] ?? [], "Price", RATES, ["Design"])).toMatchObject({
      message: expect.stringContaining("Design, Mark and Length"),
    });
    expect(lineOf(LINES[0] ?? [], "Price", withRate("Price by", "haggling"))).toMatchObject({
      message: expect.stringContaining('Price by: found "haggling"'),
    });
    // And after a fault the next call is right again.
    expect(typeof lineOf(LINES[0] ?? [], "Price")).toBe("number");
  });
});

describe("a row of the Rates sheet by itself", () => {
  test.each([
    ["Tax is", "in the price ", "in the price"],
    ["tax is ", " IN THE PRICE", "in the price"],
    ["Tax is", " ", "on top"],
    ["Cost basis", "Quick", "quick"],
    ["Tax", "5 %", 0.05],
    ["Tax", "", 0],
    ["Labour, flat", " 50 ", 50],
    ["Labour minimum", " ", 0],
    ["Customer's gold credited at", "", 1],
    ["Spot is old after", " ", ""],
    ["Currency", "usd ", "USD"],
    ["Workshop", " Ada's bench ", "Ada's bench"],
  ])("%s: %j says %j", (name, value, said) => {
    expect(cell("RATEVALUE", name, value)).toBe(said);
  });

  test("says what it cannot read, naming the row", () => {
    expect(cell("RATEVALUE", "Tax is", "inside")).toMatchObject({
      message: expect.stringContaining('Tax is: found "inside"'),
    });
    expect(cell("RATEVALUE", "Tax", 5)).toMatchObject({ message: expect.stringContaining("Tax: found 5") });
    expect(cell("RATEVALUE", "Plating", " ")).toMatchObject({
      message: expect.stringContaining("Plating: found nothing"),
    });
    expect(cell("RATEVALUE", "Taxes", 5)).toMatchObject({ message: expect.stringContaining("rate: found") });
    expect(cell("RATEVALUE", "Polish loss", 5)).toMatchObject({ message: expect.stringContaining("rate: found") });
    expect(call("RATEVALUE", [["Tax"]], [[0.05], ["x"]])).toMatchObject([[0.05], [{ code: "#VALUE!" }]]);
  });
});

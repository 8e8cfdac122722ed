import { describe, expect, test } from "vitest";
import { cellsOf, UNCOSTED_HEADERS, UNCOSTED_ROWS } from "../uncostedrows";
import { call } from "./built";

/** Fine gold is 25.00 a gram: 25 x 31.1034768. */
const RATES = [
  ["Currency", "USD"],
  ["Spot", 777.58692],
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
const listOf = (rows: unknown[][]) =>
  (call("PRICELIST", [UNCOSTED_HEADERS, ...rows], RATES, [["Landed cost"]]) as unknown[][]).slice(1).flat();
const lineOf = (row: unknown[]) => call("PRICELINE", [UNCOSTED_HEADERS], [row], RATES, [["Landed cost"]]);

/** 100 g of fine gold at 25.00, 1.50 a gram cast, 50 labour, 2 g lost: 2,750 (common practice). */
const PLAIN = cellsOf({});
const LANDED = 2750;

describe.each(UNCOSTED_ROWS)("$what", ({ cells, field, fault, mended }) => {
  const refused = { code: "#VALUE!", message: fault };

  test("is a fault of its own row in a price list, and the rows around it keep their figures", () => {
    expect(listOf([PLAIN, cellsOf(cells), PLAIN])).toEqual([LANDED, expect.objectContaining(refused), LANDED]);
  });

  test("is that fault of one line too", () => {
    expect(lineOf(cellsOf(cells))).toMatchObject(refused);
  });

  test("has a price once its cost is given, and with a 0, which is free", () => {
    const [given, free] = listOf([mended, 0].map((cost) => cellsOf({ ...cells, [field]: cost })));
    expect([typeof given, typeof free]).toEqual(["number", "number"]);
    expect(Number(given)).toBeGreaterThan(Number(free));
  });
});

test("a row that says nothing of a clasp has none, and a cast clasp has its gold in what is cast", () => {
  const cast = cellsOf({ Clasp: "cast box clasp", "Clasp weight": 4 });
  expect(listOf([PLAIN, cast])).toEqual([LANDED, expect.any(Number)]);
});

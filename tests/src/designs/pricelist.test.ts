import { describe, expect, test } from "vitest";
import {
  figureOf,
  PRICE_COLUMN_KEYS,
  PRICE_COLUMNS,
  ratesOfCells,
  readPriceColumns,
} from "../../../src/designs/pricelist";
import { RATE_ROWS, type RateKey } from "../../../src/rates/raterows";
import { priceLines } from "../designlists";
import { RATES, ratesOf } from "../orders";
import { expectFault } from "../reference";

const HEADER = ["Design", "Mark", "Colour", "Length (in)", "Links per in", "Weight of one link", "Quantity"];
const CURB = ["Curb", 250, "yellow", 25, 4, 1, ""];

describe("a table of designs", () => {
  test("is priced row by row, at a quantity of 1 where none is given (hand arithmetic in costsheet.test.ts)", () => {
    const [line] = priceLines([HEADER, CURB], ratesOf());
    if (line?.kind !== "priced") throw new Error("not priced");
    expect(figureOf(line, "design")).toBe("Curb");
    expect(figureOf(line, "landed")).toBe(line.sheet.landed.amount);
    expect(line.sheet.landed.amount.value().toString()).toBe("2750");
    expect(line.sheet.price.amount.value().toString()).toBe("3575");
  });

  test("rows are empty, refused or priced, each for itself", () => {
    const lines = priceLines([HEADER, [], ["Odd", "25K"], CURB], ratesOf());
    expect(lines.map(({ kind }) => kind)).toEqual(["empty", "refused", "priced"]);
  });

  test("a discount or a customer beside the designs changes no price", () => {
    const [plain] = priceLines([HEADER, CURB], ratesOf());
    const [more] = priceLines(
      [
        [...HEADER, "Discount", "Customer"],
        [...CURB, 0.2, "A."],
      ],
      ratesOf(),
    );
    if (plain?.kind !== "priced" || more?.kind !== "priced") throw new Error("not priced");
    expect(more.sheet.price.amount.equals(plain.sheet.price.amount)).toBe(true);
  });
});

describe("columns", () => {
  test("are all of them where none are asked for, else those asked for in that order, whatever their case", () => {
    expect(readPriceColumns([])).toEqual(PRICE_COLUMN_KEYS);
    expect(readPriceColumns(["PRICE", "", "fine gold"])).toEqual(["price", "fineGold"]);
  });

  test("have words of their own", () => {
    const words = Object.values<string>(PRICE_COLUMNS);
    expect(new Set(words).size).toBe(words.length);
  });

  test("nobody knows are refused with those there are", () => {
    expectFault(
      () => readPriceColumns(["Profit"]),
      "unknownWord",
      'columns: found "Profit"; give of "Design"',
      '"Margin"',
    );
  });
});

describe("rates from cells", () => {
  const cells = Object.entries(RATES).map(([key, value]) => [RATE_ROWS[key as RateKey].label, value]);

  test("are read by the words of the Rates sheet; headings and remarks are passed over", () => {
    const rates = ratesOfCells([["Rates", ""], ...cells, ["Our own remark", 7]]);
    expect(rates.spot.amount.value().toString()).toBe(RATES.spot);
  });

  test("that are wrong are told by the first of them", () => {
    expectFault(() => ratesOfCells([["Currency", "USD"]]), "blank", "Spot: found nothing");
  });
});

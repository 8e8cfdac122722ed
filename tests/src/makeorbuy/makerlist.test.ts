import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { parseMark } from "../../../src/gold/mark";
import { bestMaker, makersOfCells } from "../../../src/makeorbuy/makerlist";
import type { Currency } from "../../../src/units/currency";
import { grams } from "../../../src/units/weight";
import { expectFault } from "../reference";

/** Invented. */
const CELLS = [
  ["Maker", "Mark", "From g", "Surcharge per g", "Currency"],
  ["Fennick", "14K", 0, 5, ""],
  ["Orrin", "all", 20, 4, "EUR"],
  ["Thackley", "14K", 20, 4, ""],
];
const said = (weight: string, mark: string, cells: readonly (readonly unknown[])[] = CELLS, currency?: Currency) => {
  const lists = makersOfCells(cells).in(currency);
  const { maker, surcharge } = bestMaker(lists, grams(Quotient.of(weight)), parseMark(mark));
  return [maker, surcharge.perGram.value().toString(), surcharge.currency];
};

describe("price lists in a range", () => {
  test("say who asks least; of equal ones the first of the lists; all amounts in the currency that is named", () => {
    expect(said("10", "14K")).toEqual(["Fennick", "5", "EUR"]);
    expect(said("20", "14K")).toEqual(["Orrin", "4", "EUR"]);
    expect(said("20", "18K")).toEqual(["Orrin", "4", "EUR"]);
  });

  test("are refused without their headers, in two currencies, and where nobody sells the weight", () => {
    expectFault(() => makersOfCells(CELLS.slice(1)), "wrongShape", "makers: found no first row");
    expectFault(() => makersOfCells([]), "wrongShape");
    const two = [...CELLS, ["Orrin", "585", 0, 3, "USD"]];
    expectFault(
      () => said("20", "585", two),
      "currencyMismatch",
      'makers: found prices in EUR (row 2), USD (row 4); give the currency to compare in as the last argument, such as "EUR"',
    );
    expectFault(() => said("19", "18K"), "neverReached", "nobody on the price lists sells 18K of that weight");
  });

  test("in a currency that is given only its prices count, and those without a currency; others about the mark are refused", () => {
    const two = [...CELLS, ["Thackley", "18K", 0, 3, "USD"]];
    expect(said("20", "14K", two, "EUR")).toEqual(["Orrin", "4", "EUR"]);
    expectFault(() => said("20", "18K", two, "EUR"), "currencyMismatch", "Row 4, Thackley: Currency: found USD");
    expectFault(() => said("20", "14K", two, "USD"), "currencyMismatch", "Row 2, Orrin: Currency: found EUR");
    expectFault(() => said("20", "14K", CELLS, "JPY"), "currencyMismatch", "Row 2, Orrin: Currency: found EUR");
    // Nothing named: the amounts are in the currency that is given.
    const plain = CELLS.map((row) => row.slice(0, 4));
    expect(said("10", "14K", plain, "JPY")).toEqual(["Fennick", "5", "JPY"]);
  });

  test("who sells 100 g cannot sell 40: the least surcharge that this weight can have", () => {
    const cells = [
      ["Maker", "Mark", "From g", "Surcharge per g", "Minimum order", "Minimum in"],
      ["Fennick", "14K", 0, 3, 100, "g"],
      ["Orrin", "14K", 0, 4, 1, "kg"],
      ["Thackley", "14K", 10, 5, 2000, "money"],
    ];
    const at = (weight: string) => said(weight, "14K", cells).slice(0, 2);
    expect([at("40"), at("99.99"), at("100"), at("1000")]).toEqual([
      ["Thackley", "5"],
      ["Thackley", "5"],
      ["Fennick", "3"],
      ["Fennick", "3"],
    ]);
    expectFault(
      () => at("5"),
      "neverReached",
      "nobody on the price lists sells so little 14K at once: Fennick sells 100 g or more",
    );
  });
});

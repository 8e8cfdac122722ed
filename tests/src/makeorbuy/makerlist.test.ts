import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { parseMark } from "../../../src/gold/mark";
import { bestMaker, priceListsOfCells } from "../../../src/makeorbuy/makerlist";
import { grams } from "../../../src/units/weight";
import { expectFault } from "../reference";

/** Invented. */
const CELLS = [
  ["Maker", "Mark", "From g", "Surcharge per g", "Currency"],
  ["Fennick", "14K", 0, 5, ""],
  ["Orrin", "all", 20, 4, "EUR"],
  ["Thackley", "14K", 20, 4, ""],
];
const said = (weight: string, mark: string, cells: readonly (readonly unknown[])[] = CELLS) => {
  const { maker, surcharge } = bestMaker(priceListsOfCells(cells), grams(Quotient.of(weight)), parseMark(mark));
  return [maker, surcharge.perGram.value().toString(), surcharge.currency];
};

describe("price lists in a range", () => {
  test("say who asks least; of equal ones the first of the lists; all amounts in the currency that is named", () => {
    expect(said("10", "14K")).toEqual(["Fennick", "5", "EUR"]);
    expect(said("20", "14K")).toEqual(["Orrin", "4", "EUR"]);
    expect(said("20", "18K")).toEqual(["Orrin", "4", "EUR"]);
  });

  test("are refused without their headers, in two currencies, and where nobody sells the weight", () => {
    expectFault(() => priceListsOfCells(CELLS.slice(1)), "wrongShape", "makers: found no first row");
    expectFault(() => priceListsOfCells([]), "wrongShape");
    const two = [...CELLS, ["Orrin", "585", 0, 3, "USD"]];
    expectFault(() => said("20", "585", two), "currencyMismatch", "Row 4, Orrin: Currency: found USD");
    expectFault(() => said("19", "18K"), "neverReached", "nobody on the price lists sells 18K of that weight");
  });
});

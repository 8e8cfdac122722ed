import { figureOf, PRICE_COLUMNS, priceLines, ratesOfCells, readPriceColumns } from "../src/index";
import { gridOf } from "./grid";
import { table } from "./spread";

/**
 * Price list: a table of designs costed and priced at the workshop's rates, a row a design, for one piece each.
 * A row that cannot be priced shows what is wrong beside its design; an empty row stays empty.
 * @customfunction PRICELIST
 * @param lines Designs with their row of headers, in the words of the order form: Design, Mark, Colour, Length (in), …; a range.
 * @param rates Two columns in the words of the Rates sheet: name and value; a range.
 * @param [columns] Which columns, and in what order, such as "Design", "Landed cost", "Price"; all if omitted; a range.
 * @returns A table with its headers; weights in grams, money unrounded but for the price, which is rounded up to the price step.
 */
export function pricelist(lines: unknown[][], rates: unknown[][], columns?: unknown[][]): unknown[][] {
  return table(() => {
    const asked = readPriceColumns(gridOf(columns).flat());
    const priced = priceLines(gridOf(lines), ratesOfCells(gridOf(rates)));
    return [
      asked.map((column) => PRICE_COLUMNS[column]),
      ...priced.map((line) =>
        asked.map((column) => {
          if (line.kind === "empty") return "";
          if (column === "design") return line.design;
          return line.kind === "refused" ? line.error : (figureOf(line, column) ?? "");
        }),
      ),
    ];
  });
}

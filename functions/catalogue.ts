import {
  designColumns,
  PRICE_COLUMNS,
  priceInColumns,
  rateFiguresOf,
  ratesOfCells,
  readPriceColumns,
} from "../src/index";
import { answer } from "./cell";
import { plainGridOf } from "./grid";
import { PriceTable } from "./pricetable";

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
  return answer(() => {
    const asked = readPriceColumns(plainGridOf(columns).flat());
    const [header = [], ...designs] = plainGridOf(lines);
    const placesOf = (isName: boolean) =>
      asked.flatMap((column, place) => ((column === "design") === isName ? [place] : []));
    const nameAt = designColumns(header).find(({ key }) => key === "design")?.place ?? 0;
    const table = new PriceTable(designs, nameAt, placesOf(true), placesOf(false));
    const figures = asked.filter((column) => column !== "design");
    const workshop = rateFiguresOf(() => ratesOfCells(plainGridOf(rates)));
    priceInColumns(header, designs, workshop, figures, table);
    return [asked.map((column) => PRICE_COLUMNS[column]), ...table.rows];
  });
}

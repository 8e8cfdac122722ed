import {
  CostingError,
  designColumns,
  PRICE_COLUMNS,
  priceInColumns,
  rateFiguresOf,
  ratesOfCells,
  readPriceColumns,
  readRate,
} from "../src/index";
import { answer, type Cell, toCell, toCellOrError } from "./cell";
import { isSingle, plainGridOf } from "./grid";
import { PriceLines } from "./priceline";
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

const priceLines = new PriceLines();

/**
 * One column of one design of a price list: what PRICELIST gives in that cell. It follows its row and the rates.
 * @customfunction PRICELINE
 * @param headers Your own row of headers, in the words of the order form: Design, Mark, Colour, Length (in), …; a range of one row.
 * @param line Your own cells of the design under these headers; a range of one row, or of several for a column of answers.
 * @param rates Two columns in the words of the Rates sheet: name and value; a range.
 * @param column Which column, such as "Landed cost" or "Price"; one cell.
 * @returns A figure of one piece, weights in grams, money unrounded but for the price, which is rounded up to the price step; blank for an empty row.
 */
export function priceline(
  headers: unknown[][],
  line: unknown[][],
  rates: unknown[][],
  column: unknown[][],
): unknown[][] {
  return answer(() => {
    const [header = [], ...more] = plainGridOf(headers);
    if (more.length > 0) throw new CostingError("wrongShape", "headers", "found several rows; give the row of headers");
    const asked = plainGridOf(column).flat();
    const [wanted, ...others] = readPriceColumns(asked, "column");
    if (wanted === undefined || others.length > 0)
      throw new CostingError("blank", "column", 'found none or several; give one column, such as "Price"');
    const lines = plainGridOf(line);
    const cells = lines.map((row) => [priceLines.cell(header, row, plainGridOf(rates), wanted)]);
    return lines.length === 1 ? cells.map((row) => row.map(orThrow)) : cells;
  });
}

/** A single call throws its fault, so that Excel shows the sentence. */
function orThrow(cell: Cell): Cell {
  if (cell instanceof CustomFunctions.Error) throw cell;
  return cell;
}

/**
 * What a row of the Rates sheet says, read as the add-in reads it everywhere: a word in its usual letters, a figure, a share such as 0.05 for "5 %", and a blank as what counts in its place. Polish loss is left to the functions that take it.
 * @customfunction RATEVALUE
 * @param rate Name of the row on the Rates sheet, such as "Tax is"; one cell.
 * @param value The cell beside that name; a cell or a range.
 * @returns A figure or a word; blank where nothing is given and nothing counts in its place.
 */
export function rateValue(rate: unknown[][], value: unknown[][]): unknown[][] {
  return answer(() => {
    const [name] = plainGridOf(rate)[0] ?? [];
    const cells = plainGridOf(value);
    if (isSingle(cells)) return [[toCell(readRate(name, cells[0]?.[0]))]];
    return cells.map((row) => row.map((cell) => cellOrFault(() => readRate(name, cell))));
  });
}

function cellOrFault(read: () => ReturnType<typeof readRate>): Cell {
  try {
    return toCell(read());
  } catch (error) {
    if (error instanceof CostingError) return toCellOrError(error);
    throw error;
  }
}

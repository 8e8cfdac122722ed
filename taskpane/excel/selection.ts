import {
  CostingError,
  type Currency,
  doubledHeaders,
  doubledWords,
  isBlank,
  type RowKey,
  readHeaders,
  recordOf,
} from "../../src/index";
import { columnLetters } from "./address";
import { run, WorkbookFault } from "./run";

/** A row counts as the header when it names at least this many fields of an order. */
const FEWEST_WORDS = 3;

/**
 * The row under the cursor as an order's texts: the nearest row above it that holds the words of the form is its header.
 * Units may be in the header, as in "Length (in)" or "Links per in". Keys that the header does not name are left out.
 * @param currency of Rates: money of another is refused
 */
export async function readSelectedOrder(currency: Currency): Promise<Partial<Record<RowKey, string>>> {
  return run(async (context) => {
    const selected = context.workbook.getSelectedRange();
    selected.load("rowIndex");
    const used = selected.worksheet.getUsedRangeOrNullObject(true);
    used.load("values,rowIndex,columnIndex");
    await context.sync();
    if (used.isNullObject)
      throw new WorkbookFault(
        "This sheet is empty. Select a row of orders whose headers are the words of this form, such as Customer, Design, Mark, Length.",
      );
    const at = selected.rowIndex - used.rowIndex;
    const row = used.values[at];
    const above = used.values.slice(0, Math.max(0, at));
    const headerAt = above.findLastIndex((cells) => readHeaders(cells).length >= FEWEST_WORDS);
    const header = above[headerAt];
    if (!row || !header || row.every(isBlank)) {
      throw new WorkbookFault(
        "The selected row is no order. Select a filled row under headers that are the words of this form, such as Customer, Design, Mark, Length.",
      );
    }
    const addressOf = (place: number) => `${columnLetters(used.columnIndex + place)}${used.rowIndex + headerAt + 1}`;
    const [doubled] = doubledHeaders(header, addressOf);
    if (doubled) throw new WorkbookFault(`The headers above the selected row: found ${doubledWords(doubled)}.`);
    return textsIn(() => recordOf(readHeaders(header), row, currency));
  });
}

/** A blank cell becomes "": this order has none of it. A missing column gives no key at all. */
function textsIn(read: () => Partial<Record<RowKey, unknown>>): Partial<Record<RowKey, string>> {
  try {
    const record = Object.entries(read()).map(([key, cell]) => [key, isBlank(cell) ? "" : textOf(cell)] as const);
    return Object.fromEntries(record) as Partial<Record<RowKey, string>>;
  } catch (error) {
    if (error instanceof CostingError) throw new WorkbookFault(error.message, { cause: error });
    throw error;
  }
}

/** A number as its 15 significant digits say, which is what a person sees in the cell. */
function textOf(cell: unknown): string {
  return typeof cell === "number" ? String(Number(cell.toPrecision(15))) : String(cell).trim();
}

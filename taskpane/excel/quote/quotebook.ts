import { type QuoteNumber, type QuoteStatus, readQuoteNumber, showQuoteNumber } from "../../../src/index";
import { run, WorkbookFault } from "../run";

/** The name of the table that lists the quotes, as formulas use it. */
export const QUOTES_TABLE = "Quotes";

/** Its columns from left to right, with their headers. None of them is a cost. */
export const QUOTE_COLUMNS = {
  number: "Number",
  date: "Date",
  customer: "Customer",
  design: "Design",
  total: "Total",
  currency: "Currency",
  spot: "Spot",
  validUntil: "Valid until",
  status: "Where it stands",
  order: "Order",
} as const;
export type QuoteColumn = keyof typeof QUOTE_COLUMNS;
export const QUOTE_COLUMN_KEYS = Object.keys(QUOTE_COLUMNS) as readonly QuoteColumn[];

/** One row of the table as its cells read; `number` is read from its number cell. */
export interface BookedQuote {
  readonly number: QuoteNumber;
  readonly cells: Readonly<Record<QuoteColumn, unknown>>;
}

/** The rows of the table, and the place of each column, counted from its left edge. */
export interface QuoteTable {
  readonly places: Readonly<Record<QuoteColumn, number>>;
  /** Every row of the table; undefined for a row without a quote's number, which is the person's own. */
  readonly rows: readonly (BookedQuote | undefined)[];
}

/**
 * Asks for the table along with whatever else a batch reads; the answer is ready after its sync.
 * The answer is undefined where there is no table, and throws a WorkbookFault where a column of it is gone.
 */
export function askQuoteTable(context: Excel.RequestContext): () => QuoteTable | undefined {
  const table = context.workbook.tables.getItemOrNullObject(QUOTES_TABLE);
  table.load("name");
  const all = table.getRange();
  all.load("values");
  return () => (table.isNullObject ? undefined : quoteTable(all.values));
}

/** Writes the status of a quote into its cell, and nothing else. */
export async function writeQuoteStatus(number: QuoteNumber, status: QuoteStatus): Promise<void> {
  await run(async (context) => {
    const answer = askQuoteTable(context);
    await context.sync();
    const found = answer();
    const row = found?.rows.findIndex((each) => each && showQuoteNumber(each.number) === showQuoteNumber(number)) ?? -1;
    if (!found || row < 0) {
      throw new WorkbookFault(`Quote ${showQuoteNumber(number)} is no longer in the table ${QUOTES_TABLE}.`);
    }
    const table = context.workbook.tables.getItem(QUOTES_TABLE);
    table.getDataBodyRange().getCell(row, found.places.status).values = [[status]];
    await context.sync();
  });
}

function quoteTable([header = [], ...body]: readonly (readonly unknown[])[]): QuoteTable {
  const titles = header.map((title) => String(title).trim().toLowerCase());
  const placed = QUOTE_COLUMN_KEYS.map((key) => [key, titles.indexOf(QUOTE_COLUMNS[key].toLowerCase())] as const);
  const gone = placed.filter(([, place]) => place < 0).map(([key]) => `"${QUOTE_COLUMNS[key]}"`);
  if (gone.length > 0) {
    throw new WorkbookFault(
      `The table ${QUOTES_TABLE} has no column ${gone.join(", ")} any more. Give its header back, or give the table another name (Table Design): then the next quote begins a new one.`,
    );
  }
  const places = Object.fromEntries(placed) as Record<QuoteColumn, number>;
  return {
    places,
    rows: body.map((row) => {
      const number = readQuoteNumber(row[places.number]);
      if (!number) return undefined;
      const cells = Object.fromEntries(placed.map(([key, place]) => [key, row[place]])) as BookedQuote["cells"];
      return { number, cells };
    }),
  };
}

import { askRates, type RatesReading } from "../rates/rates";
import { WorkbookFault } from "../run";
import { askTemplate, type TemplateSheet } from "../template/templatesheet";
import { askQuoteTable, QUOTES_TABLE, type QuoteTable } from "./quotebook";

/** What the workbook holds before a quote is made. */
export interface Book {
  /** Undefined where there is no template yet. */
  readonly template: TemplateSheet | undefined;
  /** Undefined where no quote was made yet. */
  readonly table: QuoteTable | undefined;
  /** In small letters: in Excel two sheets cannot differ by case alone. */
  readonly sheetNames: ReadonlySet<string>;
  /** The rates as they are now; the pane's may be older. */
  readonly rates: RatesReading;
}

/**
 * Reads all that a quote depends on, in one sync. Throws here what would stop the quote half way, before anything is made.
 * @param template the name of the template's sheet
 */
export async function readBook(context: Excel.RequestContext, template: string): Promise<Book> {
  const { worksheets, names, tables, protection: structure } = context.workbook;
  worksheets.load("items/name");
  structure.load("protected");
  const askedTemplate = askTemplate(worksheets, template);
  const askedRates = askRates(context);
  const askedTable = askQuoteTable(context);
  const protection = tables.getItemOrNullObject(QUOTES_TABLE).worksheet.protection;
  protection.load("protected");
  const sameName = names.getItemOrNullObject(QUOTES_TABLE);
  sameName.load("name");
  await context.sync();
  const table = askedTable();
  if (structure.protected) {
    throw new WorkbookFault(
      "The workbook is protected against new sheets. Take that protection off (Review, Protect Workbook) and try again.",
    );
  }
  if (table && protection.protected) {
    throw new WorkbookFault(
      `The sheet with the table ${QUOTES_TABLE} is protected. Take its protection off (Review, Unprotect Sheet) and try again.`,
    );
  }
  if (!table && !sameName.isNullObject) {
    throw new WorkbookFault(
      `The table of quotes is to be called ${QUOTES_TABLE}, but a defined name is called so already. Give that another name (Formulas, Name Manager) and try again.`,
    );
  }
  return {
    template: askedTemplate(),
    table,
    sheetNames: new Set(worksheets.items.map(({ name }) => name.toLowerCase())),
    rates: askedRates(),
  };
}

import type { Block } from "./fill";
import { askQuoteTable, QUOTES_TABLE, type QuoteTable } from "./quotebook";
import { nameOf } from "./rates";
import { WorkbookFault } from "./run";
import { TEMPLATE_SHEET } from "./template";

/** What the workbook holds before a quote is made. */
export interface Book {
  /** Undefined where there is no template yet. */
  readonly template: Template | undefined;
  /** Undefined where no quote was made yet. */
  readonly table: QuoteTable | undefined;
  /** In small letters: Excel does not tell sheets apart by their case. */
  readonly sheetNames: ReadonlySet<string>;
  /** Rates' next number as it stands now; the pane's may be older. */
  readonly nextNumber: number;
}

interface Template {
  readonly cells: Block;
  readonly formats: Block;
}

/** Reads all that a quote depends on, in one sync. What would stop it half way is told before anything is made. */
export async function readBook(context: Excel.RequestContext): Promise<Book> {
  const { worksheets, names } = context.workbook;
  worksheets.load("items/name");
  const sheet = worksheets.getItemOrNullObject(TEMPLATE_SHEET);
  const used = sheet.getUsedRangeOrNullObject(true);
  used.load("formulas,numberFormat,rowIndex,columnIndex");
  const next = names.getItem(nameOf("nextNumber")).getRange();
  next.load("values");
  const askedTable = askQuoteTable(context);
  const protection = context.workbook.tables.getItemOrNullObject(QUOTES_TABLE).worksheet.protection;
  protection.load("protected");
  const sameName = names.getItemOrNullObject(QUOTES_TABLE);
  sameName.load("name");
  await context.sync();
  const table = askedTable();
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
  const sheetNames = new Set(worksheets.items.map(({ name }) => name.toLowerCase()));
  const hasTemplate = sheetNames.has(TEMPLATE_SHEET.toLowerCase());
  return {
    template: hasTemplate ? templateIn(used) : undefined,
    table,
    sheetNames,
    nextNumber: Number(next.values[0]?.[0]) || 0,
  };
}

/** The template's cells from A1. */
function templateIn(used: Excel.Range): Template {
  if (used.isNullObject)
    throw new WorkbookFault(
      `The sheet "${TEMPLATE_SHEET}" is empty. Delete it to get the built-in one back, or put fields such as {{customer}} into it.`,
    );
  const fromA1 = (block: Block) => [
    ...Array.from({ length: used.rowIndex }, () => [] as unknown[]),
    ...block.map((row) => [...Array<unknown>(used.columnIndex).fill(""), ...row]),
  ];
  return { cells: fromA1(used.formulas), formats: fromA1(used.numberFormat) };
}

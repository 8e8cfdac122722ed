import { askQuoteTable } from "../quote/quotebook";
import { askRates, type RatesReading } from "../rates/rates";
import { readAfterEdit, WorkbookFault } from "../run";
import { type AskedTable, askToWrite } from "../tables/askedtable";
import { askTable, type TableReading } from "../tables/plannedtable";
import { FINISHER_PLAN, type FinisherColumn } from "./finishertable";
import { LINK_PLAN, type LinkColumn } from "./linktable";
import { WEIGH_IN_PLAN, type WeighInColumn } from "./weighingtable";

/** A row of the tables as its cells read. */
export type LinkRow = Readonly<Record<LinkColumn, unknown>>;
export type WeighInRow = Readonly<Record<WeighInColumn, unknown>>;

/** The rows of a table, or the sentence that says why it cannot be read. */
export type RowsReading<Row> =
  | { readonly ok: true; readonly rows: readonly Row[] }
  | { readonly ok: false; readonly sentence: string };

/** The workbook's links and weighings; a table that does not exist yet has no rows. */
export interface ScaleReading {
  readonly links: RowsReading<LinkRow>;
  readonly weighIns: RowsReading<WeighInRow>;
  /** Numbers of quotes, as their cells read, in the order of their rows. */
  readonly quotes: readonly unknown[];
}

/** Reads both tables and the numbers of quotes in one sync. Each is read even where another cannot be. */
export async function readScale(): Promise<ScaleReading> {
  return readAfterEdit(async (context) => {
    const weighIns = askTable(context, WEIGH_IN_PLAN);
    const links = askTable(context, LINK_PLAN);
    const quotes = askQuoteTable(context);
    await context.sync();
    return { links: rowsOf(links), weighIns: rowsOf(weighIns), quotes: quoteNumbers(quotes) };
  });
}

/** The rows of a table that was asked for (none where there is no table), or why it cannot be read. */
export function rowsOf<K extends string>(
  asked: () => TableReading<K> | undefined,
): RowsReading<Readonly<Record<K, unknown>>> {
  try {
    return { ok: true, rows: asked()?.rows ?? [] };
  } catch (error) {
    if (error instanceof WorkbookFault) return { ok: false, sentence: error.message };
    throw error;
  }
}

/** Empty where the table of quotes cannot be read: that must not stop weighing. */
function quoteNumbers(quotes: ReturnType<typeof askQuoteTable>): readonly unknown[] {
  try {
    return quotes()?.rows.flatMap((row) => (row ? [row.cells.number] : [])) ?? [];
  } catch (error) {
    if (error instanceof WorkbookFault) return [];
    throw error;
  }
}

/** All that a row to be written depends on. */
export interface ScaleBook {
  readonly weighIns: AskedTable<WeighInColumn>;
  readonly links: AskedTable<LinkColumn>;
  readonly finishers: AskedTable<FinisherColumn>;
  readonly rates: RatesReading;
  /** In small letters: in Excel two sheets cannot differ by case alone. */
  readonly sheetNames: ReadonlySet<string>;
}

/**
 * Asks for all that writing depends on; the answer is ready after the batch's sync. Throws there what would stop the adding of a
 * table half way, before anything is written.
 */
export function askScaleBook(context: Excel.RequestContext): () => ScaleBook {
  const { worksheets, protection: structure } = context.workbook;
  worksheets.load("items/name");
  structure.load("protected");
  const weighIns = askToWrite(context, WEIGH_IN_PLAN);
  const links = askToWrite(context, LINK_PLAN);
  const finishers = askToWrite(context, FINISHER_PLAN);
  const rates = askRates(context);
  return () => {
    const tables = { weighIns: weighIns(), links: links(), finishers: finishers() };
    if (structure.protected && Object.values(tables).some((table) => table.isMissing)) {
      throw new WorkbookFault(
        "The workbook is protected against new sheets. Take that protection off (Review, Protect Workbook) and try again.",
      );
    }
    return { ...tables, rates: rates(), sheetNames: new Set(worksheets.items.map(({ name }) => name.toLowerCase())) };
  };
}

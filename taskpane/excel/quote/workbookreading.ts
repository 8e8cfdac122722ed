import { askRates, type RatesReading } from "../rates/rates";
import { followSpot } from "../rates/spotread";
import { readAfterEdit, WorkbookFault } from "../run";
import { askQuoteTable, type BookedQuote } from "./quotebook";

/** The quotes made so far in the order of their rows, or the sentence that says why they cannot be read. */
export type QuotesReading =
  | { readonly ok: true; readonly quotes: readonly BookedQuote[] }
  | { readonly ok: false; readonly sentence: string };

/**
 * Reads the rates, and the quotes too where they are shown, in one sync.
 * The rates are read even where the quotes table cannot be.
 * @param before the reading before: what a person changed of the spot and its time since is noted
 */
export async function readWorkbook(
  withQuotes: boolean,
  before?: RatesReading,
): Promise<{ readonly rates: RatesReading; readonly quotes: QuotesReading | undefined }> {
  return readAfterEdit(async (context) => {
    const rates = askRates(context);
    const table = withQuotes ? askQuoteTable(context) : undefined;
    await context.sync();
    return { rates: await followSpot(context, before, rates()), quotes: table && quotesIn(table) };
  });
}

function quotesIn(table: ReturnType<typeof askQuoteTable>): QuotesReading {
  try {
    return { ok: true, quotes: table()?.rows.flatMap((row) => row ?? []) ?? [] };
  } catch (error) {
    if (error instanceof WorkbookFault) return { ok: false, sentence: error.message };
    throw error;
  }
}

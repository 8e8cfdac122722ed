import {
  CostingError,
  nextQuoteNumber,
  nextRevision,
  type QuoteNumber,
  readQuoteNumber,
  showQuoteNumber,
} from "../../../src/index";
import { WorkbookFault } from "../run";
import type { QuoteTable } from "./quotebook";

/** The names of a quote's sheets. */
export interface QuoteSheets {
  readonly quote: string;
  readonly job: string;
  readonly tickets: string;
}

export function sheetsOf(number: QuoteNumber): QuoteSheets {
  const shown = showQuoteNumber(number);
  return { quote: `Quote ${shown}`, job: `Job ${shown}`, tickets: `Tickets ${shown}` };
}

/** The numbers that are taken: by a row of the table, or by a sheet, whoever made it. */
export function numbersTaken(table: QuoteTable | undefined, sheetNames: Iterable<string>): readonly QuoteNumber[] {
  const listed = table?.rows.flatMap((row) => (row ? [row.number] : [])) ?? [];
  const named = [...sheetNames].flatMap((name) => {
    const number = readQuoteNumber(/^(?:quote|job|tickets) (\S+)$/i.exec(name)?.[1]);
    return number ? [number] : [];
  });
  return [...listed, ...named];
}

/**
 * The number of the next quote: at least Rates' next number, and above every row and every sheet. So no number comes twice, even
 * where a person deletes or lowers one of the three. For a revision: the old number with its next letter.
 */
export function numberOf(revised: QuoteNumber | undefined, least: number, taken: readonly QuoteNumber[]): QuoteNumber {
  if (!revised) return nextQuoteNumber(least, taken);
  try {
    return nextRevision(revised, taken);
  } catch (error) {
    throw error instanceof CostingError ? new WorkbookFault(error.message, { cause: error }) : error;
  }
}

/** One of the sheets that the add-in makes of a quote: for the customer, for the bench, for the workshops. */
export interface QuoteSheet {
  readonly kind: "quote" | "job" | "tickets";
  /** As it is written: "1001", or "1001a" for a revision. */
  readonly number: string;
}

/** A quote as it can be printed: its number, and its sheet; undefined where that was deleted or has another name now. */
export interface PrintableQuote {
  readonly number: string;
  readonly sheet: string | undefined;
}

const NAMED = /^(quote|job|tickets) ([1-9]\d{0,6}[a-z]?)$/;

/** The quote that a sheet belongs to, by the name the add-in gives it: "Quote 1001", "Job 1001", "Tickets 1001". */
export function quoteOf(name: string): QuoteSheet | undefined {
  const [, kind, number] = NAMED.exec(name.toLowerCase()) ?? [];
  if (number === undefined || (kind !== "quote" && kind !== "job" && kind !== "tickets")) return undefined;
  return { kind, number };
}

/** The quote that the active sheet belongs to, or else the newest one; undefined where the workbook has none. */
export function quoteToPrint(front: string, names: readonly string[]): PrintableQuote | undefined {
  const quotes = names.flatMap((sheet) => {
    const quote = quoteOf(sheet);
    return quote?.kind === "quote" ? [{ number: quote.number, sheet }] : [];
  });
  const inFront = quoteOf(front)?.number;
  if (inFront === undefined) return quotes.sort(byAge).at(-1);
  return quotes.find(({ number }) => number === inFront) ?? { number: inFront, sheet: undefined };
}

/** Newest last: numbers are counted up, and a revision gets the next letter. */
function byAge(a: PrintableQuote, b: PrintableQuote): number {
  return Number.parseInt(a.number, 10) - Number.parseInt(b.number, 10) || (a.number < b.number ? -1 : 1);
}

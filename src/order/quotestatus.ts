/** Where a quote stands: it follows the metal from the first asking to the customer's hand. */
export const QUOTE_STATUSES = [
  "asked",
  "quoted",
  "agreed",
  "at the caster",
  "at the polisher",
  "with the setter",
  "finished",
  "handed over",
  "turned down",
] as const;
export type QuoteStatus = (typeof QUOTE_STATUSES)[number];

/** One of the nine, whatever its case and the spaces around it; undefined for words of a person's own. */
export function quoteStatusOf(value: unknown): QuoteStatus | undefined {
  const said = String(value).trim().toLowerCase();
  return QUOTE_STATUSES.find((status) => status === said);
}

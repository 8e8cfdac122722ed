/** Where a quote stands: it follows the metal from the first asking to the customer's hand. */
export const STANDINGS = [
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
export type Standing = (typeof STANDINGS)[number];

/** One of the nine, whatever its case and the spaces around it; undefined for words of a person's own. */
export function standingOf(value: unknown): Standing | undefined {
  const said = String(value).trim().toLowerCase();
  return STANDINGS.find((standing) => standing === said);
}

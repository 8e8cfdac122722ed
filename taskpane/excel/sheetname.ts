/**
 * The name, or where a sheet has it already, the name with ours behind it, counted up until it is free.
 * @param taken in small letters: Excel does not tell sheets apart by their case
 */
export function freeSheetName(wanted: string, taken: ReadonlySet<string>): string {
  for (let count = 0; ; count += 1) {
    const name = [wanted, `${wanted} (Curbwright)`][count] ?? `${wanted} (Curbwright ${count})`;
    if (!taken.has(name.toLowerCase())) return name;
  }
}

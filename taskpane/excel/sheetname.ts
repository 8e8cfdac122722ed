/** Characters that Excel allows in a sheet's name. Source: "Excel specifications and limits" of Microsoft's documentation. */
const LONGEST = 31;

/**
 * The name; where a sheet has it already, the name with "(Curbwright)" behind it, counted up until it is free. A long name is cut
 * after a whole word.
 * @param taken in small letters: in Excel two sheets cannot differ by case alone
 */
export function freeSheetName(wanted: string, taken: ReadonlySet<string>): string {
  for (let count = 0; ; count += 1) {
    const tail = ["", " (Curbwright)"][count] ?? ` (Curbwright ${count})`;
    const name = `${fitting(wanted, LONGEST - tail.length)}${tail}`;
    if (!taken.has(name.toLowerCase())) return name;
  }
}

function fitting(words: string, most: number): string {
  if (words.length <= most) return words;
  const cut = words.slice(0, most + 1).lastIndexOf(" ");
  return words.slice(0, cut > 0 ? cut : most).trimEnd();
}

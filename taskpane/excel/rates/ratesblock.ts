import { isBlank, RATE_KEYS, RATE_ROWS } from "../../../src/index";
import { columnLetters } from "../address";
import { WorkbookFault } from "../run";
import { askRates, nameOf, type RatesReading } from "./rates";

/** Rows that may be added to Rates later and are still in the block. */
const ROOM = 40;

/** The two columns of the Rates sheet that CURB.PRICELIST reads, as a formula names them. */
export interface RatesBlock {
  readonly address: string;
  readonly reading: Extract<RatesReading, { found: true }>;
}

/**
 * Finds them, in two syncs, and checks that the row labels agree with the defined names. CURB.PRICELIST finds a rate by its label,
 * so it would not see a renamed row.
 */
export async function findRatesBlock(context: Excel.RequestContext): Promise<RatesBlock> {
  const asked = askRates(context);
  await context.sync();
  const reading = asked();
  if (!reading.found)
    throw new WorkbookFault("There are no rates in this workbook yet. Lay the Rates sheet out first.");
  if (reading.missing.includes("spot")) {
    throw new WorkbookFault("Rates has no row for Spot. Add the missing rows first.");
  }
  const used = context.workbook.worksheets.getItem(reading.sheet).getUsedRange(true);
  used.load("values,rowIndex,columnIndex");
  const spot = context.workbook.names.getItem(nameOf("spot")).getRange();
  spot.load("columnIndex");
  await context.sync();
  const column = spot.columnIndex - 1 - used.columnIndex;
  const astray = RATE_KEYS.filter((key) => {
    if (reading.missing.includes(key)) return false;
    const label = RATE_ROWS[key].label.toLowerCase();
    // Of two rows with the same label the last counts, as in the function: a heading may have the words of a row below it.
    const row = used.values.findLast((cells) => String(cells[column]).trim().toLowerCase() === label);
    const cell: unknown = row?.[column + 1] ?? "";
    return !(isBlank(cell) && isBlank(reading.values[key])) && cell !== reading.values[key];
  });
  if (column < 0 || astray.length > 0) {
    const labels = astray.map((key) => `"${RATE_ROWS[key].label}"`).join(", ");
    throw new WorkbookFault(
      `A price list reads Rates by the words in its first column, and these rows cannot be found by theirs: ${labels}. Give them their words back, beside their values, and try again.`,
    );
  }
  const [words, values] = [columnLetters(spot.columnIndex - 1), columnLetters(spot.columnIndex)];
  const last = used.rowIndex + used.values.length + ROOM;
  return { address: `${quoted(reading.sheet)}!$${words}$1:$${values}$${last}`, reading };
}

/** A sheet's name as formulas write it. */
export function quoted(sheet: string): string {
  return `'${sheet.replaceAll("'", "''")}'`;
}

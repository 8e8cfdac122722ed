import { RATE_ROWS, type RateKey } from "../../../src/index";
import { asText } from "../paper";
import { nameOf } from "../rates";
import { run, WorkbookFault } from "../run";

/** A spot to take over. */
export interface NewSpot {
  /** Money per troy ounce of fine gold, as a plain decimal of at most 15 digits: what a cell holds. */
  readonly amount: string;
  readonly source: string;
  /** When it was read, as Excel's serial number. */
  readonly time: number;
}

/**
 * Writes a spot, its time and its source on Rates and nothing else, in two syncs. Gives the rows that hold formulas of the person's and were
 * left as they are. Errors: WorkbookFault where Spot itself is a formula or has no row, or is not the one seen before.
 * @param before the spot that before and after were reckoned from, as its cell's value
 */
export async function writeSpot(spot: NewSpot, before: unknown): Promise<readonly string[]> {
  return run(async (context) => {
    const keys = ["spot", "spotTime", "spotSource"] as const;
    const asked = keys.map((key) => {
      const range = context.workbook.names.getItemOrNullObject(nameOf(key)).getRangeOrNullObject();
      range.load("formulas,values");
      return { key, range };
    });
    await context.sync();
    const cells = new Map<RateKey, Excel.Range>(
      asked.flatMap(({ key, range }) => (range.isNullObject ? [] : [[key, range] as const])),
    );
    const own = cells.get("spot");
    if (!own) throw new WorkbookFault("Rates has no row for Spot. Add the missing rows first.");
    const formula: unknown = own.formulas[0]?.[0];
    if (isFormula(formula)) {
      throw new WorkbookFault(
        `Spot on Rates is a formula, ${formula}. It is yours and is left as it is: change what it reads instead.`,
      );
    }
    if (own.values[0]?.[0] !== before) {
      throw new WorkbookFault("Spot on Rates has changed meanwhile. See before and after anew.");
    }
    const content: Partial<Record<RateKey, string | number>> = {
      spot: Number(spot.amount),
      spotTime: spot.time,
      spotSource: asText(spot.source),
    };
    const left: string[] = [];
    for (const [key, range] of cells) {
      if (isFormula(range.formulas[0]?.[0])) left.push(RATE_ROWS[key].label);
      else range.values = [[content[key] ?? ""]];
    }
    await context.sync();
    return left;
  });
}

function isFormula(content: unknown): content is string {
  return typeof content === "string" && content.startsWith("=");
}

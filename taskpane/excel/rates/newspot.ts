import { type Currency, RATE_ROWS } from "../../../src/index";
import { asText } from "../paper";
import { run, WorkbookFault } from "../run";
import { nameOf } from "./rates";
import { askSpotNote, isFormula, keepSpotNote, noteOf, SPOT_KEYS } from "./spotnote";
import { askTakenSpot, type Held, keepTakenSpot, type TakenSpot } from "./takenspot";

/** A spot to take over. */
export interface NewSpot {
  /** Money per troy ounce of fine gold, as a plain decimal of at most 15 digits: what a cell holds. */
  readonly amount: string;
  readonly source: string;
  /** When it was read, as Excel's serial number. */
  readonly time: number;
}

/** The spot that a new one replaces. */
export interface OldSpot {
  /** What its cell held when the prices before and after were calculated. */
  readonly value: unknown;
  /** As a plain decimal. */
  readonly amount: string;
  readonly currency: Currency;
}

type Cells = ReadonlyMap<(typeof SPOT_KEYS)[number], Excel.Range>;

/**
 * Writes a spot, its time and its source on Rates and nothing else, and saves what was there so that it can be put back. Three
 * syncs. Gives the rows that hold the person's formulas and were left as they are. Errors: WorkbookFault where Spot itself is a
 * formula, has no row, or was changed since `old` was read.
 */
export async function writeSpot(spot: NewSpot, old: OldSpot): Promise<readonly string[]> {
  return run(async (context) => {
    const asked = askCells(context);
    const askedNote = askSpotNote(context);
    await context.sync();
    const cells = asked();
    const own = cells.get("spot");
    if (!own) throw new WorkbookFault("Rates has no row for Spot. Add the missing rows first.");
    if (isFormula(own)) {
      throw new WorkbookFault(
        `Spot on Rates is a formula, ${own.formulas[0]?.[0]}. It is yours and is left as it is: change what it reads instead.`,
      );
    }
    if (heldIn(own) !== old.value) {
      throw new WorkbookFault("Spot on Rates has changed meanwhile. See before and after anew.");
    }
    const written = [...cells].filter(([, range]) => !isFormula(range));
    const before = written.map(([key, range]) => [key, heldIn(range)] as const);
    const content = { spot: Number(spot.amount), spotTime: spot.time, spotSource: spot.source };
    for (const [key, range] of written) {
      put(range, content[key]);
      range.load("values");
    }
    await context.sync();
    try {
      keepTakenSpot(context, {
        currency: old.currency,
        was: old.amount,
        is: spot.amount,
        cells: before.map(([key, was]) => ({ key, was, is: heldIn(cells.get(key)) })),
        note: askedNote(),
      });
      keepSpotNote(context, noteIn(cells));
      await context.sync();
    } catch (error) {
      // If the old spot cannot be saved for putting back, the new one is not taken over.
      for (const [key, was] of before) put(cells.get(key), was);
      await context.sync().catch(() => undefined);
      throw error;
    }
    return [...cells].filter(([, range]) => isFormula(range)).map(([key]) => RATE_ROWS[key].label);
  });
}

/**
 * Puts back the spot that was on Rates before the last one was taken over, with its time and its source: all three or none;
 * two syncs. Errors: WorkbookFault where any of the three, or the currency, was changed since.
 */
export async function putSpotBack(): Promise<TakenSpot> {
  return run(async (context) => {
    const kept = askTakenSpot(context);
    const asked = askCells(context);
    const currency = context.workbook.names.getItemOrNullObject(nameOf("currency")).getRangeOrNullObject();
    currency.load("values");
    await context.sync();
    const taken = kept();
    if (!taken) throw new WorkbookFault("The spot before this one is no longer kept in the workbook.");
    const cells = asked();
    const changed = taken.cells.filter(({ key, is }) => {
      const range = cells.get(key);
      return !range || isFormula(range) || heldIn(range) !== is;
    });
    const labels: string[] = changed.map(({ key }) => RATE_ROWS[key].label);
    if (currency.isNullObject || String(currency.values[0]?.[0]).trim().toUpperCase() !== taken.currency)
      labels.push(RATE_ROWS.currency.label);
    if (labels.length > 0) {
      throw new WorkbookFault(
        `Changed on Rates since that spot was taken over: ${labels.join(", ")}. It is yours and is left as it is, so nothing was put back. The old spot was ${taken.currency} ${taken.was}.`,
      );
    }
    for (const { key, was } of taken.cells) put(cells.get(key), was);
    keepTakenSpot(context, undefined);
    keepSpotNote(context, taken.note);
    await context.sync();
    return taken;
  });
}

/** What the three cells hold, a missing one nothing. */
function noteIn(cells: Cells) {
  const value = (key: (typeof SPOT_KEYS)[number]) => heldIn(cells.get(key));
  return noteOf({ spot: value("spot"), spotTime: value("spotTime"), spotSource: value("spotSource") });
}

/** Those of the three cells that exist; ready after the sync. */
function askCells(context: Excel.RequestContext): () => Cells {
  const asked = SPOT_KEYS.map((key) => {
    const range = context.workbook.names.getItemOrNullObject(nameOf(key)).getRangeOrNullObject();
    range.load("formulas,values");
    return [key, range] as const;
  });
  return () => new Map(asked.filter(([, range]) => !range.isNullObject));
}

function heldIn(range: Excel.Range | undefined): Held {
  const value: unknown = range?.values[0]?.[0];
  return typeof value === "number" || typeof value === "boolean" ? value : String(value ?? "");
}

function put(range: Excel.Range | undefined, held: Held): void {
  if (range) range.values = [[typeof held === "string" ? asText(held) : held]];
}

import { RATE_KEYS, type RateKey } from "../../../src/index";
import { readAfterEdit, run } from "../run";
import { askSpotNote, isFormula, type SpotNote, type SpotReading, spotReadingOf } from "./spotnote";

export type RateValues = Readonly<Record<RateKey, unknown>>;

/** The workbook's rates, as their cells read. */
export type RatesReading =
  | { readonly found: false }
  | {
      readonly found: true;
      /** The sheet of Spot; where Spot is gone, that of the first rate that exists. */
      readonly sheet: string;
      /** Ids of the sheets that hold rates. */
      readonly sheetIds: readonly string[];
      /** "" for a rate that is blank or missing. */
      readonly values: RateValues;
      /** When and where Spot was read; the one way to a time beside a spot. */
      readonly spotRead: SpotReading;
      /** The time is given by a formula. */
      readonly isTimeFormula: boolean;
      readonly spotNote: SpotNote | undefined;
      /** Rates whose name points to no cell: the row was deleted, or the workbook is older than the rate. */
      readonly missing: readonly RateKey[];
    };

/** The defined name of a rate: Rate_Spot, Rate_CastingFee, … */
export function nameOf(key: RateKey): string {
  return `Rate_${key.charAt(0).toUpperCase()}${key.slice(1)}`;
}

/** Asks for every rate through its defined name along with whatever else a batch reads; ready after its sync. */
export function askRates(context: Excel.RequestContext): () => RatesReading {
  const asked = RATE_KEYS.map((key) => {
    const range = context.workbook.names.getItemOrNullObject(nameOf(key)).getRangeOrNullObject();
    range.load(`values,worksheet/id,worksheet/name${key === "spotTime" ? ",formulas" : ""}`);
    return { key, range };
  });
  const askedNote = askSpotNote(context);
  return () => {
    const present = asked.filter(({ range }) => !range.isNullObject);
    const anchor = present.find(({ key }) => key === "spot") ?? present[0];
    if (!anchor) return { found: false };
    const values = new Map<RateKey, unknown>(present.map(({ key, range }) => [key, range.values[0]?.[0] ?? ""]));
    const cells = Object.fromEntries(RATE_KEYS.map((key) => [key, values.get(key) ?? ""])) as Record<RateKey, unknown>;
    const isTimeFormula = present.some(({ key, range }) => key === "spotTime" && isFormula(range));
    const spotNote = askedNote();
    return {
      found: true,
      sheet: anchor.range.worksheet.name,
      sheetIds: [...new Set(present.map(({ range }) => range.worksheet.id))],
      values: cells,
      spotRead: spotReadingOf(cells, isTimeFormula, spotNote),
      isTimeFormula,
      spotNote,
      missing: RATE_KEYS.filter((key) => !values.has(key)),
    };
  };
}

/** Goes to the cell of a rate; where its row is missing, to the sheet of the other rates. */
export async function goToRate(key: RateKey): Promise<void> {
  await run(async (context) => {
    const asked = askRates(context);
    const cell = context.workbook.names.getItemOrNullObject(nameOf(key)).getRangeOrNullObject();
    cell.load("worksheet/name");
    await context.sync();
    const rates = asked();
    if (!cell.isNullObject) {
      context.workbook.worksheets.getItem(cell.worksheet.name).activate();
      cell.select();
    } else if (rates.found) context.workbook.worksheets.getItem(rates.sheet).activate();
    await context.sync();
  });
}

/** Rates that no price and no word of a quote depends on. A formula such as NOW() in "Spot as of" must not stop a quote. */
const BESIDE_THE_PRICE: readonly RateKey[] = ["spotTime", "spotSource", "spotAge", "nextNumber"];

/** Whether an order costs and reads the same from both. */
export function sameRates(one: RateValues, other: RateValues): boolean {
  return RATE_KEYS.every((key) => BESIDE_THE_PRICE.includes(key) || one[key] === other[key]);
}

/** A change in the workbook that may change rates. */
export interface RatesNews {
  /** Whether the add-in itself made the change. */
  readonly isOwn: boolean;
  /** The sheet that was calculated; undefined where cells were changed or a sheet deleted, whichever it was. */
  readonly calculatedSheetId: string | undefined;
}

/**
 * Calls when a cell changes anywhere, since a rate may be a formula over any sheet, and when a sheet is calculated: a rate that
 * follows a query, another workbook or the clock changes without an edited cell. Also when a sheet is deleted, since its rates go
 * with it.
 */
export async function watchRates(changed: (news: RatesNews) => void): Promise<void> {
  await readAfterEdit(async (context) => {
    const { worksheets } = context.workbook;
    worksheets.onChanged.add(async ({ triggerSource }) =>
      changed({ isOwn: triggerSource === "ThisLocalAddin", calculatedSheetId: undefined }),
    );
    worksheets.onDeleted.add(async () => changed({ isOwn: false, calculatedSheetId: undefined }));
    worksheets.onCalculated.add(async ({ worksheetId }) => changed({ isOwn: false, calculatedSheetId: worksheetId }));
    await context.sync();
  });
}

import { RATE_ROWS } from "../../../src/index";
import { asText } from "../paper";
import { run, WorkbookFault } from "../run";
import { nameOf, type RatesReading } from "./rates";
import { serialNow } from "./ratespaper";
import { held, isFormula, keepSpotNote, noteOf, SPOT_KEYS, type SpotNote, spotReadingOf } from "./spotnote";

/** The reading with what a person changed of the spot and its time since the one before, noted in the workbook. */
export async function followSpot(
  context: Excel.RequestContext,
  before: RatesReading | undefined,
  now: RatesReading,
): Promise<RatesReading> {
  const note = noteAfter(before, now);
  if (!note || !now.found) return now;
  keepSpotNote(context, note);
  await context.sync();
  return { ...now, spotNote: note, spotRead: spotReadingOf(now.values, now.isTimeFormula, note) };
}

/** The note to save after what a person changed on Rates between two readings; undefined where nothing is to be saved. */
export function noteAfter(before: RatesReading | undefined, now: RatesReading): SpotNote | undefined {
  if (!before?.found || !now.found || now.isTimeFormula) return undefined;
  const [was, is] = [noteOf(before.values), noteOf(now.values)];
  const note = now.spotNote;
  // From a workbook without a note: the time that stood there before a new spot was that of the old one.
  if (!note) return was.spot !== is.spot && was.time === is.time ? was : undefined;
  const isRewritten = note.time !== is.time || (note.spot === is.spot && note.source !== is.source);
  return isRewritten ? is : undefined;
}

/**
 * Writes now as the time of the spot on Rates, for a person who has read it now. Errors: WorkbookFault where Spot is not the one
 * that was shown, or where its time has no cell or is a formula.
 * @param shown the value of Spot that the person saw
 * @param source whether the source stays as it is or is cleared
 */
export async function stampSpot(shown: unknown, source: "keep" | "clear"): Promise<void> {
  await withCells(shown, async (cells, context) => {
    const time = cells.get("spotTime");
    if (!time) throw new WorkbookFault(`Rates has no row for ${RATE_ROWS.spotTime.label}. Add the missing rows first.`);
    if (isFormula(time)) {
      throw new WorkbookFault(
        `${RATE_ROWS.spotTime.label} on Rates is a formula. It is yours and is left as it is: change what it reads instead.`,
      );
    }
    time.values = [[serialNow()]];
    const from = cells.get("spotSource");
    if (source === "clear" && from && !isFormula(from)) from.values = [[asText("")]];
    for (const range of cells.values()) range.load("values");
    await context.sync();
  });
}

/** Saves that the time and the source on Rates are those of the spot there, as the person says. */
export async function confirmSpotRead(shown: unknown): Promise<void> {
  await withCells(shown, async () => undefined);
}

type Cells = ReadonlyMap<(typeof SPOT_KEYS)[number], Excel.Range>;

/** Changes the cells of the spot's time and source, then saves what they hold as the spot's own. */
async function withCells(
  shown: unknown,
  change: (cells: Cells, context: Excel.RequestContext) => Promise<void>,
): Promise<void> {
  await run(async (context) => {
    const asked = SPOT_KEYS.map((key) => {
      const range = context.workbook.names.getItemOrNullObject(nameOf(key)).getRangeOrNullObject();
      range.load("formulas,values");
      return [key, range] as const;
    });
    await context.sync();
    const cells: Cells = new Map(asked.filter(([, range]) => !range.isNullObject));
    const value = (key: (typeof SPOT_KEYS)[number]): unknown => cells.get(key)?.values[0]?.[0] ?? "";
    if (held(value("spot")) !== held(shown)) {
      throw new WorkbookFault("Spot on Rates has changed meanwhile. Look at it, and press again.");
    }
    await change(cells, context);
    keepSpotNote(
      context,
      noteOf({ spot: value("spot"), spotTime: value("spotTime"), spotSource: value("spotSource") }),
    );
    await context.sync();
  });
}

import { NOT_KNOWN, type RateKey, type SpotRead } from "../../../src/index";

/** The rows of Rates about the spot. */
export const SPOT_KEYS = ["spot", "spotTime", "spotSource"] as const satisfies readonly RateKey[];
export type SpotValues = Readonly<Record<(typeof SPOT_KEYS)[number], unknown>>;

/** The time and the source on Rates, and the spot that they were written for, as the cells held them. Saved in the workbook. */
export interface SpotNote {
  readonly spot: string;
  readonly time: string;
  readonly source: string;
}

/** What is known of when and where the spot on Rates was read. */
export interface SpotReading extends SpotRead {
  /** The time in the person's own words, where it is no date and time. */
  readonly timeWords: string;
  /**
   * The time and the source that stand on Rates, with the spot that they were written for, where Rates hold another spot now: then
   * it is not known when it was read.
   */
  readonly ofAnother: SpotNote | undefined;
}

const SETTING = "curbwright.rates.spotread";

/** Asks for the note along with whatever else a batch reads; ready after its sync. */
export function askSpotNote(context: Excel.RequestContext): () => SpotNote | undefined {
  const setting = context.workbook.settings.getItemOrNullObject(SETTING);
  setting.load("value");
  return () => (setting.isNullObject ? undefined : noteIn(setting.value));
}

/** Saves it at the next sync; undefined deletes it. */
export function keepSpotNote(context: Excel.RequestContext, note: SpotNote | undefined): void {
  const { settings } = context.workbook;
  if (note) settings.add(SETTING, JSON.stringify(note));
  else settings.getItemOrNullObject(SETTING).delete();
}

/** The note that the cells of Rates amount to as they are. */
export function noteOf({ spot, spotTime, spotSource }: SpotValues): SpotNote {
  return { spot: held(spot), time: held(spotTime), source: held(spotSource) };
}

/**
 * When and where the spot was read. A time belongs to the spot it was written for: where the spot is another since and the time
 * is not, it is not known. A time that a formula gives is the person's own arrangement, and a workbook without a note tells nothing
 * against its time.
 */
export function spotReadingOf(values: SpotValues, isTimeFormula: boolean, note: SpotNote | undefined): SpotReading {
  const now = noteOf(values);
  const isOwn = isTimeFormula || !note || note.spot === now.spot || note.time !== now.time;
  const time = typeof values.spotTime === "number" && isOwn ? values.spotTime : NOT_KNOWN.time;
  const timeWords = typeof values.spotTime === "string" && isOwn ? now.time : "";
  const isOwnSource = isOwn || note.source !== now.source;
  const isSaid = now.time !== "" || now.source !== "";
  return {
    time,
    timeWords,
    source: isOwnSource ? now.source : NOT_KNOWN.source,
    ofAnother: isOwn || !isSaid ? undefined : { ...now, spot: note.spot },
  };
}

/** A cell's content as it can be compared: a double by the 15 digits that Excel keeps. */
export function held(value: unknown): string {
  return typeof value === "number" ? String(Number(value.toPrecision(15))) : String(value ?? "").trim();
}

/** What the setting holds; undefined for a damaged one, or another program's. */
function noteIn(value: unknown): SpotNote | undefined {
  try {
    const read: unknown = typeof value === "string" ? JSON.parse(value) : undefined;
    if (typeof read !== "object" || read === null) return undefined;
    const [spot, time, source] = ["spot", "time", "source"].map((key): unknown => Reflect.get(read, key));
    const isNote = typeof spot === "string" && typeof time === "string" && typeof source === "string";
    return isNote ? { spot, time, source } : undefined;
  } catch {
    return undefined;
  }
}

/** A text that only begins like a formula reads the same as value and as formula. */
export function isFormula(range: Excel.Range): boolean {
  const formula: unknown = range.formulas[0]?.[0];
  return typeof formula === "string" && formula.startsWith("=") && formula !== range.values[0]?.[0];
}

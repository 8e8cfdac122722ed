import { type Currency, parseCurrency, type RateKey } from "../../../src/index";
import { readAfterEdit } from "../run";
import type { SpotNote } from "./spotnote";

/** What a cell without a formula holds. */
export type Held = string | number | boolean;

/** The spot that was taken over last, with what Rates held before it. Saved in the workbook itself. */
export interface TakenSpot {
  /** Of both spots. */
  readonly currency: Currency;
  /** Money per troy ounce of fine gold before, and since, as plain decimals. */
  readonly was: string;
  readonly is: string;
  /** The cells that were written, as they were and as Excel held them after. */
  readonly cells: readonly {
    readonly key: Extract<RateKey, "spot" | "spotTime" | "spotSource">;
    readonly was: Held;
    readonly is: Held;
  }[];
  /** What was known of the time of the spot before. */
  readonly note?: SpotNote | undefined;
}

const SETTING = "curbwright.catalogue.takenspot";

/** Asks for it along with whatever else a batch reads; ready after its sync. */
export function askTakenSpot(context: Excel.RequestContext): () => TakenSpot | undefined {
  const setting = context.workbook.settings.getItemOrNullObject(SETTING);
  setting.load("value");
  return () => (setting.isNullObject ? undefined : takenSpotIn(setting.value));
}

export async function readTakenSpot(): Promise<TakenSpot | undefined> {
  return readAfterEdit(async (context) => {
    const asked = askTakenSpot(context);
    await context.sync();
    return asked();
  });
}

/** Saves it at the next sync; undefined deletes it. */
export function keepTakenSpot(context: Excel.RequestContext, taken: TakenSpot | undefined): void {
  const { settings } = context.workbook;
  if (taken) settings.add(SETTING, JSON.stringify(taken));
  else settings.getItemOrNullObject(SETTING).delete();
}

/** What the setting holds; undefined for a damaged one, or another program's. */
export function takenSpotIn(value: unknown): TakenSpot | undefined {
  try {
    const parsed: unknown = typeof value === "string" ? JSON.parse(value) : undefined;
    return isTakenSpot(parsed) ? parsed : undefined;
  } catch {
    return undefined;
  }
}

const KEYS: readonly unknown[] = ["spot", "spotTime", "spotSource"];

function isTakenSpot(value: unknown): value is TakenSpot {
  if (typeof value !== "object" || value === null) return false;
  const [currency, was, is, cells] = ["currency", "was", "is", "cells"].map((key): unknown => Reflect.get(value, key));
  const amounts = [was, is].every((amount) => typeof amount === "string" && /^\d+(\.\d+)?$/.test(amount));
  return isCurrency(currency) && amounts && Array.isArray(cells) && cells.length > 0 && cells.every(isCell);
}

function isCurrency(value: unknown): boolean {
  return parseCurrency(value) === value;
}

function isCell(value: unknown): boolean {
  if (typeof value !== "object" || value === null || !KEYS.includes(Reflect.get(value, "key"))) return false;
  return ["was", "is"].every((key) => ["string", "number", "boolean"].includes(typeof Reflect.get(value, key)));
}

import {
  CostingError,
  type Currency,
  type Money,
  money,
  type NumberRule,
  parseMark,
  perGram,
  Quotient,
  readNumber,
  spotOf,
} from "../../src/index";
import { TEXTS } from "../wording/texts";

const texts = TEXTS.catalogue.spot;

/** A spot as typed: money per troy ounce, or per gram of a mark. */
export interface TypedSpot {
  readonly amount: string;
  readonly per: "ounce" | "gram";
  readonly mark: string;
  readonly time: string;
}

export type ReadSpot =
  | { readonly ok: true; readonly spot: Money; readonly time: number }
  | { readonly ok: false; readonly field: "amount" | "mark" | "time"; readonly sentence: string };

const RULE: NumberRule = { above: "0", most: "1000000000000", right: "an amount above 0, such as 2650" };

/** Excel shows and keeps 15 significant digits of a cell's number. */
const DIGITS = 15;

/**
 * Reads a spot. A price per gram of a mark is turned into money per troy ounce of fine gold exactly, then rounded once to
 * the 15 digits that a cell holds: what is shown before is what is written after.
 */
export function readSpot(typed: TypedSpot, currency: Currency): ReadSpot {
  const time = serialOf(typed.time);
  try {
    const amount = readNumber(typed.amount, texts.amount, RULE);
    const spot =
      typed.per === "ounce"
        ? money(amount, currency)
        : spotOf(perGram(amount, currency), parseMark(typed.mark, texts.mark));
    if (time === undefined) return { ok: false, field: "time", sentence: texts.badTime };
    const held = Quotient.of(spot.amount.value().toSignificantDigits(DIGITS));
    return { ok: true, spot: money(held, currency), time };
  } catch (error) {
    if (!(error instanceof CostingError)) throw error;
    return { ok: false, field: error.field === texts.mark ? "mark" : "amount", sentence: error.message };
  }
}

const TIME = /^\s*(\d{4})-(\d{1,2})-(\d{1,2})(?:[ T]+(\d{1,2}):(\d{2}))?\s*$/;
/** The 1900 date system counts days from here, once past its February 29 that never was. */
const DAY_ZERO = Date.UTC(1899, 11, 30);
const DAY = 86_400_000;

/** Date and time on the person's clock as Excel's serial number. */
function serialOf(text: string): number | undefined {
  const parts = TIME.exec(text)
    ?.slice(1)
    .map((part) => Number(part ?? 0));
  if (!parts) return undefined;
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0] = parts;
  const at = new Date(Date.UTC(year, month - 1, day, hour, minute));
  const stands = at.getUTCMonth() === month - 1 && at.getUTCDate() === day && hour < 24 && minute < 60;
  return stands ? (at.getTime() - DAY_ZERO) / DAY : undefined;
}

/** Now, as it is typed. */
export function typedNow(now: Date): string {
  const two = (part: number) => String(part).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}T${two(now.getHours())}:${two(now.getMinutes())}`;
}

import { Quotient, type Rates } from "../../src/index";
import type { SpotReading } from "../excel/rates/spotnote";
import { showFixed, showNumber } from "../wording/display";
import { TEXTS } from "../wording/texts";

const { age } = TEXTS.catalogue;

const HOURS = Quotient.of(24);
/** In days: one computer's clock may be a little ahead of another's. */
const AHEAD = 1 / 24;

/**
 * The sentence about the age of the spot on Rates; "" while it is within the person's limit, or where there is no limit.
 * @param now on the person's clock, as Excel's serial number
 */
export function spotAgeSentence({ time: read, ofAnother }: SpotReading, rates: Rates, now: number): string {
  const { spotAge: limit } = rates;
  if (limit === undefined) return "";
  if (ofAnother) return age.otherSpot;
  if (read === undefined) return age.noTime;
  if (read > now + AHEAD) return age.future;
  const hours = Quotient.of((now - read).toFixed(6)).times(HOURS);
  if (!hours.isGreaterThan(limit)) return "";
  return age.old(showHours(hours), showHours(limit));
}

/** Hours as days from two days on. */
function showHours(hours: Quotient): string {
  if (hours.isLessThan(Quotient.of(48))) return age.hours(showNumber(hours, hours.isLessThan(Quotient.of(10)) ? 1 : 0));
  const days = hours.dividedBy(HOURS);
  return age.days(showFixed(days, 0));
}

import { Quotient } from "../exact/quotient";
import type { Weight } from "../units/weight";

/** A gold article is exempt in the United Kingdom while all its metal weighs less than this. Source: Hallmarking Act 1973, Sch. 1 para. 12B. */
const HALLMARKED_FROM = Quotient.one;

/** Whether a piece needs a hallmark to be sold as gold in the United Kingdom. @param metal all its metal, not its gold alone */
export function isHallmarkedInUk(metal: Weight): boolean {
  return !metal.grams.isLessThan(HALLMARKED_FROM);
}

import { showList } from "../wording/display";
import { TEXTS } from "../wording/texts";
import { labelsOf } from "./faultplace";
import { missing, type Reckoning, type Typed, wrong } from "./reckoning";

/** Why an order makes no quote yet: the fields to look at, and those still to fill. */
export function refusalOf(reckoning: Reckoning, typed: Typed): string {
  const look = labelsOf(wrong(reckoning, typed), typed);
  const fill = labelsOf(missing(reckoning, typed), typed);
  return [
    ...(look.length > 0 ? [TEXTS.make.faulty(look.length, showList(look))] : []),
    ...(fill.length > 0 ? [TEXTS.make.missing(showList(fill))] : []),
  ].join(" ");
}

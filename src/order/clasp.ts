import type { Quotient } from "../exact/quotient";
import { accepted, faultOf, type Parsed, parseForm, refused } from "../reading/parse";
import { type ClaspKind, isCast } from "../trade/clasp";
import type { Currency } from "../units/currency";
import { type Money, money } from "../units/money";
import { grams, type Weight } from "../units/weight";
import { formOf } from "./fieldkinds";
import { LINE_FIELDS, LINE_LABELS } from "./fields";

/** A clasp as an order gives it. */
export interface ClaspParts {
  readonly kind: ClaspKind;
  /** In the unit of the chain's length. */
  readonly length: Quotient;
  /** Finished. */
  readonly weight: Weight;
  /** A bought clasp's price; for a cast one the bought parts and the work in it. */
  readonly cost: Money;
}

const FIELDS = formOf(LINE_FIELDS, "clasp", "claspLength", "claspWeight", "claspCost");

export function readClasp(record: Readonly<Record<string, unknown>>, currency: Currency): Parsed<ClaspParts> {
  const read = parseForm(FIELDS, record);
  if (!read.ok) return read;
  const { clasp, claspLength, claspWeight, claspCost } = read.value;
  return accepted({
    kind: clasp,
    length: claspLength,
    weight: grams(claspWeight),
    cost: money(claspCost, currency),
  });
}

/** A cast clasp needs its weight; none has no figures. */
export function checkClasp(parts: ClaspParts): Parsed<ClaspParts> {
  if (isCast(parts.kind) && parts.weight.grams.isZero()) {
    const said = "found no weight for a cast clasp; give its finished grams, such as 3.4";
    return refused([faultOf("claspWeight", LINE_LABELS.claspWeight, "blank", said)]);
  }
  if (parts.kind !== "none") return accepted(parts);
  const figures = { claspLength: parts.length, claspWeight: parts.weight.grams, claspCost: parts.cost.amount };
  const given = (["claspLength", "claspWeight", "claspCost"] as const).filter((key) => !figures[key].isZero());
  if (given.length === 0) return accepted(parts);
  return refused(
    given.map((key) => {
      const said = `found ${figures[key].value()} where there is no clasp; empty it, or choose a clasp`;
      return faultOf(key, LINE_LABELS[key], "outOfRange", said);
    }),
  );
}

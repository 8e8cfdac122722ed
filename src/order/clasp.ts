import type { Quotient } from "../exact/quotient";
import { accepted, faultOf, faultsOf, type Parsed, parseForm, refused } from "../reading/parse";
import type { BoughtPart, PartCost } from "../trade/boughtpart";
import { type ClaspKind, isCast } from "../trade/clasp";
import type { Currency } from "../units/currency";
import { grams, type Weight } from "../units/weight";
import { formOf } from "./fieldkinds";
import { LINE_FIELDS, LINE_LABELS } from "./fields";
import { checkPart, figureOf, readPartCost } from "./partcost";

/** A clasp as an order gives it. */
export interface ClaspParts extends BoughtPart {
  readonly kind: ClaspKind;
  /** In the unit of the chain's length. */
  readonly length: Quotient;
  /** Finished. */
  readonly weight: Weight;
  /** What a bought clasp costs; for a cast one the bought parts and the work in it. */
  readonly cost: PartCost;
}

const FIELDS = formOf(LINE_FIELDS, "clasp", "claspLength", "claspWeight", "claspMark");

export function readClasp(record: Readonly<Record<string, unknown>>, currency: Currency): Parsed<ClaspParts> {
  const read = parseForm(FIELDS, record);
  const cost = readPartCost("clasp", record, currency);
  if (!read.ok || !cost.ok) return refused(faultsOf(read, cost));
  const { clasp, claspLength, claspWeight, claspMark } = read.value;
  return accepted({
    kind: clasp,
    length: claspLength,
    weight: grams(claspWeight),
    mark: claspMark,
    cost: cost.value,
  });
}

/** A cast clasp needs its weight, and its gold is cast with the links; none has no figures. */
export function checkClasp(parts: ClaspParts): Parsed<ClaspParts> {
  if (isCast(parts.kind) && parts.weight.grams.isZero()) {
    const said = "found no weight for a cast clasp; give its finished grams, such as 3.4";
    return refused([faultOf("claspWeight", LINE_LABELS.claspWeight, "blank", said)]);
  }
  if (isCast(parts.kind) && parts.cost.by === "premium") {
    const said = `found ${figureOf(parts.cost).value()} beside a cast clasp, whose gold is cast with the links; empty it`;
    return refused([faultOf("claspPremium", LINE_LABELS.claspPremium, "outOfRange", said)]);
  }
  if (parts.kind !== "none") return checkPart("clasp", parts);
  const figures = {
    claspLength: parts.length,
    claspWeight: parts.weight.grams,
    [parts.cost.by === "money" ? "claspCost" : "claspPremium"]: figureOf(parts.cost),
  };
  const given = Object.entries(figures).filter(([, figure]) => !figure.isZero());
  if (given.length === 0) return accepted(parts);
  return refused(
    given.map(([key, figure]) => {
      const said = `found ${figure.value()} where there is no clasp; empty it, or choose a clasp`;
      return faultOf(key, LINE_LABELS[key as "claspLength"], "outOfRange", said);
    }),
  );
}

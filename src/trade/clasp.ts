import { MONEY_AT_LEAST_0, type NumberRule } from "../exact/numberrule";
import { Quotient } from "../exact/quotient";
import { fieldsNamed } from "../reading/formfields";
import { LINE_LABELS } from "../reading/orderwords";
import { faultOf, type Parsed, parseForm, refused } from "../reading/parse";

/** Clasps by what they do. A bought one's gold is in its cost; a cast one is cast with the links, in their alloy. */
export const CLASPS = ["bought lobster clasp", "cast box clasp", "cast hidden clasp", "none"] as const;
export type ClaspKind = (typeof CLASPS)[number];

/** The pieces a caster casts for one clasp. Source: common practice: box and tongue; the two halves of a hidden clasp. */
export const CLASP_PARTS: Readonly<Record<ClaspKind, number>> = {
  "bought lobster clasp": 0,
  "cast box clasp": 2,
  "cast hidden clasp": 2,
  none: 0,
};

/** A clasp as an order gives it, its length in the unit of the chain's. */
export interface ClaspGiven {
  readonly clasp: ClaspKind;
  readonly claspLength: Quotient;
  /** Grams, finished. */
  readonly claspWeight: Quotient;
  /** A bought clasp's price; for a cast one the bought parts and the work in it. */
  readonly claspCost: Quotient;
}

const LENGTH: NumberRule = { least: "0", most: "100000", right: "a length from 0, in the unit of the chain" };
const WEIGHT: NumberRule = { least: "0", most: "1000", right: "grams from 0, such as 3.4" };

const named = fieldsNamed(LINE_LABELS);
export const CLASP_FIELDS = {
  clasp: named.wordOr("clasp", CLASPS, "bought lobster clasp"),
  claspLength: named.numberOr("claspLength", LENGTH, Quotient.zero),
  claspWeight: named.numberOr("claspWeight", WEIGHT, Quotient.zero),
  claspCost: named.numberOr("claspCost", MONEY_AT_LEAST_0, Quotient.zero),
};

export function isCast(clasp: ClaspKind): boolean {
  return CLASP_PARTS[clasp] > 0;
}

/** Reads a clasp: a cast one needs its weight, none has no figures. */
export function parseClasp(record: Readonly<Record<string, unknown>>): Parsed<ClaspGiven> {
  const read = parseForm(CLASP_FIELDS, record);
  if (!read.ok) return read;
  const { clasp, claspLength, claspWeight, claspCost } = read.value;
  if (isCast(clasp) && claspWeight.isZero()) {
    const said = "found no weight for a cast clasp; give its finished grams, such as 3.4";
    return refused([faultOf("claspWeight", LINE_LABELS.claspWeight, "blank", said)]);
  }
  if (clasp !== "none") return read;
  const figures = { claspLength, claspWeight, claspCost };
  const given = (["claspLength", "claspWeight", "claspCost"] as const).filter((key) => !figures[key].isZero());
  if (given.length === 0) return read;
  return refused(
    given.map((key) => {
      const said = `found ${figures[key].value()} where there is no clasp; empty it, or choose a clasp`;
      return faultOf(key, LINE_LABELS[key], "outOfRange", said);
    }),
  );
}

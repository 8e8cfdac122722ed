import type { Quotient } from "../exact/quotient";
import { perGram } from "../gold/goldrate";
import { isBlank } from "../reading/number";
import { accepted, faultOf, type Parsed, parseForm, refused } from "../reading/parse";
import { type BoughtPart, moneyEach, type PartCost } from "../trade/boughtpart";
import type { Currency } from "../units/currency";
import { money } from "../units/money";
import { formOf } from "./fieldkinds";
import { LINE_FIELDS, LINE_LABELS } from "./fields";

/** The fields of each part that is bought. */
export const PART_KEYS = {
  clasp: { weight: "claspWeight", cost: "claspCost", premium: "claspPremium", mark: "claspMark" },
  findings: { weight: "findingsWeight", cost: "findingsCost", premium: "findingsPremium", mark: "findingsMark" },
} as const;
export type Part = keyof typeof PART_KEYS;

const FIELDS = { clasp: fieldsOf("clasp"), findings: fieldsOf("findings") };

/** Reads what a part costs: money each or a premium over its metal, not both; nothing is money that nobody has said. */
export function readPartCost(
  part: Part,
  record: Readonly<Record<string, unknown>>,
  currency: Currency,
): Parsed<PartCost> {
  const keys = PART_KEYS[part];
  const read = parseForm(FIELDS[part], { cost: record[keys.cost], premium: record[keys.premium] });
  if (!read.ok) {
    return refused(read.faults.map((fault) => ({ ...fault, field: keys[fault.field as "cost"] })));
  }
  const { cost, premium } = read.value;
  if (!premium) return accepted(moneyEach(money(cost, currency)));
  if (isBlank(record[keys.cost])) return accepted({ by: "premium", premium: perGram(premium, currency) });
  const said = `found ${premium.inWords()} beside ${LINE_LABELS[keys.cost].toLowerCase()}; give one of the two`;
  return refused([faultOf(keys.premium, LINE_LABELS[keys.premium], "outOfRange", said)]);
}

/** A part that is paid for by its weight needs one. */
export function checkPart<P extends BoughtPart>(part: Part, parts: P): Parsed<P> {
  if (parts.cost.by === "money" || !parts.weight.grams.isZero()) return accepted(parts);
  const { weight, premium } = PART_KEYS[part];
  const said = `found no weight beside ${LINE_LABELS[premium].toLowerCase()}; give its grams, such as 2.1`;
  return refused([faultOf(weight, LINE_LABELS[weight], "blank", said)]);
}

/** The money or the premium of a part. */
export function figureOf(cost: PartCost): Quotient {
  return cost.by === "money" ? cost.each.amount : cost.premium.perGram;
}

function fieldsOf(part: Part) {
  const { cost, premium } = PART_KEYS[part];
  return formOf({ cost: LINE_FIELDS[cost], premium: LINE_FIELDS[premium] }, "cost", "premium");
}

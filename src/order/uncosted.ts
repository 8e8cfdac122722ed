import { CostingError } from "../exact/errors";
import { meltValue } from "../gold/goldrate";
import type { Mark } from "../gold/mark";
import { isBlank } from "../reading/number";
import { type BoughtPart, markOfPart } from "../trade/boughtpart";
import { minorDigits } from "../units/currency";
import type { Money } from "../units/money";
import type { Weight } from "../units/weight";
import { LINE_LABELS, type LineKey } from "./fields";
import type { OrderLine } from "./orderline";
import { type AskedLine, goToField, keep, put, type Question, question } from "./question";

/** Something of a piece that costs money: where nobody has said how much, it would count as free. */
interface Cost {
  readonly field: LineKey;
  /** What it is, such as "the bought lobster clasp". */
  readonly thing: (asked: AskedLine) => Thing;
  /** Whether the piece has it. */
  readonly isThere: (asked: AskedLine) => boolean;
}

interface Thing {
  readonly name: string;
  readonly isMany: boolean;
}

/** Bought gold that costs money each, and so not less than the gold in it. */
interface BoughtGold extends Cost {
  readonly part: (line: OrderLine) => BoughtPart;
}

const CLASP: BoughtGold = {
  field: "claspCost",
  thing: ({ line }) => ({ name: `the ${line.clasp.kind}`, isMany: false }),
  // In a table nothing said of a clasp is a piece without one.
  isThere: ({ line: { clasp }, typed }) =>
    clasp.kind !== "none" &&
    !clasp.cast &&
    clasp.cost.by === "money" &&
    !(isBlank(typed.clasp) && isBlank(typed.claspWeight)),
  part: ({ clasp }) => clasp,
};

const FINDINGS: BoughtGold = {
  field: "findingsCost",
  thing: () => ({ name: "the other findings", isMany: true }),
  isThere: ({ line: { findings } }) =>
    findings.cost.by === "money" && (findings.what !== "" || !findings.weight.grams.isZero()),
  part: ({ findings }) => findings,
};

/** All that counts as free where its cost is blank, in whichever way a line is read. */
export const UNCOSTED: readonly Cost[] = [
  CLASP,
  FINDINGS,
  stones("links", "stonePrice"),
  stones("clasp", "claspStonePrice"),
];

const ENGRAVING: Cost = {
  field: "engravingCost",
  thing: () => ({ name: "the engraving", isMany: false }),
  isThere: ({ line }) => line.engraving !== "",
};

/** What of a line counts as nothing, and bought gold that costs less than it is worth, to be asked before a quote is made. */
export function uncostedQuestions(asked: AskedLine): readonly Question[] {
  const others = [...UNCOSTED.filter((cost) => cost !== CLASP), ENGRAVING];
  return [
    ...claspQuestions(asked),
    ...others.filter((cost) => isUncosted(cost, asked)).map((cost) => freeQuestion(cost, asked)),
    ...[CLASP, FINDINGS].flatMap((part) => meltQuestions(part, asked)),
  ];
}

/**
 * Refuses a row in which something counts as free because its cost is blank, or bought gold costs less than it is worth: beside a
 * table there is no button to ask at. 0 is free. Errors: blank, outOfRange.
 */
export function refuseUncosted(asked: AskedLine): void {
  for (const cost of UNCOSTED) {
    if (!isUncosted(cost, asked)) continue;
    const { name, isMany } = cost.thing(asked);
    const said = `found nothing for ${name}; give what ${isMany ? "they cost" : "it costs"}, or 0 for free`;
    throw new CostingError("blank", LINE_LABELS[cost.field], said);
  }
  for (const part of [CLASP, FINDINGS]) {
    const melt = meltAbove(part, asked);
    if (!melt) continue;
    const said = `found ${digits(melt.each)}, less than the ${digits(melt.gold)} that the gold in it is worth; give what it costs now, or 0 for free`;
    throw new CostingError("outOfRange", LINE_LABELS[part.field], said);
  }
}

function isUncosted(cost: Cost, asked: AskedLine): boolean {
  return isBlank(asked.typed[cost.field]) && cost.isThere(asked);
}

function freeQuestion({ field, thing }: Cost, asked: AskedLine): Question {
  const { name, isMany } = thing(asked);
  const said = `${capital(name)} ${isMany ? "have" : "has"} no cost. ${isMany ? "Are they" : "Is it"} free?`;
  return question(
    [field, name],
    said,
    goToField(isMany ? "Fill in their cost" : "Fill in its cost", field),
    put(isMany ? "Yes, they are free" : "Yes, it is free", { [field]: "0" }),
  );
}

/** Of a fitted clasp cost, weight and length are asked together; the parts of a cast one may really cost nothing. */
function claspQuestions(asked: AskedLine): readonly Question[] {
  const { clasp } = asked.line;
  if (clasp.kind === "none") return [];
  const lacking = (["claspCost", "claspWeight", "claspLength"] as const).filter(
    (field) => isBlank(asked.typed[field]) && (field !== "claspCost" || CLASP.isThere(asked)),
  );
  const [first] = lacking;
  if (first === undefined) return [];
  if (lacking.length === 1 && first === "claspCost") return [freeQuestion(CLASP, asked)];
  const named = lacking.map((field) => `no ${NAMES[field]}`);
  const said = `The ${clasp.kind} has ${listed(named)}. ${lacking.length > 1 ? "Do they" : "Does it"} count as 0?`;
  return [
    question(
      ["clasp", clasp.kind, ...lacking],
      said,
      goToField("Fill in its figures", first),
      ...(lacking.length === 3 ? [put("There is no clasp", { clasp: "none" })] : []),
      put("Yes, count 0", Object.fromEntries(lacking.map((field) => [field, "0"]))),
    ),
  ];
}

const NAMES = { claspCost: "cost", claspWeight: "weight", claspLength: "length" } as const;

function meltQuestions(part: BoughtGold, asked: AskedLine): readonly Question[] {
  const melt = meltAbove(part, asked);
  if (!melt) return [];
  const { each, gold, mark, weight } = melt;
  const shown = `${each.currency} ${digits(each)}`;
  const { name, isMany } = part.thing(asked);
  const [costs, of] = isMany ? ["cost", "their"] : ["costs", "its"];
  return [
    question(
      [part.field, ...[each.amount, weight.grams, mark.share].map((figure) => figure.inWords())],
      `${capital(name)} ${costs} ${shown}, but ${of} gold alone is worth ${each.currency} ${digits(gold)}. Is the cost right?`,
      goToField("Correct it", part.field),
      keep(`Yes, ${shown}`),
    ),
  ];
}

/** A part that costs less than its gold is worth. */
interface BelowMelt {
  readonly each: Money;
  readonly gold: Money;
  readonly mark: Mark;
  readonly weight: Weight;
}

/** A part that is free was given as free, and one that is paid for by its weight costs its gold in any case. */
function meltAbove({ field, part, isThere }: BoughtGold, asked: AskedLine): BelowMelt | undefined {
  const { line, spot, typed } = asked;
  const bought = part(line);
  const { cost, weight } = bought;
  if (isBlank(typed[field]) || cost.by !== "money" || !isThere(asked) || cost.each.amount.isZero()) return undefined;
  const mark = markOfPart(bought, line.mark);
  const gold = meltValue(weight, mark, spot);
  return cost.each.amount.isLessThan(gold.amount) ? { each: cost.each, gold, mark, weight } : undefined;
}

function stones(where: "links" | "clasp", field: LineKey): Cost {
  const setOf = ({ line }: AskedLine) => line.stones.find((set) => set.where === where);
  return {
    field,
    thing(asked) {
      const count = setOf(asked)?.count.inWords() ?? "0";
      const place = where === "links" ? "in the links" : "on the clasp";
      return { name: count === "1" ? `the stone ${place}` : `the ${count} stones ${place}`, isMany: count !== "1" };
    },
    isThere: (asked) => setOf(asked) !== undefined,
  };
}

/** An amount in the digits of its currency; nothing is computed from it. */
function digits({ amount, currency }: Money): string {
  const decimals = minorDigits(currency);
  return amount.rounded(decimals).toFixed(decimals);
}

function listed(words: readonly string[]): string {
  const before = words.slice(0, -1).join(", ");
  return [before, ...words.slice(-1)].filter((part) => part !== "").join(" and ");
}

function capital(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

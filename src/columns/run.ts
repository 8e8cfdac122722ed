import { BLOCK, type Block, ELSEWHERE, type Line, type Rows } from "./block";
import type { Input } from "./bounds";
import { type ColumnRule, isInside } from "./cells";
import { computeDoubles } from "./doubles";
import { computePairs } from "./pairs";
import { type Plan, planOf } from "./plan";
import type { Trace } from "./trace";

/** Ways through one formula that are remembered; a row that takes yet another goes to the exact reference. */
const MOST_PLANS = 24;
const MOST_KEYS = 200;

/**
 * The plans of a formula, one for each way through it. A formula is run once over exact quotients before a witness
 * (columntrace.ts); its steps with their bounds are a plan (columnplan.ts); rows that take the same turns are computed by the
 * plan in doubles or pairs of doubles, to the same bits.
 */
export class Plans {
  private readonly byWords = new Map<number, Plan[]>();

  constructor(private readonly inputs: readonly Input[]) {}

  /** Those that these words of a row, its choices, have led to so far. */
  of(words: number): readonly Plan[] {
    return this.byWords.get(words) ?? [];
  }

  /** Keeps a new way through the formula; undefined where it is known already, or cannot be computed in columns. */
  learn(words: number, trace: Trace): Plan | undefined {
    const known = this.byWords.get(words) ?? [];
    if (known.length >= MOST_PLANS || known.some(({ path }) => path === trace.path)) return undefined;
    const plan = planOf(trace, this.inputs);
    if (!plan) return undefined;
    if (this.byWords.size >= MOST_KEYS) this.byWords.clear();
    this.byWords.set(words, [...known, plan]);
    return plan;
  }

  /** Rows one by one often go the way of the one before: it is tried first from now on. */
  prefer(words: number, plan: Plan): void {
    const known = this.byWords.get(words) ?? [];
    const at = known.indexOf(plan);
    if (at <= 0) return;
    known.splice(at, 1);
    known.unshift(plan);
  }
}

/** A line of doubles, or the one word or truth of all rows. */
export type Output = Line | string | boolean;

/** Takes the rows computed: the k-th of `rows`, for each k with `open[k]` of 0; `open` is NONE where that is each. */
export type Taker = (rows: Rows, open: Uint8Array, outputs: readonly Output[]) => void;

const open = new Uint8Array(BLOCK);
const openByFours = new Uint32Array(open.buffer);
const given: Output[] = [];
const elsewhere = new Uint16Array(BLOCK);
const left = [new Uint16Array(BLOCK), new Uint16Array(BLOCK)] as const;

/**
 * Computes rows of a block by a plan: in doubles where every output may be decided there, the others as pairs, those at ties
 * with grains. Gives back the rows that are still open, and those that go another way.
 */
export function settle(plan: Plan, block: Block, rows: Rows, take: Taker): Rows {
  let rest = plan.rules.length === 0 ? rows : passing(plan, block, rows);
  let others = rows.count - rest.count;
  for (const tier of plan.plain ? ROUNDING : NEAREST) {
    if (rest.count === 0) break;
    if (rest.count === 1) open[0] = 0;
    else open.fill(0, 0, rest.count);
    const outputs = tier(plan, block, rest);
    const all = !isMarked(rest.count);
    take(rest, all ? NONE : open, outputs);
    if (all) {
      rest = { at: left[0], count: 0 };
      break;
    }
    const [into, from] = rest.at === left[0] ? [left[1], rest] : [left[0], rest];
    let kept = 0;
    for (let k = 0; k < from.count; k += 1) {
      if (open[k] === 0) continue;
      const row = from.at ? (from.at[k] ?? 0) : k;
      if (open[k] === ELSEWHERE) {
        elsewhere[others] = row;
        others += 1;
      } else {
        into[kept] = row;
        kept += 1;
      }
    }
    rest = { at: into, count: kept };
  }
  if (others === 0) return rest;
  const into = rest.at === left[0] ? left[1] : left[0];
  for (let k = 0; k < rest.count; k += 1) into[k] = rest.at?.[k] ?? k;
  for (let k = 0; k < others; k += 1) into[rest.count + k] = elsewhere[k] ?? 0;
  return { at: into, count: rest.count + others };
}

/** Marks of rows of which none is open. */
export const NONE = new Uint8Array(BLOCK);

/** Whether a row is open, or one beyond them was by chance. */
function isMarked(count: number): boolean {
  let marks = 0;
  for (let four = 0; four * 4 < count; four += 1) marks |= openByFours[four] ?? 0;
  return marks !== 0;
}

/** The rows whose cells pass the plan's rules; the others are put down as going elsewhere. */
function passing(plan: Plan, block: Block, rows: Rows): Rows {
  const { at, count } = rows;
  open.fill(0, 0, count);
  for (const { input, rule } of plan.rules) {
    const values = block.columns[input]?.values;
    if (values) markOutside(values, rule, rows);
  }
  const firstOut = open.indexOf(ELSEWHERE);
  if (firstOut < 0 || firstOut >= count) return rows;
  const into = at === left[0] ? left[1] : left[0];
  let kept = 0;
  let others = 0;
  for (let k = 0; k < count; k += 1) {
    const row = at ? (at[k] ?? 0) : k;
    if (open[k] === 0) {
      into[kept] = row;
      kept += 1;
    } else {
      elsewhere[others] = row;
      others += 1;
    }
  }
  return { at: into, count: kept };
}

function markOutside(values: Line, rule: ColumnRule, { at, count }: Rows): void {
  const { least, most, zero } = rule;
  for (let k = 0; k < count; k += 1) {
    const value = values[at ? (at[k] ?? 0) : k] ?? 0;
    // Nearly all are plainly inside.
    if (value >= least && value <= most && !rule.whole) continue;
    if (!(value === 0 && zero) && !isInside(value, rule)) open[k] = ELSEWHERE;
  }
}

/**
 * Computes rows by the plans that are known, then row by row exactly, by what is learned from each.
 * @param exact computes a row, and gives back a plan learned from it
 */
export function settleAll(
  plans: readonly Plan[],
  block: Block,
  rows: Rows,
  take: Taker,
  exact: (row: number) => Plan | undefined,
): void {
  let rest = rows;
  for (const plan of plans) {
    if (rest.count === 0) return;
    rest = settle(plan, block, rest, take);
  }
  while (rest.count > 0) {
    const at = rest.at?.slice(0, rest.count) ?? Uint16Array.from({ length: rest.count }, (_, row) => row);
    const plan = exact(at[0] ?? 0);
    rest = { at: at.subarray(1), count: at.length - 1 };
    if (plan && rest.count > 0) rest = settle(plan, block, rest, take);
  }
}

type Tier = (plan: Plan, block: Block, rows: Rows) => readonly Output[];

const doubles: Tier = (plan, block, rows) => {
  const lines = computeDoubles(plan, block, rows, open);
  return outputsOf(plan, (at) => lines[at]);
};
const pairs: Tier = (plan, block, rows) => pairOutputs(plan, block, rows, false);
const proofs: Tier = (plan, block, rows) => pairOutputs(plan, block, rows, true);

const ROUNDING = [doubles, proofs];
const NEAREST = [pairs, proofs];

function pairOutputs(plan: Plan, block: Block, rows: Rows, proves: boolean): readonly Output[] {
  const made = computePairs(plan, block, rows, open, proves);
  return outputsOf(plan, (at) => made[at]?.high);
}

/** Good until the next rows are computed. */
function outputsOf({ outputs }: Plan, lineAt: (at: number) => Line | undefined): readonly Output[] {
  // To set a length takes longer than to compute a step.
  if (given.length !== outputs.length) given.length = outputs.length;
  for (let k = 0; k < outputs.length; k += 1) {
    const output = outputs[k];
    const made = typeof output === "number" ? lineAt(output) : output;
    if (made === undefined) throw new Error("Columns: an output has no step");
    given[k] = made;
  }
  return given;
}

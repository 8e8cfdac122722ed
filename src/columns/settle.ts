import { ALL_DECIDED, type Output, type Taker } from "./answers";
import type { Block } from "./block";
import { type ColumnRule, isInside } from "./cells";
import { computeDoubles } from "./doubles";
import { type Line, OTHER_PATH, type Rows } from "./lines";
import { computePairs } from "./pairs";
import type { Plan } from "./plan";
import type { Scratch } from "./scratch";

/**
 * Computes rows of a block by a plan: first in doubles, where doubles can decide every output; what they leave as pairs; and ties
 * with grains. Gives back the rows that are still undecided, and those that take another way through the formula.
 */
export function settle(plan: Plan, block: Block, rows: Rows, scratch: Scratch, first: number, taker: Taker): Rows {
  const { open, left, otherPath } = scratch;
  let rest = plan.rules.length === 0 ? rows : passing(plan, block, rows, scratch);
  let others = rows.count - rest.count;
  for (const tier of plan.plain ? ROUNDING : NEAREST) {
    if (rest.count === 0) break;
    if (rest.count === 1) open[0] = 0;
    else open.fill(0, 0, rest.count);
    const outputs = tier(plan, block, rest, scratch);
    const all = !isMarked(scratch, rest.count);
    taker.take(first, rest, all ? ALL_DECIDED : open, outputs);
    if (all) {
      rest = { at: left[0], count: 0 };
      break;
    }
    const [into, from] = rest.at === left[0] ? [left[1], rest] : [left[0], rest];
    let kept = 0;
    for (let k = 0; k < from.count; k += 1) {
      if (open[k] === 0) continue;
      const row = from.at ? (from.at[k] ?? 0) : k;
      if (open[k] === OTHER_PATH) {
        otherPath[others] = row;
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
  for (let k = 0; k < others; k += 1) into[rest.count + k] = otherPath[k] ?? 0;
  return { at: into, count: rest.count + others };
}

/** Whether a row is marked. The last four may hold old marks beyond the rows: then the rows are gone through, which does no harm. */
function isMarked({ openByFours }: Scratch, count: number): boolean {
  let marks = 0;
  for (let four = 0; four * 4 < count; four += 1) marks |= openByFours[four] ?? 0;
  return marks !== 0;
}

/** The rows whose cells pass the plan's rules; the others are kept as rows of another path. */
function passing(plan: Plan, block: Block, rows: Rows, { open, left, otherPath }: Scratch): Rows {
  const { at, count } = rows;
  open.fill(0, 0, count);
  for (const { input, rule } of plan.rules) {
    const values = block.columns[input]?.values;
    if (values) markOutside(values, rule, rows, open);
  }
  const firstOut = open.indexOf(OTHER_PATH);
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
      otherPath[others] = row;
      others += 1;
    }
  }
  return { at: into, count: kept };
}

function markOutside(values: Line, rule: ColumnRule, { at, count }: Rows, open: Uint8Array): void {
  const { least, most, zero } = rule;
  for (let k = 0; k < count; k += 1) {
    const value = values[at ? (at[k] ?? 0) : k] ?? 0;
    // Nearly all cells end here.
    if (value >= least && value <= most && !rule.whole) continue;
    if (!(value === 0 && zero) && !isInside(value, rule)) open[k] = OTHER_PATH;
  }
}

type Tier = (plan: Plan, block: Block, rows: Rows, scratch: Scratch) => readonly Output[];

const doubles: Tier = (plan, block, rows, scratch) => {
  const lines = computeDoubles(plan, block, rows, scratch);
  return outputsOf(plan, (at) => lines[at], scratch);
};
const pairs: Tier = (plan, block, rows, scratch) => pairOutputs(plan, block, rows, scratch, false);
const proofs: Tier = (plan, block, rows, scratch) => pairOutputs(plan, block, rows, scratch, true);

const ROUNDING = [doubles, proofs];
const NEAREST = [pairs, proofs];

function pairOutputs(plan: Plan, block: Block, rows: Rows, scratch: Scratch, proves: boolean): readonly Output[] {
  const made = computePairs(plan, block, rows, scratch, proves);
  return outputsOf(plan, (at) => made[at]?.high, scratch);
}

/** The outputs, good until the run's next rows are computed. */
function outputsOf(
  { outputs }: Plan,
  lineAt: (at: number) => Line | undefined,
  { outputs: given }: Scratch,
): readonly Output[] {
  // Setting a length takes longer than computing a step.
  if (given.length !== outputs.length) given.length = outputs.length;
  for (let k = 0; k < outputs.length; k += 1) {
    const output = outputs[k];
    const made = typeof output === "number" ? lineAt(output) : output;
    if (made === undefined) throw new Error("Columns: an output has no step");
    given[k] = made;
  }
  return given;
}

import type { Block } from "./block";
import type { Constant } from "./bounds";
import { grainDecimals, grainProduct, grainQuotient, grainSum } from "./denominators";
import { fillLine, gathered, type Line, type Rows } from "./lines";
import { addPairs, choosePairs, dividePairs, multiplyPairs, readDecimals } from "./pairmath";
import {
  checkPairComparison,
  checkPairDifference,
  checkPairSign,
  makePairWhole,
  nearestDouble,
  roundPair,
} from "./pairproofs";
import type { Plan, PlannedStep } from "./plan";
import { NOTHING, type PairRows, type Scratch } from "./scratch";

const NONE: PairRows = { high: NOTHING, low: NOTHING, grains: undefined };

/**
 * Computes the plan's steps for these rows as pairs; marks in `open` the rows that pairs cannot decide. With `proves`, ties and
 * equalities are proved by grains; without, a row at a tie stays undecided.
 */
export function computePairs(
  plan: Plan,
  block: Block,
  rows: Rows,
  scratch: Scratch,
  proves: boolean,
): readonly PairRows[] {
  const { count } = rows;
  const { pairs, open } = scratch;
  for (let at = 0; at < plan.steps.length; at += 1) {
    const step = plan.steps[at];
    if (!step) continue;
    const out = scratch.pairsOf(at, proves);
    pairs[at] = out;
    if (step.bound.constant) fillConstant(step.bound.constant, out, count);
    else if (step.shared) computeShared(step, out, block, scratch, count);
    else compute(step, out, block, rows, scratch, open);
  }
  for (const at of plan.signed) checkPairSign(rowsOf(pairs, at), plan.steps[at]?.bound.sign ?? 1, count, open);
  for (const comparison of plan.comparisons) {
    const b = comparison.b === undefined ? undefined : rowsOf(pairs, comparison.b);
    checkPairComparison(comparison, rowsOf(pairs, comparison.a), b, count, open);
  }
  for (const at of plan.nearest) nearestDouble(rowsOf(pairs, at), plan.steps[at]?.bound.pair ?? 1, count, open);
  return pairs;
}

function rowsOf(pairs: readonly PairRows[], at: number): PairRows {
  return pairs[at] ?? NONE;
}

function compute(step: PlannedStep, out: PairRows, block: Block, rows: Rows, scratch: Scratch, open: Uint8Array): void {
  const { kind, bound } = step;
  const { count } = rows;
  const { pairs } = scratch;
  const a = rowsOf(pairs, step.a);
  if (kind === "input") readInput(block, step.input, rows, out, scratch, open);
  else if (kind === "decimals") roundPair(a, step, out, count, open);
  else if (kind === "ceil" || kind === "floor") makePairWhole(a, step, out, count, open);
  else {
    const b = rowsOf(pairs, step.b);
    combine(kind, a, b, out, count);
    if (bound.differs) checkPairDifference(out, a, b, step, count, open);
  }
}

const ONE: Rows = { at: undefined, count: 1 };

/** A step that has one value for all rows is computed once. */
function computeShared(step: PlannedStep, out: PairRows, block: Block, scratch: Scratch, count: number): void {
  const { openOne, open } = scratch;
  openOne[0] = 0;
  compute(step, out, block, ONE, scratch, openOne);
  if (openOne[0]) open.fill(openOne[0], 0, count);
  spread(out.high, count);
  spread(out.low, count);
  if (!out.grains) return;
  spread(out.grains.power, count);
  spread(out.grains.count, count);
}

function fillConstant({ high, low, grain }: Constant, out: PairRows, count: number): void {
  fillLine(out.high, high, count);
  fillLine(out.low, low, count);
  if (!out.grains) return;
  fillLine(out.grains.power, grain.power, count);
  fillLine(out.grains.count, grain.count, count);
}

function spread(line: Line, count: number): void {
  fillLine(line, line[0] ?? 0, count);
}

function combine(kind: PlannedStep["kind"], a: PairRows, b: PairRows, out: PairRows, count: number): void {
  if (kind === "times") multiplyPairs(a, b, out, count);
  else if (kind === "dividedBy") dividePairs(a, b, out, count);
  else if (kind === "larger" || kind === "smaller") choosePairs(a, b, kind === "larger" ? 1 : -1, out, count);
  else addPairs(a, b, kind === "minus" ? -1 : 1, out, count);
  if (!a.grains || !b.grains || !out.grains) return;
  if (kind === "times") grainProduct(a.grains, b.grains, out.grains, count);
  else if (kind === "dividedBy") grainQuotient(a.grains, b.grains, b.high, out.grains, count);
  else grainSum(a.grains, b.grains, out.grains, count);
}

function readInput(
  block: Block,
  input: number,
  rows: Rows,
  out: PairRows,
  { values, parts: partsOfRows, digits, powers }: Scratch,
  open: Uint8Array,
): void {
  const column = block.columns[input];
  if (!column) return;
  const { count } = rows;
  const cells = gathered(column.values, column.single, rows, values);
  readDecimals(cells, digits, powers, out, count, open);
  if (out.grains) grainDecimals(digits, powers, out.grains, count);
  if (!column.parts) return;
  const parts = gathered(column.parts, column.single, rows, partsOfRows);
  dividePairs(out, { high: parts, low: NOTHING }, out, count);
  for (let i = 0; i < count; i += 1) {
    const part = parts[i] ?? 0;
    const word = part === 0 ? block.words.at(cells[i] ?? 0) : undefined;
    if (word) {
      out.high[i] = word.high;
      out.low[i] = word.low;
    }
    if (!out.grains) continue;
    const { power, count: counted } = word?.grain ?? { power: out.grains.power[i] ?? 0, count: part };
    out.grains.power[i] = power;
    out.grains.count[i] = counted;
  }
}

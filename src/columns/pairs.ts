import { type Block, type Column, gathered, type Line, lineOf, type Rows } from "./block";
import { type PairRows, pairRows } from "./buffers";
import { grainDecimals, grainEither, grainProduct, grainQuotient, grainSum } from "./denominators";
import { markWordAt } from "./markcells";
import { addPairs, choosePairs, dividePairs, multiplyPairs, readDecimals } from "./pairmath";
import {
  checkPairDifference,
  checkPairFork,
  checkPairSign,
  makePairWhole,
  nearestDouble,
  roundPair,
} from "./pairproofs";
import type { Move, Plan } from "./plan";

const gatheredValues = lineOf();
const gatheredParts = lineOf();
const digits = lineOf();
const powers = lineOf();
const nothing = lineOf();
const none: PairRows = { high: nothing, low: nothing, grains: undefined };
const made: PairRows[] = [];

/**
 * The plan's steps for these rows, as pairs; marks in `open` the rows that pairs cannot decide. With `proves`, ties and
 * equalities are proved by grains; without, a row at a tie stays open.
 */
export function computePairs(
  plan: Plan,
  block: Block,
  rows: Rows,
  open: Uint8Array,
  proves: boolean,
): readonly PairRows[] {
  const { count } = rows;
  for (let at = 0; at < plan.moves.length; at += 1) {
    const move = plan.moves[at];
    if (!move) continue;
    const { constant } = move.place;
    if (constant) {
      made[at] = constant;
      continue;
    }
    const out = pairRows(at, proves);
    made[at] = move.shared ? shared(move, out, block, count, open) : computed(move, out, block, rows, open);
  }
  for (const at of plan.signed) checkPairSign(rowsOf(at), plan.moves[at]?.place.sign ?? 1, count, open);
  for (const fork of plan.forks)
    checkPairFork(fork, rowsOf(fork.a), fork.b === undefined ? undefined : rowsOf(fork.b), count, open);
  for (const at of plan.nearest) nearestDouble(rowsOf(at), plan.moves[at]?.place.pair ?? 1, count, open);
  return made;
}

function rowsOf(at: number): PairRows {
  return made[at] ?? none;
}

function computed(move: Move, out: PairRows, block: Block, rows: Rows, open: Uint8Array): PairRows {
  const { kind, place } = move;
  const { count } = rows;
  const a = rowsOf(move.a);
  if (kind === "input") readInput(block.columns[move.input], rows, out, open);
  else if (kind === "decimals") roundPair(a, move, out, count, open);
  else if (kind === "ceil" || kind === "floor") makePairWhole(a, move, out, count, open);
  else {
    const b = rowsOf(move.b);
    combine(kind, a, b, out, count);
    if (place.differs) checkPairDifference(out, a, b, move, count, open);
  }
  return out;
}

const ONE: Rows = { at: undefined, count: 1 };
const openOne = new Uint8Array(1);

/** A step that is the same for all rows: computed once. */
function shared(move: Move, out: PairRows, block: Block, count: number, open: Uint8Array): PairRows {
  openOne[0] = 0;
  computed(move, out, block, ONE, openOne);
  if (openOne[0]) open.fill(openOne[0], 0, count);
  spread(out.high, count);
  spread(out.low, count);
  if (out.grains) {
    spread(out.grains.power, count);
    spread(out.grains.count, count);
  }
  return out;
}

function spread(line: Line, count: number): void {
  line.fill(line[0] ?? 0, 0, count);
}

function combine(kind: Move["kind"], a: PairRows, b: PairRows, out: PairRows, count: number): void {
  if (kind === "times") multiplyPairs(a, b, out, count);
  else if (kind === "dividedBy") dividePairs(a, b, out, count);
  else if (kind === "larger" || kind === "smaller") choosePairs(a, b, kind === "larger" ? 1 : -1, out, count);
  else addPairs(a, b, kind === "minus" ? -1 : 1, out, count);
  if (!a.grains || !b.grains || !out.grains) return;
  if (kind === "times") grainProduct(a.grains, b.grains, out.grains, count);
  else if (kind === "dividedBy") grainQuotient(a.grains, b.grains, b.high, out.grains, count);
  else if (kind === "larger" || kind === "smaller") grainEither(a.grains, b.grains, out.grains, count);
  else grainSum(a.grains, b.grains, out.grains, count);
}

function readInput(column: Column | undefined, rows: Rows, out: PairRows, open: Uint8Array): void {
  if (!column) return;
  const { count } = rows;
  const values = gathered(column.values, column.single, rows, gatheredValues);
  if (!column.parts) {
    readDecimals(values, digits, powers, out, count, open);
    if (out.grains) grainDecimals(digits, powers, out.grains, count);
    return;
  }
  const parts = gathered(column.parts, column.single, rows, gatheredParts);
  readDecimals(values, digits, powers, out, count, open);
  if (out.grains) grainDecimals(digits, powers, out.grains, count);
  dividePairs(out, { high: parts, low: nothing }, out, count);
  for (let i = 0; i < count; i += 1) {
    const part = parts[i] ?? 0;
    const word = part === 0 ? markWordAt(values[i] ?? 0) : undefined;
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

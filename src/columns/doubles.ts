import type { Block } from "./block";
import { SLACK, SPARE } from "./bounds";
import { ELSEWHERE, fillLine, gathered, type Line, OPEN, type Rows } from "./lines";
import type { MarkWords } from "./markcells";
import { EXACT_TENS, WHOLE_MAKER } from "./pairmath";
import type { Fork, Move, Plan } from "./plan";
import { NOTHING, type Scratch } from "./scratch";

/*
 * A plan in plain doubles: each step is one loop over the rows. The bounds that every "certain" below rests on are proved in
 * columnplace.ts. A row that is not certain is marked in `open`.
 */

const WHOLE_LIMIT = 2 ** 52;
/** Below this WHOLE_MAKER makes the nearest whole number. */
const WHOLE_MADE = 2 ** 51;

/** The plan's steps for these rows, as one line a step; marks in `open` the rows that doubles cannot decide. */
export function computeDoubles(plan: Plan, block: Block, rows: Rows, scratch: Scratch): readonly Line[] {
  const { lines, open } = scratch;
  for (let at = 0; at < plan.moves.length; at += 1) {
    const move = plan.moves[at];
    if (!move) continue;
    lines[at] = addsNothing(move, plan, block) ? rowsOf(lines, move.a) : computed(move, at, block, rows, scratch);
  }
  for (const at of plan.signed) {
    const { input, place } = plan.moves[at] ?? {};
    const sign = place?.sign ?? 1;
    const line = rowsOf(lines, at);
    if (input === undefined || !block.columns[input]?.single) checkSign(line, sign, rows.count, open);
    else if (!((line[0] ?? 0) * sign >= 0)) open.fill(ELSEWHERE, 0, rows.count);
  }
  for (const fork of plan.forks) {
    if (rows.count === 1 && open[0] === ELSEWHERE) break;
    if (!fork.implied) checkFork(fork, lines, rows.count, open);
  }
  for (const at of plan.wholes) checkWhole(rowsOf(lines, at), rows.count, open);
  return lines;
}

function rowsOf(lines: readonly Line[], at: number): Line {
  return lines[at] ?? NOTHING;
}

/** Such as other costs that are left out: one cell of zero for all rows. */
function addsNothing({ kind, b }: Move, { moves }: Plan, block: Block): boolean {
  const added = moves[b];
  if (kind !== "plus" || added?.kind !== "input") return false;
  const column = block.columns[added.input];
  return column?.single === true && column.values[0] === 0 && !column.parts;
}

function computed(move: Move, at: number, block: Block, rows: Rows, scratch: Scratch): Line {
  const { kind, place } = move;
  const { count } = rows;
  const { lines, open } = scratch;
  const out = scratch.lineOf(at);
  if (kind === "input") return inputs(block, move.input, rows, out, scratch);
  if (kind === "constant") return fillLine(out, place.constant?.high ?? 0, byFours(count));
  const a = rowsOf(lines, move.a);
  if (kind === "decimals") return round(a, move, out, count, open);
  if (kind === "ceil" || kind === "floor") return makeWhole(a, move, out, count, open);
  const b = rowsOf(lines, move.b);
  if (kind === "times") return multiply(a, b, out, count);
  if (kind === "dividedBy") return divide(a, b, out, count);
  if (kind === "larger" || kind === "smaller") return choose(a, b, kind === "larger" ? 1 : -1, out, count);
  if (place.differs) return differ(a, b, kind === "minus" ? -1 : 1, place.sign, out, count, open);
  return kind === "plus" ? add(a, b, out, count) : subtract(a, b, out, count);
}

/** Rows that the loops below go through. */
function byFours(count: number): number {
  return (count + 3) & ~3;
}

function inputs(block: Block, input: number, rows: Rows, into: Line, scratch: Scratch): Line {
  const column = block.columns[input];
  if (!column) return NOTHING;
  const values = gathered(column.values, column.single, rows, into);
  if (!column.parts) return values;
  return shares(values, gathered(column.parts, column.single, rows, scratch.parts), block.words, into, rows.count);
}

function shares(values: Line, parts: Line, words: MarkWords, out: Line, count: number): Line {
  for (let i = 0; i < count; i += 1) {
    const part = parts[i] ?? 0;
    const value = values[i] ?? 0;
    out[i] = part === 0 ? (words.at(value)?.high ?? 0) : value / part;
  }
  return out;
}

// Four rows at a time take half the time of one at a time; lines are long enough for the last ones.

function add(a: Line, b: Line, out: Line, count: number): Line {
  for (let i = 0; i < count; i += 4) {
    out[i] = (a[i] ?? 0) + (b[i] ?? 0);
    out[i + 1] = (a[i + 1] ?? 0) + (b[i + 1] ?? 0);
    out[i + 2] = (a[i + 2] ?? 0) + (b[i + 2] ?? 0);
    out[i + 3] = (a[i + 3] ?? 0) + (b[i + 3] ?? 0);
  }
  return out;
}

function multiply(a: Line, b: Line, out: Line, count: number): Line {
  for (let i = 0; i < count; i += 4) {
    out[i] = (a[i] ?? 0) * (b[i] ?? 0);
    out[i + 1] = (a[i + 1] ?? 0) * (b[i + 1] ?? 0);
    out[i + 2] = (a[i + 2] ?? 0) * (b[i + 2] ?? 0);
    out[i + 3] = (a[i + 3] ?? 0) * (b[i + 3] ?? 0);
  }
  return out;
}

function divide(a: Line, b: Line, out: Line, count: number): Line {
  for (let i = 0; i < count; i += 4) {
    out[i] = (a[i] ?? 0) / (b[i] ?? 0);
    out[i + 1] = (a[i + 1] ?? 0) / (b[i + 1] ?? 0);
    out[i + 2] = (a[i + 2] ?? 0) / (b[i + 2] ?? 0);
    out[i + 3] = (a[i + 3] ?? 0) / (b[i + 3] ?? 0);
  }
  return out;
}

function subtract(a: Line, b: Line, out: Line, count: number): Line {
  for (let i = 0; i < count; i += 4) {
    out[i] = (a[i] ?? 0) - (b[i] ?? 0);
    out[i + 1] = (a[i + 1] ?? 0) - (b[i + 1] ?? 0);
    out[i + 2] = (a[i + 2] ?? 0) - (b[i + 2] ?? 0);
    out[i + 3] = (a[i + 3] ?? 0) - (b[i + 3] ?? 0);
  }
  return out;
}

/** The larger, or with -1 the smaller. */
function choose(a: Line, b: Line, sign: 1 | -1, out: Line, count: number): Line {
  for (let i = 0; i < count; i += 1) {
    const x = a[i] ?? 0;
    const y = b[i] ?? 0;
    out[i] = (x - y) * sign >= 0 ? x : y;
  }
  return out;
}

/** Certain where the value is further from the tie than its bound; which of two wholes is taken at a tie does not matter then. */
function round(a: Line, { decimals, double }: Move, out: Line, count: number, open: Uint8Array): Line {
  const scale = EXACT_TENS[decimals] ?? Number.NaN;
  const spread = (double + 2 ** -52) * SLACK;
  for (let i = 0; i < count; i += 2) {
    const first = (a[i] ?? 0) * scale;
    const second = (a[i + 1] ?? 0) * scale;
    const nearFirst = first + WHOLE_MAKER - WHOLE_MAKER;
    const nearSecond = second + WHOLE_MAKER - WHOLE_MAKER;
    out[i] = nearFirst / scale;
    out[i + 1] = nearSecond / scale;
    if (isCertain(first, nearFirst, spread) && isCertain(second, nearSecond, spread)) continue;
    if (!isCertain(first, nearFirst, spread)) open[i] = OPEN;
    if (!isCertain(second, nearSecond, spread) && i + 1 < count) open[i + 1] = OPEN;
  }
  return out;
}

/** A value that is no number is not certain either. */
function isCertain(value: number, nearest: number, spread: number): boolean {
  const size = Math.abs(value);
  return 1 / 2 - Math.abs(value - nearest) > spread * size && size < WHOLE_MADE;
}

/** Certain where the value is further from a whole number than its bound, or is one without error. */
function makeWhole(a: Line, { kind, double }: Move, out: Line, count: number, open: Uint8Array): Line {
  const up = kind === "ceil";
  const spread = double * SLACK;
  for (let i = 0; i < count; i += 1) {
    const value = a[i] ?? 0;
    out[i] = up ? Math.ceil(value) : Math.floor(value);
    const apart = Math.abs(value - Math.round(value));
    const reach = spread * Math.abs(value);
    if (!((apart > reach || reach === 0) && Math.abs(value) < WHOLE_LIMIT)) open[i] = OPEN;
  }
  return out;
}

/** a + b or a - b, open where it is too small beside them or not of the sign it had. */
function differ(a: Line, b: Line, add: 1 | -1, sign: number, out: Line, count: number, open: Uint8Array): Line {
  const least = SLACK / SPARE.double;
  for (let i = 0; i < count; i += 1) {
    const x = a[i] ?? 0;
    const y = b[i] ?? 0;
    const difference = x + y * add;
    out[i] = difference;
    const size = difference * sign;
    const enough = (Math.abs(x) + Math.abs(y)) * least;
    if (!(size >= enough && size > 0)) open[i] = size < 0 && -size >= enough ? ELSEWHERE : OPEN;
  }
  return out;
}

function checkSign(a: Line, sign: number, count: number, open: Uint8Array): void {
  for (let i = 0; i < count; i += 1) if (!((a[i] ?? 0) * sign >= 0)) open[i] = ELSEWHERE;
}

function checkFork(
  { a: left, b: right, below, level, above, double }: Fork,
  lines: readonly Line[],
  count: number,
  open: Uint8Array,
): void {
  const a = rowsOf(lines, left);
  const b = right === undefined ? NOTHING : rowsOf(lines, right);
  const spread = double * SLACK;
  for (let i = 0; i < count; i += 1) {
    const x = a[i] ?? 0;
    const y = b[i] ?? 0;
    const apart = x - y;
    const reach = spread * (Math.abs(x) + Math.abs(y));
    // A certain answer that the plan does not have leads elsewhere.
    if (apart > reach) {
      if (!above) open[i] = ELSEWHERE;
    } else if (apart < -reach) {
      if (!below) open[i] = ELSEWHERE;
    } else if (!(level && reach === 0 && apart === 0)) open[i] = OPEN;
  }
}

function checkWhole(a: Line, count: number, open: Uint8Array): void {
  for (let i = 0; i < count; i += 1) if (!(Math.abs(a[i] ?? 0) < WHOLE_LIMIT)) open[i] = OPEN;
}

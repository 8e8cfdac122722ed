import type { Block } from "./block";
import { SLACK, SPARE } from "./bounds";
import { fillLine, gathered, type Line, OTHER_PATH, type Rows, UNDECIDED } from "./lines";
import type { MarkWords } from "./markcells";
import { EXACT_TENS, WHOLE_MAKER } from "./pairmath";
import type { Plan, PlannedComparison, PlannedStep } from "./plan";
import { NOTHING, type Scratch } from "./scratch";

/*
 * A plan in plain doubles: each step is one loop over the rows. Where a row is called certain below, bounds.ts proves it. Others are
 * marked in `open`.
 */

const WHOLE_LIMIT = 2 ** 52;
/** Below this, adding and taking away WHOLE_MAKER gives the nearest whole number. */
const WHOLE_MADE = 2 ** 51;

/** Computes the plan's steps for these rows, a line for each; marks in `open` the rows that doubles cannot decide. */
export function computeDoubles(plan: Plan, block: Block, rows: Rows, scratch: Scratch): readonly Line[] {
  const { lines, open } = scratch;
  for (let at = 0; at < plan.steps.length; at += 1) {
    const step = plan.steps[at];
    if (!step) continue;
    lines[at] = addsNothing(step, plan, block) ? rowsOf(lines, step.a) : computed(step, at, block, rows, scratch);
  }
  for (const at of plan.signed) {
    const { input, bound } = plan.steps[at] ?? {};
    const sign = bound?.sign ?? 1;
    const line = rowsOf(lines, at);
    if (input === undefined || !block.columns[input]?.single) checkSign(line, sign, rows.count, open);
    else if (!((line[0] ?? 0) * sign >= 0)) open.fill(OTHER_PATH, 0, rows.count);
  }
  for (const comparison of plan.comparisons) {
    if (rows.count === 1 && open[0] === OTHER_PATH) break;
    if (!comparison.implied) checkComparison(comparison, lines, rows.count, open);
  }
  for (const at of plan.wholes) checkWhole(rowsOf(lines, at), rows.count, open);
  return lines;
}

function rowsOf(lines: readonly Line[], at: number): Line {
  return lines[at] ?? NOTHING;
}

/** Whether a sum adds one cell of zero to every row, such as other costs that are left out. */
function addsNothing({ kind, b }: PlannedStep, { steps }: Plan, block: Block): boolean {
  const added = steps[b];
  if (kind !== "plus" || added?.kind !== "input") return false;
  const column = block.columns[added.input];
  return column?.single === true && column.values[0] === 0 && !column.parts;
}

function computed(step: PlannedStep, at: number, block: Block, rows: Rows, scratch: Scratch): Line {
  const { kind, bound } = step;
  const { count } = rows;
  const { lines, open } = scratch;
  const out = scratch.lineOf(at);
  if (kind === "input") return inputs(block, step.input, rows, out, scratch);
  if (kind === "constant") return fillLine(out, bound.constant?.high ?? 0, count);
  const a = rowsOf(lines, step.a);
  if (kind === "decimals") return round(a, step, out, count, open);
  if (kind === "ceil" || kind === "floor") return makeWhole(a, step, out, count, open);
  const b = rowsOf(lines, step.b);
  if (kind === "times") return multiply(a, b, out, count);
  if (kind === "dividedBy") return divide(a, b, out, count);
  if (kind === "larger" || kind === "smaller") return choose(a, b, kind === "larger" ? 1 : -1, out, count);
  if (bound.differs) return differ(a, b, kind === "minus" ? -1 : 1, bound.sign, out, count, open);
  return kind === "plus" ? add(a, b, out, count) : subtract(a, b, out, count);
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

// Four rows at once take half the time of one by one; lines have room for the last four.

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

/** Certain where the value is further from every tie than its bound. So it does not matter to which side ties go here. */
function round(a: Line, { decimals, double }: PlannedStep, out: Line, count: number, open: Uint8Array): Line {
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
    if (!isCertain(first, nearFirst, spread)) open[i] = UNDECIDED;
    if (!isCertain(second, nearSecond, spread) && i + 1 < count) open[i + 1] = UNDECIDED;
  }
  return out;
}

/** A value that is no number is not certain. */
function isCertain(value: number, nearest: number, spread: number): boolean {
  const size = Math.abs(value);
  return 1 / 2 - Math.abs(value - nearest) > spread * size && size < WHOLE_MADE;
}

/** Certain where the value is further from every whole number than its bound, or has no error. */
function makeWhole(a: Line, { kind, double }: PlannedStep, out: Line, count: number, open: Uint8Array): Line {
  const up = kind === "ceil";
  const spread = double * SLACK;
  for (let i = 0; i < count; i += 1) {
    const value = a[i] ?? 0;
    out[i] = up ? Math.ceil(value) : Math.floor(value);
    const apart = Math.abs(value - Math.round(value));
    const reach = spread * Math.abs(value);
    if (!((apart > reach || reach === 0) && Math.abs(value) < WHOLE_LIMIT)) open[i] = UNDECIDED;
  }
  return out;
}

/** a + b or a - b; not certain where it is too small beside a and b, or not of the trace's sign. */
function differ(a: Line, b: Line, add: 1 | -1, sign: number, out: Line, count: number, open: Uint8Array): Line {
  const least = SLACK / SPARE.double;
  for (let i = 0; i < count; i += 1) {
    const x = a[i] ?? 0;
    const y = b[i] ?? 0;
    const difference = x + y * add;
    out[i] = difference;
    const size = difference * sign;
    const enough = (Math.abs(x) + Math.abs(y)) * least;
    if (!(size >= enough && size > 0)) open[i] = size < 0 && -size >= enough ? OTHER_PATH : UNDECIDED;
  }
  return out;
}

function checkSign(a: Line, sign: number, count: number, open: Uint8Array): void {
  for (let i = 0; i < count; i += 1) if (!((a[i] ?? 0) * sign >= 0)) open[i] = OTHER_PATH;
}

function checkComparison(
  { a: left, b: right, below, equal, above, double }: PlannedComparison,
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
    // Certain, but not an answer of this plan: the row takes another way.
    if (apart > reach) {
      if (!above) open[i] = OTHER_PATH;
    } else if (apart < -reach) {
      if (!below) open[i] = OTHER_PATH;
    } else if (!(equal && reach === 0 && apart === 0)) open[i] = UNDECIDED;
  }
}

function checkWhole(a: Line, count: number, open: Uint8Array): void {
  for (let i = 0; i < count; i += 1) if (!(Math.abs(a[i] ?? 0) < WHOLE_LIMIT)) open[i] = UNDECIDED;
}

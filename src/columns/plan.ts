import type { NumberRule } from "../exact/numberrule";
import { boundOf, earlier, FARTHEST, type Input, LARGEST_BOUND, type StepBound } from "./bounds";
import { type ColumnRule, columnRule } from "./cells";
import type { Comparison, Step, Trace } from "./trace";

/** A step with all that is needed to compute it. `a` and `b` are the numbers of its operands' steps; 0 where it has none. */
export interface PlannedStep {
  readonly kind: Step["kind"];
  readonly a: number;
  readonly b: number;
  readonly input: number;
  readonly decimals: number;
  readonly bound: StepBound;
  /** Other steps or comparisons need its value. */
  readonly used: boolean;
  /** Its value is the same for all rows. */
  readonly shared: boolean;
  /** The largest bounds of its operands, as doubles and as pairs. */
  readonly double: number;
  readonly pair: number;
}

/** A question that the formula asks: how `a` compares with `b`, or, without `b`, with zero. A row keeps to the plan by these answers. */
export interface PlannedComparison {
  readonly a: number;
  readonly b: number | undefined;
  readonly below: boolean;
  readonly equal: boolean;
  readonly above: boolean;
  /** Doubles need not ask: the plan subtracts the same two values, and that difference is held to its sign. */
  readonly implied: boolean;
  readonly double: number;
  readonly pair: number;
}

/** One way through a formula, ready to be computed for many rows: its steps in order, with their bounds. */
export interface Plan {
  /** Tells this way from every other. */
  readonly path: string;
  readonly steps: readonly PlannedStep[];
  readonly comparisons: readonly PlannedComparison[];
  readonly outputs: Trace["outputs"];
  /** What cells must pass that the formula reads itself. */
  readonly rules: readonly { readonly input: number; readonly rule: ColumnRule }[];
  /** Input steps that may be of either sign: a row must have the sign that the trace had. */
  readonly signed: readonly number[];
  /** Output steps that are whole numbers, and those of which the nearest double is to be given. */
  readonly wholes: readonly number[];
  readonly nearest: readonly number[];
  /** Every output is a rounding, a whole number, a constant, a text or a boolean: plain doubles can decide those. */
  readonly plain: boolean;
}

/** The plan of a trace; undefined where a step could leave the range of doubles. */
export function planOf(trace: Trace, columns: readonly Input[]): Plan | undefined {
  const { steps, signs, comparisons, outputs, rules, path } = reduced(trace);
  const inputs = columns.map((input, at) => narrowed(input, rules.get(at)));
  const bounds: StepBound[] = [];
  for (const [at, step] of steps.entries()) {
    const bound = boundOf(step, signs[at] === -1 ? -1 : 1, bounds, inputs);
    if (bound.least < -FARTHEST || bound.most > FARTHEST || bound.double > LARGEST_BOUND) return undefined;
    bounds.push(bound);
  }
  const used = new Set([...steps.flatMap(operands), ...comparisons.flatMap(operands)]);
  const given = outputs.flatMap((output) => (typeof output === "number" ? [output] : []));
  const wholes = given.filter((at) => earlier(bounds, at).whole);
  const nearest = given.filter((at) => !["decimals", "constant"].includes(steps[at]?.kind ?? ""));
  const shared = sharedOf(steps, inputs);
  return {
    path,
    outputs,
    rules: [...rules].map(([input, rule]) => ({ input, rule: columnRule(rule) })),
    steps: steps.map((step, at) => ({
      kind: step.kind,
      a: "a" in step ? step.a : 0,
      b: "b" in step ? step.b : 0,
      input: step.kind === "input" ? step.input : 0,
      decimals: step.kind === "decimals" ? step.decimals : 0,
      bound: earlier(bounds, at),
      used: used.has(at),
      shared: shared[at] ?? false,
      ...worst(operands(step), bounds),
    })),
    comparisons: comparisons.map((comparison) => plannedComparison(comparison, steps, bounds)),
    signed: steps.flatMap((step, at) => (step.kind === "input" && !inputs[step.input]?.unsigned ? [at] : [])),
    wholes,
    nearest,
    plain: nearest.every((at) => wholes.includes(at)),
  };
}

/** What is known of a column; where the formula reads it itself, by the rule that it read it by. */
function narrowed(input: Input, rule: NumberRule | undefined): Input {
  if (!rule) return input;
  const { negative, whole, most } = columnRule(rule);
  return { ...input, unsigned: !negative, whole, most };
}

function plannedComparison(
  { a, b, signs }: Comparison,
  steps: readonly Step[],
  bounds: readonly StepBound[],
): PlannedComparison {
  const implied = steps.some((step, at) => {
    if (step.kind !== "minus" || !earlier(bounds, at).differs) return false;
    const { sign } = earlier(bounds, at);
    return step.a === a && step.b === b ? signs.includes(sign) : step.a === b && step.b === a && signs.includes(-sign);
  });
  const answers = { below: signs.includes(-1), equal: signs.includes(0), above: signs.includes(1) };
  return { a, b, ...answers, implied, ...worst(b === undefined ? [a] : [a, b], bounds) };
}

/** The largest bounds of these steps. */
function worst(of: readonly number[], bounds: readonly StepBound[]): Pick<PlannedStep, "double" | "pair"> {
  const most = (kind: "double" | "pair") => Math.max(0, ...of.map((at) => earlier(bounds, at)[kind]));
  return { double: most("double"), pair: most("pair") };
}

/** The trace without steps that no output and no comparison needs, and with equal steps and comparisons once. */
function reduced(trace: Trace): Trace {
  const live = new Set<number>();
  const keep = (at: number) => {
    if (live.has(at)) return;
    live.add(at);
    const step = trace.steps[at];
    if (step) operands(step).forEach(keep);
  };
  for (const output of trace.outputs) if (typeof output === "number") keep(output);
  trace.comparisons.flatMap(operands).forEach(keep);
  const moved = new Map<number, number>();
  const placeOf = new Map<string, number>();
  const steps: Step[] = [];
  const signs: number[] = [];
  const to = (at: number) => moved.get(at) ?? 0;
  for (const [at, step] of trace.steps.entries()) {
    if (!live.has(at)) continue;
    const kept = movedStep(step, to);
    const name = kept.kind === "constant" ? `${kept.value.over}/${kept.value.under}` : JSON.stringify(kept);
    const place = placeOf.get(name) ?? steps.length;
    if (!placeOf.has(name)) {
      placeOf.set(name, place);
      steps.push(kept);
      signs.push(trace.signs[at] ?? 1);
    }
    moved.set(at, place);
  }
  const comparisons = trace.comparisons.map((comparison) => ({
    ...comparison,
    a: to(comparison.a),
    b: comparison.b === undefined ? undefined : to(comparison.b),
  }));
  return {
    ...trace,
    steps,
    signs,
    comparisons: [...new Map(comparisons.map((comparison) => [JSON.stringify(comparison), comparison])).values()],
    outputs: trace.outputs.map((output) => (typeof output === "number" ? to(output) : output)),
  };
}

function movedStep(step: Step, to: (at: number) => number): Step {
  if (!("a" in step)) return step;
  return "b" in step ? { ...step, a: to(step.a), b: to(step.b) } : { ...step, a: to(step.a) };
}

/** Which steps have one value for all rows: they need only constants and cells that go with every row. */
function sharedOf(steps: readonly Step[], inputs: readonly Input[]): readonly boolean[] {
  const shared: boolean[] = [];
  for (const step of steps)
    shared.push(
      step.kind === "constant" ||
        (step.kind === "input" ? inputs[step.input]?.shared === true : operands(step).every((at) => shared[at])),
    );
  return shared;
}

function operands(of: Step | { readonly a: number; readonly b: number | undefined }): readonly number[] {
  if (!("a" in of)) return [];
  return "b" in of && of.b !== undefined ? [of.a, of.b] : [of.a];
}

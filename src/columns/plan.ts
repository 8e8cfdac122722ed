import type { NumberRule } from "../exact/numberrule";
import { earlier, FARTHEST, type Input, LARGEST_BOUND, type Place, placeOf } from "./bounds";
import { type ColumnRule, columnRule } from "./cells";
import type { Step, Trace, Turn } from "./trace";

/** A step with all that computing it needs; `a` and `b` are 0 where it has none. */
export interface Move {
  readonly kind: Step["kind"];
  readonly a: number;
  readonly b: number;
  readonly input: number;
  readonly decimals: number;
  readonly place: Place;
  /** Other steps or forks rest on it. */
  readonly used: boolean;
  /** The same for all rows. */
  readonly shared: boolean;
  /** The larger bounds of its operands. */
  readonly double: number;
  readonly pair: number;
}

/** A question on the way, and which answers keep to it; without `b`, of the sign of `a` alone. */
export interface Fork {
  readonly a: number;
  readonly b: number | undefined;
  readonly below: boolean;
  readonly level: boolean;
  readonly above: boolean;
  /** A difference of the plan has this sign already, where doubles computed it. */
  readonly implied: boolean;
  readonly double: number;
  readonly pair: number;
}

/** A trace with its bounds, ready to be run over rows. */
export interface Plan {
  readonly path: string;
  readonly moves: readonly Move[];
  readonly forks: readonly Fork[];
  readonly outputs: Trace["outputs"];
  /** What the cells that were read on the way must pass. */
  readonly rules: readonly { readonly input: number; readonly rule: ColumnRule }[];
  /** Inputs that may have either sign: they must have the trace's. */
  readonly signed: readonly number[];
  /** Outputs that are whole numbers, and those whose nearest double is owed. */
  readonly wholes: readonly number[];
  readonly nearest: readonly number[];
  /** Every output is a rounding, a whole number, a constant, a word or a truth, which plain doubles can decide. */
  readonly plain: boolean;
}

/** The plan of a trace; undefined where a step could leave the range of doubles. */
export function planOf(trace: Trace, columns: readonly Input[]): Plan | undefined {
  const { steps, signs, turns, outputs, rules, path } = withoutDead(trace);
  const inputs = columns.map((input, at) => narrowed(input, rules.get(at)));
  const places: Place[] = [];
  for (const [at, step] of steps.entries()) {
    const place = placeOf(step, signs[at] === -1 ? -1 : 1, places, inputs);
    if (place.least < -FARTHEST || place.most > FARTHEST || place.double > LARGEST_BOUND) return undefined;
    places.push(place);
  }
  const used = new Set([...steps.flatMap(operands), ...turns.flatMap(operands)]);
  const given = outputs.flatMap((output) => (typeof output === "number" ? [output] : []));
  const wholes = given.filter((at) => earlier(places, at).whole);
  const nearest = given.filter((at) => !["decimals", "constant"].includes(steps[at]?.kind ?? ""));
  const shared = sharedOf(steps, inputs);
  return {
    path,
    outputs,
    rules: [...rules].map(([input, rule]) => ({ input, rule: columnRule(rule) })),
    moves: steps.map((step, at) => ({
      kind: step.kind,
      a: "a" in step ? step.a : 0,
      b: "b" in step ? step.b : 0,
      input: step.kind === "input" ? step.input : 0,
      decimals: step.kind === "decimals" ? step.decimals : 0,
      place: earlier(places, at),
      used: used.has(at),
      shared: shared[at] ?? false,
      ...worst(operands(step), places),
    })),
    forks: turns.map((turn) => forkOf(turn, steps, places)),
    signed: steps.flatMap((step, at) => (step.kind === "input" && !inputs[step.input]?.unsigned ? [at] : [])),
    wholes,
    nearest,
    plain: nearest.every((at) => wholes.includes(at)),
  };
}

/** A column that the formula reads itself is as the rule allows by which it read it. */
function narrowed(input: Input, rule: NumberRule | undefined): Input {
  if (!rule) return input;
  const { negative, whole, most } = columnRule(rule);
  return { ...input, unsigned: !negative, whole, most };
}

function forkOf({ a, b, signs }: Turn, steps: readonly Step[], places: readonly Place[]): Fork {
  const implied = steps.some((step, at) => {
    if (step.kind !== "minus" || !earlier(places, at).differs) return false;
    const { sign } = earlier(places, at);
    return step.a === a && step.b === b ? signs.includes(sign) : step.a === b && step.b === a && signs.includes(-sign);
  });
  const answers = { below: signs.includes(-1), level: signs.includes(0), above: signs.includes(1) };
  return { a, b, ...answers, implied, ...worst(b === undefined ? [a] : [a, b], places) };
}

/** The larger bounds of these. */
function worst(of: readonly number[], places: readonly Place[]): Pick<Move, "double" | "pair"> {
  const most = (bound: "double" | "pair") => Math.max(0, ...of.map((at) => earlier(places, at)[bound]));
  return { double: most("double"), pair: most("pair") };
}

/** A trace without the steps that neither an output nor a turn rests on, and with each other step and turn once. */
function withoutDead(trace: Trace): Trace {
  const live = new Set<number>();
  const keep = (at: number) => {
    if (live.has(at)) return;
    live.add(at);
    const step = trace.steps[at];
    if (step) operands(step).forEach(keep);
  };
  for (const output of trace.outputs) if (typeof output === "number") keep(output);
  trace.turns.flatMap(operands).forEach(keep);
  const moved = new Map<number, number>();
  const places = new Map<string, number>();
  const steps: Step[] = [];
  const signs: number[] = [];
  const to = (at: number) => moved.get(at) ?? 0;
  for (const [at, step] of trace.steps.entries()) {
    if (!live.has(at)) continue;
    const kept = movedStep(step, to);
    const said = kept.kind === "constant" ? `${kept.value.over}/${kept.value.under}` : JSON.stringify(kept);
    const place = places.get(said) ?? steps.length;
    if (!places.has(said)) {
      places.set(said, place);
      steps.push(kept);
      signs.push(trace.signs[at] ?? 1);
    }
    moved.set(at, place);
  }
  const turns = trace.turns.map((turn) => ({
    ...turn,
    a: to(turn.a),
    b: turn.b === undefined ? undefined : to(turn.b),
  }));
  return {
    ...trace,
    steps,
    signs,
    turns: [...new Map(turns.map((turn) => [JSON.stringify(turn), turn])).values()],
    outputs: trace.outputs.map((output) => (typeof output === "number" ? to(output) : output)),
  };
}

function movedStep(step: Step, to: (at: number) => number): Step {
  if (!("a" in step)) return step;
  return "b" in step ? { ...step, a: to(step.a), b: to(step.b) } : { ...step, a: to(step.a) };
}

/** Which steps are the same for all rows: they rest on constants and on cells that go with every row. */
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

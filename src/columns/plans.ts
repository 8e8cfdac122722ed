import type { Input } from "./bounds";
import { type Plan, planOf } from "./plan";
import type { Trace } from "./trace";

/** Ways through one formula that are remembered; a row that takes yet another is computed exactly. */
const MOST_PLANS = 24;

/**
 * What has been learned of a formula: for each choice key the plans of the ways that its rows have taken. A formula is run once
 * over exact quotients before a witness (trace.ts); its steps with their bounds are a plan (plan.ts); rows that answer its
 * comparisons alike are computed by the plan in doubles or pairs of doubles, to the same bits.
 */
export class Plans {
  private readonly byKey = new Map<number, readonly Plan[]>();

  /** @param mostKeys choice keys that are remembered; one more, and all are learned anew */
  constructor(
    private readonly inputs: readonly Input[],
    private readonly mostKeys: number,
  ) {}

  /** The plans that rows of this choice key have led to so far. */
  of(key: number): readonly Plan[] {
    return this.byKey.get(key) ?? [];
  }

  /** Whether another way of this key would still be remembered. */
  hasRoom(key: number): boolean {
    return this.of(key).length < MOST_PLANS;
  }

  /** Remembers a new way through the formula; undefined where it is known already, or cannot be computed in columns. */
  learn(key: number, trace: Trace): Plan | undefined {
    const known = this.of(key);
    if (!this.hasRoom(key) || known.some(({ path }) => path === trace.path)) return undefined;
    const plan = planOf(trace, this.inputs);
    if (!plan) return undefined;
    if (this.byKey.size >= this.mostKeys && known.length === 0) this.byKey.clear();
    this.byKey.set(key, [...known, plan]);
    return plan;
  }

  /** Single rows often take the way of the one before: this plan is tried first from now on. */
  prefer(key: number, plan: Plan): void {
    const known = this.of(key);
    // A list of its own: a run under way may still go through the old one.
    if (known[0] !== plan) this.byKey.set(key, [plan, ...known.filter((each) => each !== plan)]);
  }
}

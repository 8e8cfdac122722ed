import { Quotient } from "../../src/index";
import { showFixed, showShare } from "../wording/display";

/** Figures further apart than this are not put in one plot: one of them would sit on its edge. */
const FARTHEST = 10;

/** Whether a mark is near enough to this order's figure to be drawn beside it. */
export function isInSight(mark: number, order: number): boolean {
  return mark >= order / FARTHEST && mark <= order * FARTHEST;
}

/** The decimals that tell ticks of this step apart. */
export function decimalsOf(ticks: readonly number[]): number {
  const [first = 0, second = first + 1] = ticks;
  return Math.max(0, Math.ceil(-Math.log10(second - first) - 1e-9));
}

export function showTicks(ticks: readonly number[]): readonly string[] {
  const decimals = decimalsOf(ticks);
  return ticks.map((tick) => showFixed(exactly(tick), decimals));
}

export function showShares(ticks: readonly number[]): readonly string[] {
  return ticks.map((tick) => showShare(exactly(tick)));
}

/** A figure that only places a point, as the short decimal it stands for. */
export function exactly(value: number): Quotient {
  return Quotient.of(value.toPrecision(12));
}

/** A stretch of an axis. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Places across a stretch in even ratios, its ends among them. */
export function ratioSteps({ from, to }: Span, steps: number): readonly number[] {
  return Array.from({ length: steps + 1 }, (_, step) => from * (to / from) ** (step / steps));
}

/** From the least to the greatest with room around; never of no height. */
export function around(values: readonly number[], share: number): Span {
  const least = Math.min(...values);
  const most = Math.max(...values);
  const room = Math.max((most - least) * share, Math.abs(most) * 1e-3, 1e-6);
  return { from: least - room, to: most + room };
}

/** Quotients in their order, each once. */
export function sorted(values: readonly Quotient[]): readonly Quotient[] {
  return [...values].sort((a, b) => a.compare(b)).filter((value, at, all) => !all[at - 1]?.equals(value));
}

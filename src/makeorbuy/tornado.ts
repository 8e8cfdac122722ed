import { Quotient } from "../exact/quotient";
import type { Rates } from "../rates/rates";
import { addMoney, type Money, money } from "../units/money";
import { type ChainChoice, type Comparison, compareSources } from "./chainchoice";
import { closed } from "./crossover";
import { LEVER_KEYS, type Lever, leverValue, moved } from "./figures";

/** What one figure does to what making saves, when it is a share less and a share more than it stands. */
export interface Swing {
  readonly lever: Lever;
  /** What making saves in all, with the figure less and more. */
  readonly less: Money;
  readonly more: Money;
  /** How far these two are apart; never below zero. */
  readonly width: Quotient;
  /** How many answers turn, from make to buy or back. */
  readonly turnedByLess: number;
  readonly turnedByMore: number;
}

/** Which figure the answer hangs on most. */
export interface Tornado {
  /** How many chains were looked at. */
  readonly count: number;
  /** What making saves in all as the figures stand; below zero where buying is cheaper. */
  readonly saving: Money;
  /** The widest first; figures that are nothing, or that nobody has, are left out. */
  readonly swings: readonly Swing[];
}

/** How much less and more a figure is taken. */
export const MOVED_BY = Quotient.of("0.1");

/**
 * Moves every figure on its own, a tenth less and a tenth more, and compares anew: another maker may be the cheapest then.
 * Savings are taken to 40 decimals, so that a long list's sum does not outgrow them.
 * Chains that nobody sells are passed over: there is nothing to choose; one that nobody sells only when moved keeps its saving.
 */
export function tornado(choices: readonly ChainChoice[], rates: Rates, by = MOVED_BY): Tornado {
  const standing = choices.map(compareSources).filter(({ best }) => best !== undefined);
  const factors = { less: Quotient.one.minus(by), more: Quotient.one.plus(by) };
  const swings = LEVER_KEYS.flatMap((lever): Swing[] => {
    const bearing = standing.filter(({ choice }) => !(leverValue(choice, lever) ?? Quotient.zero).isZero());
    if (bearing.length === 0) return [];
    const others = standing.filter((each) => !bearing.includes(each));
    const at = (factor: Quotient) => bearing.map(({ choice }) => compareSources(moved(choice, lever, factor)));
    const [less, more] = [at(factors.less), at(factors.more)];
    return [
      swingOf(
        lever,
        savingOf([...less, ...others], [...bearing, ...others], rates),
        savingOf([...more, ...others], [...bearing, ...others], rates),
        {
          less: turned(bearing, less),
          more: turned(bearing, more),
        },
      ),
    ];
  });
  return tornadoOf(standing.length, savingOf(standing, standing, rates), swings);
}

/** Tornados of parts of one list as if it had been one. @param parts at least one */
export function joinTornados(parts: readonly Tornado[]): Tornado {
  const [first, ...others] = parts;
  if (!first) throw new Error("No tornado to join");
  const swings = LEVER_KEYS.flatMap((lever): Swing[] => {
    if (!parts.some((part) => part.swings.some((swing) => swing.lever === lever))) return [];
    const each = parts.map((part) => part.swings.find((swing) => swing.lever === lever) ?? still(part.saving, lever));
    const sum = (pick: (swing: Swing) => number) => each.reduce((total, swing) => total + pick(swing), 0);
    const add = (pick: (swing: Swing) => Money) => addMoney(nothing(first.saving), ...each.map(pick));
    return [
      swingOf(
        lever,
        add(({ less }) => less),
        add(({ more }) => more),
        {
          less: sum(({ turnedByLess }) => turnedByLess),
          more: sum(({ turnedByMore }) => turnedByMore),
        },
      ),
    ];
  });
  const count = parts.reduce((total, part) => total + part.count, 0);
  return tornadoOf(count, addMoney(first.saving, ...others.map(({ saving }) => saving)), swings);
}

function tornadoOf(count: number, saving: Money, swings: readonly Swing[]): Tornado {
  const widest = [...swings].sort((a, b) => b.width.compare(a.width));
  return Object.freeze({ count, saving, swings: Object.freeze(widest) });
}

function swingOf(lever: Lever, less: Money, more: Money, turned: { less: number; more: number }): Swing {
  const apart = more.amount.minus(less.amount);
  return Object.freeze({
    lever,
    less,
    more,
    width: apart.isNegative() ? Quotient.zero.minus(apart) : apart,
    turnedByLess: turned.less,
    turnedByMore: turned.more,
  });
}

function still(saving: Money, lever: Lever): Swing {
  return swingOf(lever, saving, saving, { less: 0, more: 0 });
}

function savingOf(now: readonly Comparison[], before: readonly Comparison[], rates: Rates): Money {
  const savings = now.map(({ best }, at) => {
    const stood = before[at];
    const saving = best?.saving ?? stood?.best?.saving;
    if (!saving || !stood) throw new Error("A chain that nobody sells has no saving");
    return money(closed(saving.amount.times(stood.quantity)), saving.currency);
  });
  return addMoney(money(Quotient.zero, rates.currency), ...savings);
}

function turned(before: readonly Comparison[], now: readonly Comparison[]): number {
  return before.filter(({ verdict }, at) => now[at]?.verdict !== verdict).length;
}

function nothing({ currency }: Money): Money {
  return money(Quotient.zero, currency);
}

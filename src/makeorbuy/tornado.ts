import { Quotient } from "../exact/quotient";
import type { Rates } from "../rates/rates";
import { addMoney, type Money, money } from "../units/money";
import { type ChainChoice, type Comparison, compareSources } from "./chainchoice";
import { roundedDifference } from "./crossover";
import { LEVER_KEYS, type Lever, leverValue, moved } from "./figures";

/** How the saving of making changes when one figure is lower or higher by a share. */
export interface Swing {
  readonly lever: Lever;
  /** What making saves in all, with the figure less and more. */
  readonly less: Money;
  readonly more: Money;
  /** How far these two are apart; never below zero. */
  readonly width: Quotient;
  /** How many answers change, from make to buy or back. */
  readonly turnedByLess: number;
  readonly turnedByMore: number;
}

/** Which figure the answer depends on most. */
export interface Tornado {
  /** How many chains were looked at. */
  readonly count: number;
  /** What making saves in all with the current figures; below zero where buying is cheaper. */
  readonly saving: Money;
  /** The widest first; figures that are zero or missing are left out. */
  readonly swings: readonly Swing[];
}

/** By which share a figure is lowered and raised. */
export const MOVED_BY = Quotient.of("0.1");

/**
 * Moves one figure at a time, a tenth lower and a tenth higher, and compares again: another maker may be the cheapest then.
 * Savings are rounded to 40 decimals, so that the sum of a long list stays exact.
 * Chains that nobody sells are skipped: there is nothing to choose. One that nobody sells only after the move keeps its saving.
 */
export function tornado(choices: readonly ChainChoice[], rates: Rates, by = MOVED_BY): Tornado {
  const sold = choices.map(compareSources).filter(({ best }) => best !== undefined);
  const factors = { less: Quotient.one.minus(by), more: Quotient.one.plus(by) };
  const swings = LEVER_KEYS.flatMap((lever): Swing[] => {
    const affected = sold.filter(({ choice }) => !(leverValue(choice, lever) ?? Quotient.zero).isZero());
    if (affected.length === 0) return [];
    const others = sold.filter((each) => !affected.includes(each));
    const at = (factor: Quotient) => affected.map(({ choice }) => compareSources(moved(choice, lever, factor)));
    const [less, more] = [at(factors.less), at(factors.more)];
    return [
      swingOf(
        lever,
        savingOf([...less, ...others], [...affected, ...others], rates),
        savingOf([...more, ...others], [...affected, ...others], rates),
        {
          less: turned(affected, less),
          more: turned(affected, more),
        },
      ),
    ];
  });
  return tornadoOf(sold.length, savingOf(sold, sold, rates), swings);
}

/** Joins the tornados of parts of a list into the tornado of the whole list. @param parts at least one */
export function joinTornados(parts: readonly Tornado[]): Tornado {
  const [first, ...others] = parts;
  if (!first) throw new Error("No tornado to join");
  const swings = LEVER_KEYS.flatMap((lever): Swing[] => {
    if (!parts.some((part) => part.swings.some((swing) => swing.lever === lever))) return [];
    const each = parts.map(
      (part) => part.swings.find((swing) => swing.lever === lever) ?? unmovedSwing(part.saving, lever),
    );
    const sum = (pick: (swing: Swing) => number) => each.reduce((total, swing) => total + pick(swing), 0);
    const add = (pick: (swing: Swing) => Money) => addMoney(noMoney(first.saving), ...each.map(pick));
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

function unmovedSwing(saving: Money, lever: Lever): Swing {
  return swingOf(lever, saving, saving, { less: 0, more: 0 });
}

function savingOf(now: readonly Comparison[], before: readonly Comparison[], rates: Rates): Money {
  const savings = now.map(({ best }, at) => {
    const earlier = before[at];
    const saving = best?.saving ?? earlier?.best?.saving;
    if (!saving || !earlier) throw new Error("A chain that nobody sells has no saving");
    return money(roundedDifference(saving.amount.times(earlier.quantity)), saving.currency);
  });
  return addMoney(money(Quotient.zero, rates.currency), ...savings);
}

function turned(before: readonly Comparison[], now: readonly Comparison[]): number {
  return before.filter(({ verdict }, at) => now[at]?.verdict !== verdict).length;
}

function noMoney({ currency }: Money): Money {
  return money(Quotient.zero, currency);
}

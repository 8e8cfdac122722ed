import { maximum, minimum, Quotient, sum } from "../exact/quotient";
import { roundedDifference } from "../makeorbuy/crossover";
import { type Money, money } from "../units/money";
import { type Budget, EACH_KEYS, MOST_PIECES, ONCE_KEYS } from "./budget";

/** The cash that pieces made together need before the first is sold. */
export interface CashNeeded {
  /** Once, whatever the number. */
  readonly once: Money;
  /** For all the pieces, casting not below its minimum. */
  readonly pieces: Money;
  readonly out: Money;
  /** What customers pay before the work, for all the pieces. */
  readonly deposits: Money;
  /** Cash of one's own: what is paid once, and of the pieces what deposits do not cover. */
  readonly needed: Money;
}

/** How many pieces at a time the cash at hand pays for. */
export interface TakenOn {
  /** Above 1 where fewer pieces cannot pay for the casting minimum. */
  readonly from: number;
  /** Undefined where deposits pay for every piece, so that any number goes. */
  readonly to: number | undefined;
}

export type CashStepKind = "once" | "deposit" | "costs" | "balance";

/** One movement of cash, and the cash after it. */
export interface CashStep {
  readonly kind: CashStepKind;
  /** Counted from 1; 0 for what is paid once. */
  readonly piece: number;
  /** Below zero goes out. */
  readonly change: Money;
  readonly cash: Money;
}

/** Pieces made one after the other. */
export interface CashLine {
  readonly steps: readonly CashStep[];
  /** The first of the steps with the least cash after it. */
  readonly low: CashStep;
  /** What one piece costs, cast alone, without what is paid once. */
  readonly costOfOne: Money;
  /** What is left of its price. */
  readonly gainOfOne: Money;
  /** The piece with which what is paid once has come back; undefined where no number brings it back. */
  readonly paidBackWith: number | undefined;
}

/** What is left of one of the first pieces. */
export interface FirstPiece {
  readonly piece: number;
  /** The first carries all that is paid once. */
  readonly costCarried: Money;
  /** All carry the same share of it. */
  readonly costSpread: Money;
  readonly brings: Money;
  /** Of all pieces so far, all that is paid once taken off. */
  readonly leftSoFar: Money;
}

/** The cash before the first sale. @param pieces whole, made together */
export function cashNeeded(budget: Budget, pieces: number): CashNeeded {
  const cash = (amount: Quotient) => money(amount, budget.price.currency);
  const once = onceOf(budget);
  const made = costOf(budget, pieces);
  const deposits = depositOf(budget).times(Quotient.of(pieces));
  return Object.freeze({
    once: cash(once),
    pieces: cash(made),
    out: cash(once.plus(made)),
    deposits: cash(deposits),
    needed: cash(once.plus(maximum(made.minus(deposits), Quotient.zero))),
  });
}

/**
 * How many pieces at a time the cash at hand pays for; undefined where it pays for none.
 *
 * What is paid once comes before any deposit, so cash must cover it. What is left must cover the part of k pieces that deposits
 * do not: k x (cost - deposit), and where the casting minimum holds, minimum + k x (cost without casting - deposit). Each is a
 * straight line over k, so each allows a run of numbers, and the numbers in both runs are the answer. Exact; whole numbers up to
 * MOST_PIECES.
 */
export function takenOn(budget: Budget): TakenOn | undefined {
  const room = budget.cash.amount.minus(onceOf(budget));
  if (room.isNegative()) return undefined;
  const casting = budget.each.casting.amount;
  const besides = eachOf(budget).minus(casting).minus(depositOf(budget));
  const least = budget.castingMinimum.amount;
  const runs = [runWithin(besides.plus(casting), room), runWithin(besides, room.minus(least))];
  let [from, to] = [1, MOST_PIECES];
  for (const run of runs) {
    if (!run) return undefined;
    from = Math.max(from, run.from);
    to = Math.min(to, run.to);
  }
  if (from > to) return undefined;
  return Object.freeze({ from, to: to === MOST_PIECES ? undefined : to });
}

/**
 * The least deposit, as a share of the price, at which the cash pays for that many pieces; undefined where not even the whole
 * price does.
 */
export function depositFor(budget: Budget, pieces: number): Quotient | undefined {
  const room = budget.cash.amount.minus(onceOf(budget));
  if (room.isNegative()) return undefined;
  const lacking = maximum(costOf(budget, pieces).minus(room), Quotient.zero);
  const share = lacking.dividedBy(budget.price.amount.times(Quotient.of(pieces)));
  return share.isGreaterThan(Quotient.one) ? undefined : share;
}

/** Pieces made one after the other, each cast alone: set-up out, then for each its deposit in, its costs out, its balance in. */
export function cashLine(budget: Budget, pieces: number): CashLine {
  const cash = (amount: Quotient) => money(amount, budget.price.currency);
  const one = costOf(budget, 1);
  const deposit = depositOf(budget);
  const moves: Pick<CashStep, "kind" | "piece" | "change">[] = [
    { kind: "once", piece: 0, change: cash(Quotient.zero.minus(onceOf(budget))) },
  ];
  for (let piece = 1; piece <= pieces; piece += 1) {
    moves.push({ kind: "deposit", piece, change: cash(deposit) });
    moves.push({ kind: "costs", piece, change: cash(Quotient.zero.minus(one)) });
    moves.push({ kind: "balance", piece, change: cash(budget.price.amount.minus(deposit)) });
  }
  let cashNow = budget.cash.amount;
  const steps = moves.map((move): CashStep => {
    cashNow = cashNow.plus(move.change.amount);
    return Object.freeze({ ...move, cash: cash(cashNow) });
  });
  const low = steps.reduce((least, step) => (step.cash.amount.isLessThan(least.cash.amount) ? step : least));
  const gain = budget.price.amount.minus(one);
  return Object.freeze({
    steps: Object.freeze(steps),
    low,
    costOfOne: cash(one),
    gainOfOne: cash(gain),
    paidBackWith: paidBack(onceOf(budget), gain),
  });
}

/** What the first pieces cost and bring. What is paid once is carried by the first piece, or spread over all of them. */
export function firstPieces(budget: Budget, pieces: number): readonly FirstPiece[] {
  const cash = (amount: Quotient) => money(amount, budget.price.currency);
  const one = costOf(budget, 1);
  const once = onceOf(budget);
  const gain = budget.price.amount.minus(one);
  return Array.from({ length: pieces }, (_, index) =>
    Object.freeze({
      piece: index + 1,
      costCarried: cash(index === 0 ? one.plus(once) : one),
      costSpread: cash(one.plus(once.dividedBy(Quotient.of(pieces)))),
      brings: budget.price,
      leftSoFar: cash(gain.times(Quotient.of(index + 1)).minus(once)),
    }),
  );
}

function onceOf({ once }: Budget): Quotient {
  return sum(ONCE_KEYS.map((key) => once[key].amount));
}

/** The cost of one piece, its casting by weight. */
function eachOf({ each }: Budget): Quotient {
  return sum(EACH_KEYS.map((key) => each[key].amount));
}

/** The cost of pieces made together. */
function costOf(budget: Budget, pieces: number): Quotient {
  const casting = budget.each.casting.amount;
  const count = Quotient.of(pieces);
  return eachOf(budget)
    .minus(casting)
    .times(count)
    .plus(maximum(casting.times(count), budget.castingMinimum.amount));
}

function depositOf({ price, deposit }: Budget): Quotient {
  return price.amount.times(deposit);
}

/** The whole numbers k from 1 to MOST_PIECES with k x step not above room. */
function runWithin(step: Quotient, room: Quotient): { readonly from: number; readonly to: number } | undefined {
  if (step.isZero()) return room.isNegative() ? undefined : { from: 1, to: MOST_PIECES };
  const edge = roundedDifference(room.dividedBy(step));
  const bounded = minimum(maximum(edge, Quotient.zero), Quotient.of(MOST_PIECES + 1));
  if (step.isPositive()) {
    const to = Math.min(bounded.floor().toNumber(), MOST_PIECES);
    return edge.isNegative() || to < 1 ? undefined : { from: 1, to };
  }
  const from = Math.max(bounded.ceil().toNumber(), 1);
  return from > MOST_PIECES ? undefined : { from, to: MOST_PIECES };
}

/** The piece with which the gains so far reach what is paid once. */
function paidBack(once: Quotient, gain: Quotient): number | undefined {
  if (once.isZero()) return gain.isNegative() ? undefined : 1;
  if (!gain.isPositive()) return undefined;
  return Math.max(1, roundedDifference(once.dividedBy(gain)).ceil().toNumber());
}

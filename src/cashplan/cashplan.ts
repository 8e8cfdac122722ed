import { maximum, minimum, Quotient, sum } from "../exact/quotient";
import { roundedDifference } from "../makeorbuy/crossover";
import { cashBeforeSale, depositWanted } from "../trade/deposit";
import { castingOfAll } from "../trade/landedcost";
import { addMoney, type Money, money, subtractMoney, timesMoney } from "../units/money";
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

/** What decides how many pieces at a time cash carries. */
export interface CashTerms {
  readonly cash: Money;
  /** What is paid once. */
  readonly once: Money;
  readonly piece: PieceCash;
  /** What a customer pays of one piece before the work. */
  readonly deposit: Money;
}

/** What goes out for pieces made together. */
export interface PieceCash {
  /** One piece, its casting by weight. */
  readonly each: Money;
  /** Casting of one piece by weight. */
  readonly casting: Money;
  /** Least that the caster charges for pieces cast together. */
  readonly castingMinimum: Money;
}

/** How many pieces at a time the cash at hand carries. */
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
  const count = Quotient.of(pieces);
  const once = onceOf(budget);
  const made = piecesCost(pieceOf(budget), count);
  const deposits = timesMoney(depositOf(budget), count);
  return Object.freeze({
    once,
    pieces: made,
    out: addMoney(once, made),
    deposits,
    needed: cashBeforeSale(once, made, deposits),
  });
}

/** So many pieces made together, casting not below the caster's minimum for all of them. */
export function piecesCost({ each, casting, castingMinimum }: PieceCash, pieces: Quotient): Money {
  const besides = timesMoney(subtractMoney(each, casting), pieces);
  return addMoney(besides, castingOfAll(timesMoney(casting, pieces), castingMinimum));
}

/** How many pieces at a time the cash at hand carries; undefined where it carries none. */
export function takenOn(budget: Budget): TakenOn | undefined {
  const { cash } = budget;
  return piecesCarried({ cash, once: onceOf(budget), piece: pieceOf(budget), deposit: depositOf(budget) });
}

/**
 * How many pieces at a time cash carries; undefined where it carries none.
 *
 * What is paid once comes before any deposit, so cash must cover it. What is left must cover the part of k pieces that deposits
 * do not: k x (cost - deposit), and where the casting minimum holds, minimum + k x (cost without casting - deposit). Each is a
 * straight line over k, so each allows a run of numbers, and the numbers in both runs are the answer. Exact; whole numbers up to
 * MOST_PIECES.
 */
export function piecesCarried({ cash, once, piece, deposit }: CashTerms): TakenOn | undefined {
  const room = cash.amount.minus(once.amount);
  if (room.isNegative()) return undefined;
  const open = piece.each.amount.minus(deposit.amount);
  const besides = open.minus(piece.casting.amount);
  const runs = [runWithin(open, room), runWithin(besides, room.minus(piece.castingMinimum.amount))];
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
  const count = Quotient.of(pieces);
  const room = subtractMoney(budget.cash, onceOf(budget));
  return depositWanted(room, piecesCost(pieceOf(budget), count), timesMoney(budget.price, count));
}

/** Pieces made one after the other, each cast alone: set-up out, then for each its deposit in, its costs out, its balance in. */
export function cashLine(budget: Budget, pieces: number): CashLine {
  const cash = (amount: Quotient) => money(amount, budget.price.currency);
  const one = costOfOne(budget);
  const deposit = depositOf(budget).amount;
  const moves: Pick<CashStep, "kind" | "piece" | "change">[] = [
    { kind: "once", piece: 0, change: cash(Quotient.zero.minus(onceOf(budget).amount)) },
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
    paidBackWith: paidBackWith(onceOf(budget), cash(gain)),
  });
}

/** What the first pieces cost and bring. What is paid once is carried by the first piece, or spread over all of them. */
export function firstPieces(budget: Budget, pieces: number): readonly FirstPiece[] {
  const cash = (amount: Quotient) => money(amount, budget.price.currency);
  const one = costOfOne(budget);
  const once = onceOf(budget).amount;
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

function onceOf({ once, price }: Budget): Money {
  return money(sum(ONCE_KEYS.map((key) => once[key].amount)), price.currency);
}

function pieceOf({ each, castingMinimum, price }: Budget): PieceCash {
  const all = money(sum(EACH_KEYS.map((key) => each[key].amount)), price.currency);
  return { each: all, casting: each.casting, castingMinimum };
}

/** One piece, cast alone. */
function costOfOne(budget: Budget): Quotient {
  return piecesCost(pieceOf(budget), Quotient.one).amount;
}

function depositOf({ price, deposit }: Budget): Money {
  return timesMoney(price, deposit);
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

/** With which piece the gains of pieces alike come to what is paid once; undefined where no number does. */
export function paidBackWith({ amount: once }: Money, { amount: gain }: Money): number | undefined {
  if (once.isZero()) return gain.isNegative() ? undefined : 1;
  if (!gain.isPositive()) return undefined;
  return Math.max(1, roundedDifference(once.dividedBy(gain)).ceil().toNumber());
}

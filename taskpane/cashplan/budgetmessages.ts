import {
  type Budget,
  type CashStep,
  cashLine,
  cashNeeded,
  depositFor,
  firstPieces,
  type Money,
  minorDigits,
  Quotient,
  subtractMoney,
  takenOn,
} from "../../src/index";
import type { AnswerLine } from "../controls/answerbox";
import { DECIDE_TEXTS } from "../wording/decidetexts";
import { showFixed, showMoney, showNumber } from "../wording/display";
import { shareText } from "../wording/sharetext";

const { budget: texts } = DECIDE_TEXTS;

/** So many of the first pieces are followed. */
export const FIRST = 3;

/** What a batch needs, what the cash carries, and how the first pieces go. */
export function budgetWords(budget: Budget): readonly AnswerLine[] {
  const pieces = budget.pieces.toNumber();
  const needed = cashNeeded(budget, pieces);
  const short = needed.needed.amount.isGreaterThan(budget.cash.amount);
  const { low, paidBackWith } = cashLine(budget, FIRST);
  return [
    { text: texts.needed(count(pieces), showMoney(needed.needed)), isWarning: false },
    { text: texts.outIn(showMoney(needed.out), showMoney(needed.deposits)) },
    ...carriesWords(budget).map((text) => ({ text, isWarning: short && takenOn(budget) === undefined })),
    { text: texts.low(showMoney(low.cash), texts.lowAt[low.kind](count(low.piece))) },
    { text: paidBackWith === undefined ? texts.neverBack : texts.paidBack(count(paidBackWith)) },
  ];
}

/** How many pieces at a time the cash carries, or what it lacks and whether a deposit would do. */
function carriesWords(budget: Budget): readonly string[] {
  const { carries } = texts;
  const cash = showMoney(budget.cash);
  const taken = takenOn(budget);
  if (taken) {
    const { from, to } = taken;
    if (from === 1) return [to === undefined ? carries.any(cash) : carries.upTo(cash, count(to))];
    return [to === undefined ? carries.from(cash, count(from)) : carries.range(cash, count(from), count(to))];
  }
  const { once, needed } = cashNeeded(budget, 1);
  if (once.amount.isGreaterThan(budget.cash.amount)) {
    return [carries.once(cash, showMoney(subtractMoney(once, budget.cash)))];
  }
  const share = depositFor(budget, 1);
  // Rounded up to a tenth of a per cent: so much does.
  const asked = share && Quotient.of(share.rounded(3, "up"));
  const lacking = carries.none(cash, showMoney(subtractMoney(needed, budget.cash)));
  return [asked && !asked.isGreaterThan(Quotient.one) ? `${lacking} ${carries.deposit(shareText(asked))}` : lacking];
}

/** The first pieces: what each costs with all that is paid once on the first, and spread; what is left so far. */
export function pieceRows(budget: Budget): readonly (readonly string[])[] {
  return firstPieces(budget, FIRST).map(({ piece, costCarried, costSpread, leftSoFar }) => [
    count(piece),
    figure(costCarried),
    figure(costSpread),
    figure(leftSoFar),
  ]);
}

/** The cash, step by step. */
export function stepRows(budget: Budget): readonly (readonly string[])[] {
  return cashLine(budget, FIRST).steps.map((step) => [stepWords(step), figure(step.change), figure(step.cash)]);
}

export function stepWords({ kind, piece }: Pick<CashStep, "kind" | "piece">): string {
  const said = texts.steps[kind](count(piece));
  return said.charAt(0).toUpperCase() + said.slice(1);
}

/** An amount without its currency, which stands in the table's title. */
function figure({ amount, currency }: Money): string {
  return showFixed(amount, minorDigits(currency));
}

function count(pieces: number): string {
  return showNumber(Quotient.of(pieces));
}

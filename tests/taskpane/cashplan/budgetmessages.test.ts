import { expect, test } from "vitest";
import { BUDGET_LABELS } from "../../../src/cashplan/budget";
import { type BudgetKey, parseBudget } from "../../../src/index";
import { budgetWords, pieceRows, stepRows } from "../../../taskpane/cashplan/budgetmessages";

const BUDGET_KEYS = Object.keys(BUDGET_LABELS) as readonly BudgetKey[];

/** Once 900; a piece 1000, sold at 1400 with half of it before: the figures of cashplan.test.ts (hand arithmetic). */
function budget(changes: Partial<Record<BudgetKey, string>> = {}) {
  const blank = Object.fromEntries(BUDGET_KEYS.map((key) => [key, ""])) as Record<BudgetKey, string>;
  const typed = {
    models: "900",
    metal: "960",
    casting: "40",
    price: "1400",
    deposit: "50 %",
    pieces: "3",
    cash: "2000",
  };
  const parsed = parseBudget({ ...blank, ...typed, ...changes }, { currency: "USD" });
  if (!parsed.ok) throw new Error("no budget");
  return parsed.value;
}

const plain = (text: string) => text.replaceAll("\u00a0", " ");
const words = (changes?: Partial<Record<BudgetKey, string>>) =>
  budgetWords(budget(changes)).map(({ text }) => plain(text));

test("three pieces: need, what the cash carries, the low point, when it is paid back", () => {
  expect(words()).toEqual([
    "3 pieces at a time need USD 1,800.00 of your own cash before the first sale.",
    "USD 3,900.00 goes out; deposits bring USD 2,100.00.",
    "USD 2,000.00 at hand carries 3 pieces at a time.",
    "Made one after the other, cash is lowest at USD 800.00, once piece 1 is paid for.",
    "Piece 3 brings back what is paid once.",
  ]);
});

test("what the cash lacks is said, and the deposit that would do, rounded up", () => {
  expect(words({ cash: "899" })[2]).toBe("USD 899.00 at hand is USD 1.00 short of what is paid once.");
  // 1000 - 299 = 701 of 1400 is 50.07 %.
  expect(words({ cash: "1199" })[2]).toBe(
    "USD 1,199.00 at hand is USD 1.00 short of one piece. A deposit of 50.1 % would do.",
  );
  expect(words({ deposit: "75 %" })[2]).toBe("USD 2,000.00 at hand carries any number: deposits pay for every piece.");
  expect(words({ castingMinimum: "200", deposit: "70 %", cash: "1050" })[2]).toMatch(
    /carries from 3 to 7 pieces at a time/,
  );
  expect(words({ price: "900" }).at(-1)).toBe("At this price no number of pieces brings back what is paid once.");
});

test("the first three pieces and the cash, step by step", () => {
  expect(pieceRows(budget())).toEqual([
    ["1", "1,900.00", "1,300.00", "-500.00"],
    ["2", "1,000.00", "1,300.00", "-100.00"],
    ["3", "1,000.00", "1,300.00", "300.00"],
  ]);
  expect(stepRows(budget()).slice(0, 4)).toEqual([
    ["What is paid once", "-900.00", "1,100.00"],
    ["Deposit of piece 1", "700.00", "1,800.00"],
    ["Costs of piece 1", "-1,000.00", "800.00"],
    ["Balance of piece 1", "700.00", "1,500.00"],
  ]);
});

import { expect, test } from "vitest";
import { BUDGET_LABELS, type BudgetKey, parseBudget } from "../../../src/cashplan/budget";

const BUDGET_KEYS = Object.keys(BUDGET_LABELS) as readonly BudgetKey[];

const BLANK = Object.fromEntries(BUDGET_KEYS.map((key) => [key, ""])) as Record<BudgetKey, string>;
const faults = (changes: Partial<typeof BLANK>) => {
  const read = parseBudget({ ...BLANK, price: "1400", pieces: "3", ...changes }, { currency: "EUR" });
  return read.ok ? [] : read.faults.map(({ sentence }) => sentence);
};

test("a price and a number of pieces are enough: what is left blank costs nothing and brings nothing", () => {
  const read = parseBudget({ ...BLANK, price: "1400", pieces: "3" }, { currency: "EUR" });
  if (!read.ok) throw new Error("not read");
  const { once, each, castingMinimum, cash, deposit, price } = read.value;
  const amounts = [...Object.values(once), ...Object.values(each), castingMinimum, cash].map(({ amount }) => amount);
  expect(amounts.every((amount) => amount.isZero())).toBe(true);
  expect([deposit.isZero(), price.amount.toNumber(), price.currency]).toEqual([true, 1400, "EUR"]);
});

test("each field's fault names it, what was found and what would be right", () => {
  const figures = BUDGET_KEYS.filter((key) => !["price", "pieces", "deposit"].includes(key));
  for (const key of figures) {
    expect(faults({ [key]: "-1" })).toEqual([
      `${BUDGET_LABELS[key]}: found "-1"; give an amount of money from 0, such as 1.50`,
    ]);
  }
  expect(faults({ price: "" })).toEqual([
    "Price of one piece: found nothing; give what one piece brings, without tax, such as 4200",
  ]);
  expect(faults({ price: "0" })[0]).toContain('Price of one piece: found "0"');
  expect(faults({ pieces: "2.5" })).toEqual([
    'Pieces at a time: found "2.5"; give a whole number of pieces from 1 to 1000',
  ]);
  expect(faults({ pieces: "1001" })[0]).toContain("Pieces at a time");
  expect(faults({ deposit: "50" })).toEqual(['Deposit: found "50"; give a share from 0 to 1, such as 0.5 or 50 %']);
  expect(faults({ metal: "1.234,50", models: "dear" })).toHaveLength(2);
});

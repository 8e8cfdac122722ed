import fc from "fast-check";
import { expect, test } from "vitest";
import { type Budget, EACH_KEYS, ONCE_KEYS } from "../../../src/cashplan/budget";
import { cashNeeded } from "../../../src/cashplan/cashplan";
import { type OrderBudgetKey, orderBudget } from "../../../src/cashplan/orderbudget";
import { Quotient } from "../../../src/exact/quotient";
import { costOrder } from "../../../src/quote/costsheet";
import { makeQuote } from "../../../src/quote/quote";
import { TAX_DUE } from "../../../src/trade/deposit";
import type { Currency } from "../../../src/units/currency";
import { type Money, money } from "../../../src/units/money";
import { orderOf, type Record_, randomOrder, randomRates, ratesOf } from "../orders";

function budgetOf(order: Record_, rates: Record_) {
  const workshop = ratesOf(rates);
  const read = orderOf(order, workshop);
  const [sheet] = costOrder(read, workshop);
  if (!sheet) throw new Error("no line was costed");
  const sheets = [sheet];
  const { quote, watch } = makeQuote(read, sheets, workshop, "2026-11-30");
  return { figures: orderBudget(sheet, { order: read, sheets, quote, watch }, workshop), sheet, quote, watch };
}

test("100 g at 25.00 a gram, 2 g lost: 2550 metal, 150 casting, 50 labour; 3575 less 10 % (hand arithmetic)", () => {
  const order = { mark: "250", length: "25", linkWeight: "1", discount: "0.1", quantity: "4", claspCost: "80" };
  const { figures } = budgetOf(
    { ...order, setup: "120", engravingCost: "30" },
    { castingMinimum: "500", overhead: "0.1" },
  );
  const number = (key: keyof typeof figures) => figures[key].toNumber();
  expect([number("metal"), number("casting"), number("labour"), number("findings")]).toEqual([2550, 150, 50, 80]);
  expect([number("castingMinimum"), number("pieces"), number("models"), number("other")]).toEqual([500, 4, 480, 30]);
  // Of 2,980 with 10 % on it 3,278 with the model: x 1.3 = 4,261.40, up to 4,265; four less 10 % are 15,354.
  expect(number("price")).toBe(3838.5);
  // 4 x 2,980 = 11,920 go out, 77.6 %: 80 % are 12,283.20, up to 12,285.
  expect(number("deposit")).toBeCloseTo(12_285 / 15_354, 12);
});

/** A budget as it stands when it was filled from an order, with no cash at hand. */
function asBudget(figures: ReturnType<typeof budgetOf>["figures"], currency: Currency): Budget {
  const amount = (key: string) =>
    money(Object.hasOwn(figures, key) ? figures[key as OrderBudgetKey] : Quotient.zero, currency);
  const amounts = <K extends string>(keys: readonly K[]) =>
    Object.fromEntries(keys.map((key) => [key, amount(key)])) as Record<K, Money>;
  const { deposit, pieces } = figures;
  return {
    once: amounts(ONCE_KEYS),
    each: amounts(EACH_KEYS),
    castingMinimum: amount("castingMinimum"),
    price: amount("price"),
    deposit,
    pieces,
    cash: amount("cash"),
  };
}

test("a budget filled from an order has its cash out, what its quoted deposit covers, and what it brings, to the last digit", () => {
  const gold = fc.record({
    ownGoldWeight: fc.constantFrom("", "3", "400"),
    ownGoldUse: fc.constantFrom("used", "credited"),
    discount: fc.constantFrom("", "0.1", "0.137"),
    setup: fc.constantFrom("", "37.5"),
    breakage: fc.constantFrom("", "0.03"),
    deposit: fc.constantFrom("", "0.3"),
  });
  fc.assert(
    fc.property(randomRates, randomOrder, gold, fc.constantFrom(...TAX_DUE), (rates, order, terms, taxDue) => {
      const own = terms.ownGoldWeight === "" ? {} : { ownGoldMark: "500" };
      const made = budgetOf({ ...order.record, ...terms, ...own }, { ...rates.record, taxDue, overhead: "0.1" });
      const budget = asBudget(made.figures, made.quote.total.currency);
      const { out, deposits } = cashNeeded(budget, made.figures.pieces.toNumber());
      expect(out.amount.minus(made.watch.cashOut.amount).rounded(30).isZero()).toBe(true);
      const covers = made.watch.depositCovers.amount;
      const most = made.watch.net.amount;
      const expected = covers.isGreaterThan(most) ? most : covers;
      expect(deposits.amount.minus(expected).rounded(30).isZero()).toBe(true);
      expect(budget.price.amount.times(made.figures.pieces).minus(most).rounded(30).isZero()).toBe(true);
    }),
    { numRuns: 300 },
  );
});

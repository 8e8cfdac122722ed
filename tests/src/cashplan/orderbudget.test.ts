import fc from "fast-check";
import Fraction from "fraction.js";
import { expect, test } from "vitest";
import { orderBudget } from "../../../src/cashplan/orderbudget";
import { Quotient } from "../../../src/exact/quotient";
import { costOrder } from "../../../src/quote/costsheet";
import { orderOf, type Record_, randomOrder, randomRates, ratesOf, reckon } from "../orders";
import { expectExact } from "../reference";

function budgetOf(order: Record_, rates: Record_) {
  const workshop = ratesOf(rates);
  const read = orderOf(order, workshop);
  const [sheet] = costOrder(read, workshop);
  if (!sheet) throw new Error("no line was costed");
  return { figures: orderBudget(sheet, read, workshop), sheet };
}

test("100 g at 25.00 a gram, 2 g lost: 2550 metal, 150 casting, 50 labour; 3575 less 10 % (hand arithmetic)", () => {
  const order = { mark: "250", length: "25", linkWeight: "1", discount: "0.1", quantity: "4", claspCost: "80" };
  const { figures } = budgetOf(
    { ...order, setup: "120", engravingCost: "30" },
    { castingMinimum: "500", overhead: "0.1" },
  );
  const number = (key: keyof typeof figures) => figures[key].toNumber();
  expect([number("metal"), number("casting"), number("labour"), number("findings")]).toEqual([2550, 150, 50, 80]);
  expect([number("castingMinimum"), number("pieces"), number("deposit")]).toEqual([500, 4, 0.5]);
  // 30 engraving, and 10 % of 2550 + 150 + 50 + 80 + 30 without the share of the model.
  expect(number("other")).toBe(316);
});

test("without minimum, share of the model and discount its lines are the landed cost, and its price the net price", () => {
  fc.assert(
    fc.property(randomRates, randomOrder, (rates, order) => {
      const { figures, sheet } = budgetOf(order.record, { ...rates.record, castingMinimum: "0" });
      const { castingMinimum, price, deposit, pieces, ...paid } = figures;
      const all = Object.values(paid).reduce((total, amount) => total.plus(amount), Quotient.zero);
      const { landed } = reckon(
        {
          ...rates,
          figures: {
            ...rates.figures,
            castingMinimum: { text: "0", quotient: Quotient.zero, fraction: new Fraction(0) },
          },
        },
        order,
      );
      expectExact(all, landed);
      expect(price.equals(sheet.netPrice.amount)).toBe(true);
      expect([castingMinimum.isZero(), pieces.equals(sheet.line.quantity)]).toEqual([true, true]);
      expect(deposit.equals(rates.figures.deposit.quotient)).toBe(true);
    }),
    { numRuns: 100 },
  );
});

import fc from "fast-check";
import type Fraction from "fraction.js";
import { expect, test } from "vitest";
import { Quotient } from "../../src/exact/quotient";
import { parseOrder } from "../../src/order/order";
import { costOrder } from "../../src/quote/costsheet";
import { makeQuote } from "../../src/quote/quote";
import { ratesOf, read } from "./orders";
import { rounded } from "./reference";
import { workOrder } from "./workorders";

const DATE = "2026-03-02";

test("10,000 orders of every kind: each total is the sum of the lines shown, discount, tax and credit taken as said (fraction.js)", () => {
  fc.assert(
    fc.property(workOrder, ({ rates, form, expected }) => {
      const workshop = ratesOf(rates);
      const order = read(parseOrder(form, workshop));
      const sheets = costOrder(order, workshop);
      const { quote, watch } = makeQuote(order, sheets, workshop, DATE);
      const same = (actual: Quotient | undefined, exact: Fraction) =>
        actual !== undefined && actual.rounded(24).toFixed(24) === rounded(exact, 24);
      expect(quote.lines).toHaveLength(expected.lines.length);
      const figures: readonly (readonly [string, Quotient | undefined, Fraction])[] = [
        ...expected.lines.flatMap((line, index): [string, Quotient | undefined, Fraction][] => [
          [`price ${index}`, quote.lines[index]?.price.amount, line.price],
          [`amount ${index}`, quote.lines[index]?.amount.amount, line.amount],
          [`landed ${index}`, sheets[index]?.landed.amount, line.landed],
        ]),
        ["subtotal", quote.subtotal.amount, expected.subtotal],
        ["discount", quote.discount.amount, expected.discount],
        ["tax", quote.tax.amount, expected.tax],
        ["total", quote.total.amount, expected.total],
        ["credit", quote.ownGold?.credit.amount ?? Quotient.zero, expected.credit],
        ["to pay", quote.toPay.amount, expected.toPay],
        ["deposit and balance", quote.deposit.amount.plus(quote.balance.amount), expected.toPay],
        ["cash out", watch.cashOut.amount, expected.cashOut],
        ["net", watch.net.amount, expected.net],
      ];
      expect(figures.filter(([, actual, exact]) => !same(actual, exact)).map(([name]) => name)).toEqual([]);
      const shown = [...quote.lines, ...quote.extras].reduce(
        (sum, line) => sum.plus(line.amount.amount),
        Quotient.zero,
      );
      expect(shown.equals(quote.subtotal.amount)).toBe(true);
    }),
    { numRuns: 10_000 },
  );
}, 300_000);

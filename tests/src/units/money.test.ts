import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import type { Currency } from "../../../src/units/currency";
import { addMoney, money, roundToCurrency, roundUpToStep, subtractMoney, timesMoney } from "../../../src/units/money";
import { expectExact, expectFault, figure, figures, positives, rounded, upToStep } from "../reference";

const usd = (text: string) => money(Quotient.of(text), "USD");

describe("amounts of one currency", () => {
  test("sum, difference and multiple are exact (fraction.js)", () => {
    fc.assert(
      fc.property(
        figures(-100_000, 100_000, 4),
        figures(-100_000, 100_000, 4),
        figures(-100_000, 100_000, 4),
        (a, b, c) => {
          const [x, y, z] = [a, b, c].map((value) => money(value.quotient, "EUR")) as [
            ReturnType<typeof money<"EUR">>,
            ReturnType<typeof money<"EUR">>,
            ReturnType<typeof money<"EUR">>,
          ];
          expectExact(addMoney(x, y, z).amount, a.fraction.add(b.fraction).add(c.fraction));
          expectExact(subtractMoney(x, y).amount, a.fraction.sub(b.fraction));
          expectExact(timesMoney(x, c.quotient).amount, a.fraction.mul(c.fraction));
          expect(addMoney(x, y).currency).toBe("EUR");
        },
      ),
    );
  });

  test("two currencies are never added or subtracted, even where the compiler could not see it", () => {
    const dollars = money<Currency>(Quotient.of(1), "USD");
    const euros = money<Currency>(Quotient.of(1), "EUR");
    expectFault(() => addMoney(dollars, dollars, euros), "currencyMismatch", "found EUR beside USD");
    expectFault(() => subtractMoney(dollars, euros), "currencyMismatch", "found EUR beside USD");
  });

  test("an amount is frozen", () => {
    expect(Object.isFrozen(usd("1"))).toBe(true);
    expect(Object.isFrozen(roundToCurrency(usd("1.234")))).toBe(true);
  });
});

describe("rounding to the minor unit (ISO 4217)", () => {
  test.each([
    ["USD", "1.005", "1.01"],
    ["USD", "-1.005", "-1.01"],
    ["USD", "1.004999999999999999999", "1"],
    ["JPY", "1234.5", "1235"],
    ["JPY", "1234.49", "1234"],
    ["KWD", "0.0005", "0.001"],
    ["KWD", "1.23449", "1.234"],
    ["CLF", "1.00005", "1.0001"],
  ] as const)("%s %s becomes %s, half away from zero", (currency, amount, expected) => {
    expect(
      roundToCurrency(money(Quotient.of(amount), currency))
        .amount.value()
        .toString(),
    ).toBe(expected);
  });

  test("up and down are said by name", () => {
    expect(roundToCurrency(usd("1.001"), "up").amount.value().toString()).toBe("1.01");
    expect(roundToCurrency(usd("1.009"), "down").amount.value().toString()).toBe("1");
  });

  test("any ratio is rounded as the exact fraction is", () => {
    fc.assert(
      fc.property(figures(0, 100_000, 4), positives(1000, 4), (over, under) => {
        const amount = money(over.quotient.dividedBy(under.quotient), "USD");
        expect(roundToCurrency(amount).amount.value().toFixed(2)).toBe(rounded(over.fraction.div(under.fraction), 2));
      }),
      { numRuns: 1000 },
    );
  });
});

describe("a price step", () => {
  test.each([
    ["101", "5", "105"],
    ["100", "5", "100"],
    ["100.01", "50", "150"],
    ["0", "5", "0"],
    ["99.991", "0.05", "100"],
    ["99.99", "0", "99.99"],
  ])("%s in steps of %s is %s", (amount, step, expected) => {
    expect(roundUpToStep(usd(amount), Quotient.of(step)).amount.value().toString()).toBe(expected);
  });

  test("a price that is a whole number of steps stays, though it came through thirds", () => {
    const hundred = usd("300").amount.dividedBy(Quotient.of("7")).times(Quotient.of("7")).dividedBy(Quotient.of("3"));
    expect(roundUpToStep(money(hundred, "USD"), Quotient.of("50")).amount.value().toString()).toBe("100");
  });

  test("gives the least whole number of steps not below the amount (fraction.js)", () => {
    fc.assert(
      fc.property(figures(0, 100_000, 4), positives(1000, 4), positives(100, 2), (over, under, step) => {
        const ratio = over.fraction.div(under.fraction);
        const priced = roundUpToStep(money(over.quotient.dividedBy(under.quotient), "USD"), step.quotient);
        expectExact(priced.amount, upToStep(ratio, step.fraction));
      }),
      { numRuns: 1000 },
    );
  });
});

test("a figure of the reference is the figure of the library", () => {
  expectExact(figure("-12.0500").quotient, figure("-12.05").fraction);
});

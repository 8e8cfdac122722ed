import { expect, test } from "vitest";
import { currenciesOf, splitMoney } from "../../../src/units/moneytext";

test.each([
  ["1200", "1200", undefined, undefined],
  ["EUR 1.200,50", "1.200,50", "EUR", undefined],
  ["1200 chf", "1200", "CHF", undefined],
  ["€1,200", "1,200", undefined, "€"],
  ["1200 $", "1200", undefined, "$"],
  ["US$ 1200", "1200", "USD", undefined],
  // XYZ and XAU are no money: the figure stays whole for its fault to name.
  ["1200 XYZ", "1200 XYZ", undefined, undefined],
  ["XAU 1", "XAU 1", undefined, undefined],
])("%s is the figure %s", (typed, figure, currency, sign) => {
  expect(splitMoney(typed)).toEqual({ figure, currency, sign });
});

test("a number stays one", () => {
  expect(splitMoney(12.5)).toEqual({ figure: 12.5, currency: undefined, sign: undefined });
});

test("a sign of many currencies says no more than it does", () => {
  expect(currenciesOf("€")).toEqual(["EUR"]);
  expect(currenciesOf("$")).toContain("CAD");
  expect(currenciesOf("¥")).toEqual(["JPY", "CNY"]);
  expect(currenciesOf("#")).toEqual([]);
});

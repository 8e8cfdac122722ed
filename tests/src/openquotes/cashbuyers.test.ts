import { expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { cashBuyers } from "../../../src/openquotes/cashbuyers";
import { readQuoteNumber } from "../../../src/order/quotenumber";
import { type Currency, parseCurrency } from "../../../src/units/currency";
import { money } from "../../../src/units/money";

/** Quotes as "number customer amount currency status", with "!" where the last day is past and "<" where it is older than a year. */
function buyers(...quotes: readonly string[]) {
  const read = quotes.map((text) => {
    const [name = "", customer = "", amount = "", currency = "", status = "", sign = ""] = text.split(" ");
    const number = readQuoteNumber(name);
    if (!number) throw new Error(text);
    const total = money(Quotient.of(amount), parseCurrency(currency) as Currency);
    return { number, customer, total, status, ended: sign === "!", isOfThisYear: sign !== "<" };
  });
  return cashBuyers(read).map(({ customer, together, quotes: own }) =>
    [customer, together.amount.value().toFixed(), own.map(({ number }) => `${number.number}${number.revision}`)].join(
      " ",
    ),
  );
}

test("payments of one customer add up; more than 10,000 in all is reported, 10,000 is not (26 U.S.C. 6050I, Publication 1544)", () => {
  expect(buyers("1001 Ada 6000 USD quoted", "1002 Ada 4000 USD quoted")).toEqual([]);
  expect(buyers("1001 Ada 6000 USD quoted", "1002 Ada 4000.01 USD quoted")).toEqual(["Ada 10000.01 1001,1002"]);
});

test("what is in work or handed over within the year counts, and one name is one buyer however it is written", () => {
  expect(buyers("1001 Ada 6000 USD finished", "1002 ADA 5000 USD quoted")).toEqual(["Ada 11000 1001,1002"]);
  expect(buyers("1001 Ada 6000 USD finished <", "1002 Ada 5000 USD quoted")).toEqual([]);
});

test("other buyers, other currencies, quotes that were turned down or have ended bring no payment", () => {
  expect(buyers("1001 Ada 6000 USD quoted", "1002 Ben 6000 USD quoted")).toEqual([]);
  expect(buyers("1001 Ada 60000 EUR quoted", "1002 Ada 6000 USD quoted")).toEqual([]);
  expect(buyers("1001 Ada 6000 USD quoted !", "1002 Ada 6000 USD quoted")).toEqual([]);
  expect(buyers("1001 Ada 6000 USD agreed !", "1002 Ada 6000 USD quoted")).toEqual(["Ada 12000 1001,1002"]);
});

test("of the letters of one quote only the last counts", () => {
  expect(buyers("1001 Ada 6000 USD quoted", "1001b Ada 7000 USD quoted")).toEqual([]);
});

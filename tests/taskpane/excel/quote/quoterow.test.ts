import { expect, test } from "vitest";
import { costOrder, makeQuote, termsOf } from "../../../../src/index";
import { QUOTE_COLUMN_KEYS } from "../../../../taskpane/excel/quote/quotebook";
import { quoteRow } from "../../../../taskpane/excel/quote/quoterow";
import { orderOf, ratesOf } from "../../../src/orders";
import { blankOrder } from "../../../src/typedorders";

const BLANK = blankOrder();
const TYPED = {
  order: { ...BLANK.order, customer: "-10% Ltd" },
  lines: BLANK.lines.map((line) => ({ ...line, linkWeight: "1.0" })),
  extras: [],
};

function rowFor(order: Record<string, string>, rates: Record<string, string>) {
  const workshop = ratesOf(rates);
  const read = orderOf({ mark: "250", length: "25", linkWeight: "1", customer: "-10% Ltd", ...order }, workshop);
  const { quote } = makeQuote(read, costOrder(read, workshop), workshop, "2008-01-01");
  return quoteRow(quote, read, TYPED, termsOf(workshop, { time: 39448.375, source: "Noon, by telephone" }));
}

test("a quote's row says what the customer was told, as text where a person wrote it", () => {
  // 2 pieces at 3,575, 5 % off, 8.25 % tax: 7,352.88, by hand in tests/src/quote.test.ts.
  const row = rowFor({ quantity: "2", discount: "0.05", design: "3-4" }, { tax: "0.0825", validity: "31" });
  expect(QUOTE_COLUMN_KEYS.map((key) => row[key].content)).toEqual([
    "'1001",
    // Microsoft's documentation of Excel's dates: January 1, 2008 is the serial number 39448.
    39448,
    "'-10% Ltd",
    "'3-4",
    7352.88,
    "USD",
    expect.any(Number),
    39479,
    "quoted",
    expect.stringMatching(/^'\{"customer":"-10% Ltd","lines":\[\{"linkWeight":"1.0"\}\],"quoted":\{/),
  ]);
  expect(JSON.parse(String(row.order.content).slice(1)).quoted).toMatchObject({
    tax: "0.0825",
    taxIs: "on top",
    spotTime: "39448.375",
    spotSource: "Noon, by telephone",
  });
});

test.each([
  ["USD", "#,##0.00"],
  ["JPY", "#,##0"],
  ["KWD", "#,##0.000"],
])("a total in %s has the coins of ISO 4217", (currency, format) => {
  expect(rowFor({}, { currency }).total.format).toBe(format);
});

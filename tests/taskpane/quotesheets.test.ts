import fc from "fast-check";
import { expect, test } from "vitest";
import { readQuoteNumber } from "../../src/index";
import { sheetsOf } from "../../taskpane/excel/quote/quotenumbers";
import { quoteOf, quoteToPrint } from "../workbook/quotesheets";

const number = fc
  .tuple(fc.integer({ min: 1, max: 9_999_999 }), fc.constantFrom("", ..."abcdefghijklmnopqrstuvwxyz"))
  .map(([digits, letter]) => `${digits}${letter}`);

test("the page knows each of a quote's sheets by the name that the add-in gave it", () => {
  fc.assert(
    fc.property(number, (written) => {
      const read = readQuoteNumber(written);
      if (!read) throw new Error(`${written} is no number`);
      for (const [kind, name] of Object.entries(sheetsOf(read)))
        expect(quoteOf(name)).toEqual({ kind, number: written });
    }),
  );
});

test.each([
  "Quote template",
  "Quotes",
  "Quote",
  "Quote 1001 (2)",
  "Quote 0",
  "Quote 10010010",
  "My Quote 1001",
  "Quote 1001aa",
  "Rates",
])("%s is no quote's sheet", (name) => {
  expect(quoteOf(name)).toBeUndefined();
});

test("of several quotes the newest is the highest number, and its last revision", () => {
  const names = ["Rates", "Quote 999", "Quote 1001", "Quote 1001b", "Quote 1001a", "Job 2000"];
  expect(quoteToPrint("Rates", names)).toEqual({ number: "1001b", sheet: "Quote 1001b" });
  expect(quoteToPrint("Job 1001a", names)).toEqual({ number: "1001a", sheet: "Quote 1001a" });
  expect(quoteToPrint("Job 2000", names)).toEqual({ number: "2000", sheet: undefined });
  expect(quoteToPrint("Rates", ["Rates", "Job 2000"])).toBeUndefined();
});

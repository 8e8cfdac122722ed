import { describe, expect, test } from "vitest";
import { readQuoteNumber } from "../../../src/index";
import type { BookedQuote } from "../../../taskpane/excel/quote/quotebook";
import { bookedTotal, bookedValidity, newestFirst, openBooked } from "../../../taskpane/order/bookedquote";
import { blankOrder } from "../../src/typedorders";

function booked(written: string, cells: Partial<BookedQuote["cells"]> = {}): BookedQuote {
  const number = readQuoteNumber(written);
  if (!number) throw new Error(`${written} is no number`);
  return {
    number,
    cells: {
      number: written,
      date: 46000,
      customer: "Ada Quillfeather",
      design: "Plain curb",
      total: 3581,
      currency: "USD",
      spot: 2650.5,
      validUntil: 46014,
      status: "quoted",
      order:
        '{"customer":"Ada Quillfeather","lines":[{"linkWeight":"2.00"},{"design":"Cuff"}],"extras":[{"text":"Box"}]}',
      ...cells,
    },
  };
}

describe("opening a row of the quotes table", () => {
  test("gives every field as typed, and the spot it was quoted at where none was typed", () => {
    const { order, lines } = blankOrder(2);
    expect(openBooked(booked("1001"), "USD")).toEqual({
      ok: true,
      typed: {
        order: { ...order, customer: "Ada Quillfeather", spot: "2650.5" },
        lines: [
          { ...lines[0], linkWeight: "2.00" },
          { ...lines[1], design: "Cuff" },
        ],
        extras: [{ text: "Box", amount: "", cost: "" }],
      },
      terms: undefined,
    });
  });

  test("keeps a spot that was typed, to its last nought", () => {
    const opened = openBooked(booked("1001", { order: '{"spot":"2650.50","lines":[{}]}' }), "USD");
    expect(opened.ok && opened.typed.order.spot).toBe("2650.50");
  });

  test.each<[what: string, cells: Partial<BookedQuote["cells"]>, sentence: RegExp]>([
    ["an order cut short", { order: '{"customer":' }, /^Quote 1001a cannot be opened: its Order cell/],
    ["an order deleted", { order: "" }, /its Order cell/],
    ["a spot deleted", { spot: "" }, /its Spot cell/],
    ["a spot of words", { spot: "high" }, /its Spot cell/],
    ["another currency", { currency: "EUR" }, /is in EUR, and Rates are in USD/],
    ["no currency", { currency: "" }, /Rates are in USD/],
  ])("refuses %s with a sentence", (_, cells, sentence) => {
    const opened = openBooked(booked("1001a", cells), "USD");
    expect(opened.ok ? "" : opened.sentence).toMatch(sentence);
  });
});

test("the total is shown in its currency's coins, or as a person wrote it", () => {
  const plain = (quote: BookedQuote) => bookedTotal(quote).replaceAll("\u00a0", " ");
  expect(plain(booked("1001"))).toBe("USD 3,581.00");
  expect(plain(booked("1001", { currency: "JPY" }))).toBe("JPY 3,581");
  expect(plain(booked("1001", { currency: "gold", total: "lots" }))).toBe("gold lots");
});

test("a quote holds through its last day, and says so in words the day after", () => {
  // Microsoft's documentation of Excel's dates: January 1, 2008 is the serial number 39448.
  const quote = booked("1001", { validUntil: 39448 });
  expect(bookedValidity(quote, "2008-01-01")).toBe("Valid until Jan 1, 2008");
  expect(bookedValidity(quote, "2008-01-02")).toBe("Valid until Jan 1, 2008: ended");
  expect(bookedValidity(booked("1001", { validUntil: "" }), "2008-01-02")).toBe("");
});

test("the newest come first, however the table is sorted", () => {
  const rows = [
    booked("1001a", { date: 46001 }),
    booked("1002"),
    booked("1001"),
    booked("1003", { date: 46001 }),
    booked("1001b", { date: 46001 }),
  ];
  expect(newestFirst(rows).map(({ cells }) => cells.number)).toEqual(["1003", "1001b", "1001a", "1002", "1001"]);
});

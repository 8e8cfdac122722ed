import { afterAll, beforeEach, describe, expect, it } from "vitest";
import { type Currency, grams, lengthIn, money, Quotient } from "../../../src/index";
import {
  showCellDate,
  showGrams,
  showLength,
  showList,
  showMoney,
  showShare,
  showSpot,
} from "../../../taskpane/wording/display";
import { writeAs } from "../../../taskpane/wording/language";

afterAll(() => writeAs(() => "en-US"));

beforeEach(() => {
  writeAs(() => "en-US");
});

/** Intl joins code and amount by a space that does not break; which one is no matter here. */
const plain = (text: string) => text.replace(/\s/g, " ");
const amount = (value: string, currency: Currency = "USD") => money(Quotient.of(value), currency);

describe("figures as a person reads them", () => {
  it("keeps every digit of an amount that a double could not hold", () => {
    expect(plain(showMoney(amount("1234567890123456789.05")))).toBe("USD 1,234,567,890,123,456,789.05");
  });

  it("rounds money half away from zero, once", () => {
    expect(plain(showMoney(amount("0.165")))).toBe("USD 0.17");
    expect(plain(showMoney(amount("-0.165")))).toBe("-USD 0.17");
    expect(plain(showMoney(amount("0.1649999999999999999999999")))).toBe("USD 0.16");
  });

  it("has no minus zero", () => {
    expect(plain(showMoney(amount("-0.001")))).toBe("USD 0.00");
  });

  // Minor units: ISO 4217.
  it.each([
    ["JPY", "1250.5", "JPY 1,251"],
    ["KWD", "1250.5", "KWD 1,250.500"],
    ["IQD", "1250.5", "IQD 1,250.500"],
    ["CLF", "1250.5", "CLF 1,250.5000"],
  ] as const)("gives %s the digits of its minor unit", (currency, value, shown) => {
    expect(plain(showMoney(amount(value, currency)))).toBe(shown);
  });

  it("shows a spot with the digits it was given", () => {
    expect(plain(showSpot(amount("2650")))).toBe("USD 2,650.00");
    expect(plain(showSpot(amount("2650.1255")))).toBe("USD 2,650.1255");
  });

  it("writes figures in the language of the workbook", () => {
    writeAs(() => "de-DE");
    expect(plain(showMoney(amount("1250.5", "EUR")))).toBe("1.250,50 EUR");
    expect(plain(showGrams(grams(Quotient.of("191.4")), 2))).toBe("191,40 g");
    // Words are the pane's own, whatever the workbook's language.
    expect(showList(["Design", "Mark"])).toBe("Design and Mark");
  });

  it("shows weights, lengths and shares in their units", () => {
    expect(plain(showGrams(grams(Quotient.of("191.44")), 1))).toBe("191.4 g");
    expect(plain(showLength(lengthIn(Quotient.of("24"), "in"), "cm"))).toBe("60.96 cm");
    expect(plain(showShare(Quotient.of("0.2308")))).toBe("23.1%");
  });

  // Microsoft's documentation of Excel's dates: January 1, 2008 is the serial number 39448.
  it("reads a date cell by its serial number", () => {
    expect(plain(showCellDate(39448))).toBe("Jan 1, 2008");
    expect(plain(showCellDate(39448.5))).toBe("Jan 1, 2008, 12:00 PM");
    expect(showCellDate(" this morning ")).toBe("this morning");
    expect(showCellDate("")).toBe("");
  });
});

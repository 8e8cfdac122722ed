import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { fineness, fineShare, karats, markOfFineness, parseMark } from "../../../src/gold/mark";
import { expectExact, expectFault, marks } from "../reference";

describe("a mark that is read (contract of the functions; karat n is n/24 by definition)", () => {
  test.each([
    ["14K", 14, 24],
    ["14k", 14, 24],
    ["14kt", 14, 24],
    ["14KT", 14, 24],
    ["14 ct", 14, 24],
    ["14 karat", 14, 24],
    ["14/24", 14, 24],
    [" 14 / 24 ", 14, 24],
    [14, 14, 24],
    ["14", 14, 24],
    ["13.5K", 27, 48],
    ["0.5K", 1, 48],
    ["1K", 1, 24],
    ["24K", 1, 1],
    [24, 1, 1],
    [1.5, 3, 48],
    ["585", 585, 1000],
    [585, 585, 1000],
    ["585/1000", 585, 1000],
    ["999.9", 9999, 10000],
    [1000, 1, 1],
    [25, 25, 1000],
    [24.5, 245, 10000],
    [0.585, 585, 1000],
    ["0.585", 585, 1000],
    ["58.5%", 585, 1000],
    ["58.5 %", 585, 1000],
    ["100%", 1, 1],
    ["1%", 1, 100],
  ])("%j is %i/%i of fine gold", (text, over, under) => {
    expectExact(fineShare(parseMark(text)), new Fraction(over, under));
  });
});

describe("a mark that is refused", () => {
  test.each([
    "25K",
    "24.01K",
    "0K",
    "-14K",
    "14.5.2",
    "K",
    "14X",
    "14KK",
    "K14",
    "14K gold",
    "gold",
    "25/24",
    "14/25",
    "1001",
    "1001/1000",
    "101%",
    "0%",
    "0",
    "-585",
    "14,5K",
    "1e2",
    "5".repeat(400),
    `${"5".repeat(400)}K`,
    0,
    -14,
    1001,
    1e308,
    Number.NaN,
    Number.POSITIVE_INFINITY,
    true,
    {},
    [585],
  ])("%j is no mark: the sentence names the field, what was found and what would be right", (value) => {
    expectFault(() => parseMark(value, "Mark"), "unknownMark", "Mark: found", '"14K"', "585", '"585/1000"', '"58.5%"');
  });

  test.each([1, "1", "1.0", "01", "+1"])("%j may be 1 karat or pure gold: refused as ambiguous", (value) => {
    expectFault(() => parseMark(value, "Mark"), "ambiguousMark", "1 karat or pure gold", '"1K"', "1000");
  });

  test.each([null, undefined, "", "  "])("%j is blank", (value) => {
    expectFault(() => parseMark(value, "Mark"), "blank", "Mark: found nothing", '"14K"');
  });
});

test("14K and 585 differ, and the difference is not blurred", () => {
  // 1000 x 14/24 = 583.333…; 585 - 583.333… = 5/3.
  expectExact(fineness(parseMark("585")).minus(fineness(parseMark("14K"))), new Fraction(5, 3));
  expect(fineness(parseMark("14K")).rounded(6).toFixed(6)).toBe("583.333333");
  expect(fineness(parseMark("585")).value().toString()).toBe("585");
});

test("fineness is a thousand shares, karats are twenty-four, and a fineness gives its mark back", () => {
  fc.assert(
    fc.property(marks, ({ text, share }) => {
      const mark = parseMark(text);
      expectExact(fineShare(mark), share);
      expectExact(fineness(mark), share.mul(1000));
      expectExact(karats(mark), share.mul(24));
      expectExact(fineShare(markOfFineness(fineness(mark))), share);
      expect(Object.isFrozen(mark)).toBe(true);
    }),
  );
});

test("a number cell of 58.5 % that a sheet computed is that share", () => {
  expectExact(fineShare(parseMark(0.1 + 0.2)), new Fraction(3, 10));
  expect(fineShare(parseMark(0.75)).equals(Quotient.of("0.75"))).toBe(true);
});

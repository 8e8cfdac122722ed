import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { fineness, fineShare, karats, markOfFineness, nameMark, parseMark, showMark } from "../../../src/gold/mark";
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

/** Every mark there is, in every writing that is taken: karats in halves, millesimals, and some of five digits. */
const WRITINGS: readonly (readonly [given: string | number, share: Fraction])[] = [
  ...Array.from({ length: 48 }, (_, at) => (at + 1) / 2).flatMap((karat) =>
    ["K", "k", "kt", "KT", " ct", " karat", "/24"].map(
      (unit) => [`${karat}${unit}`, new Fraction(String(karat)).div(24)] as const,
    ),
  ),
  ...[...Array.from({ length: 976 }, (_, at) => at + 25), 999.9, 583.3, 583.33, 416.7].flatMap((part) =>
    [part, String(part), `${part}/1000`, `${part}‰`].map(
      (given) => [given, new Fraction(String(part)).div(1000)] as const,
    ),
  ),
];

/** A fraction as a cell holds it. */
const asCell = (value: Fraction) => Number(value.valueOf().toPrecision(15));

test("a mark that goes out into a cell's 15 digits and comes in again is the same mark, in every writing (fraction.js)", () => {
  for (const [given, share] of WRITINGS) {
    const mark = parseMark(given);
    expectExact(fineShare(mark), share);
    // From 1 karat on; a smaller figure is read as karats.
    if (share.mul(24).lt(1)) continue;
    const out = asCell(share.mul(1000));
    for (const cell of [out, String(out), `${out}‰`, `${out}/1000`, share.valueOf(), asCell(share)]) {
      if (cell === 1) continue;
      expect([given, cell, fineShare(parseMark(cell)).equals(fineShare(mark))]).toEqual([given, cell, true]);
    }
    expect(fineShare(parseMark(`${asCell(share.mul(100))}%`)).equals(fineShare(mark))).toBe(true);
  }
});

test("a fineness with the digits of 14K is struck and named as 14K; one with fewer digits is itself", () => {
  for (const given of [583.333333333333, "583.333333333333", "583.3333333333333333", "0.583333333333333", 14 / 24]) {
    const mark = parseMark(given);
    expect([given, showMark(mark), nameMark(mark)]).toEqual([given, "14K", "14K"]);
  }
  expect(nameMark(parseMark(604.166666666667))).toBe("14.5K");
  expectExact(fineShare(parseMark("583.33333333333")), new Fraction("0.58333333333333"));
  expect(showMark(parseMark("375"))).toBe("375");
});

test("a sentence names a mark as it was given; what is struck is in its usual form", () => {
  const named = (given: unknown) => [nameMark(parseMark(given)), showMark(parseMark(given))];
  expect(named("14kt")).toEqual(["14kt", "14K"]);
  expect(named(" 14 ct ")).toEqual(["14 ct", "14K"]);
  expect(named("14/24")).toEqual(["14/24", "14K"]);
  expect(named(585)).toEqual(["585", "585"]);
  expect(named("585")).toEqual(["585", "585"]);
  expect(named("58.5%")).toEqual(["58.5%", "585"]);
  expect(named(584.96)).toEqual(["584.96", "584.9"]);
  // A bare figure up to 24 is a karat, and a share names no mark.
  expect(named(14)).toEqual(["14K", "14K"]);
  expect(named(0.585)).toEqual(["585", "585"]);
});

test("a number cell of 58.5 % that a sheet computed is that share", () => {
  expectExact(fineShare(parseMark(0.1 + 0.2)), new Fraction(3, 10));
  expect(fineShare(parseMark(0.75)).equals(Quotient.of("0.75"))).toBe(true);
});

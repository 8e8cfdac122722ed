import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Decimal, decimalOfCell, decimalOfDouble, parseDecimal, roundTo } from "../../../src/exact/decimal";
import { pointed } from "../reference";

describe("rounding", () => {
  test.each([
    // Definition of half away from zero; the doubles of these ties lie to either side of them.
    ["1.005", 2, "1.01"],
    ["2.675", 2, "2.68"],
    ["-1.005", 2, "-1.01"],
    ["0.165", 2, "0.17"],
    ["0.125", 2, "0.13"],
    ["-0.5", 0, "-1"],
    ["2.5", 0, "3"],
    ["1.0049999999999999999999999999999", 2, "1"],
    ["27.45", 1, "27.5"],
  ])("%s to %i decimals is %s, half away from zero", (value, decimals, expected) => {
    expect(roundTo(new Decimal(value), decimals).toString()).toBe(expected);
  });

  test.each([
    ["up", "1.001", "1.01"],
    ["up", "-1.001", "-1.01"],
    ["up", "1.01", "1.01"],
    ["down", "1.009", "1"],
    ["down", "-1.009", "-1"],
  ] as const)("%s takes %s to %s", (rounding, value, expected) => {
    expect(roundTo(new Decimal(value), 2, rounding).toString()).toBe(expected);
  });

  test("every tie built on purpose goes away from zero, and a hair below it goes back", () => {
    fc.assert(
      fc.property(
        fc.bigInt({ min: 0n, max: 10n ** 15n }),
        fc.integer({ min: 0, max: 6 }),
        fc.boolean(),
        (n, places, minus) => {
          const sign = minus ? -1n : 1n;
          const tie = pointed(sign * (10n * n + 5n), places + 1);
          const below = pointed(sign * ((10n * n + 5n) * 10n ** 20n - 1n), places + 21);
          expect(roundTo(new Decimal(tie), places).eq(pointed(sign * (n + 1n), places))).toBe(true);
          expect(roundTo(new Decimal(below), places).eq(pointed(sign * n, places))).toBe(true);
        },
      ),
      { numRuns: 2000 },
    );
  });
});

describe("a plain decimal text", () => {
  test.each([
    ["12.50", "12.5"],
    [" 2.05 ", "2.05"],
    [".5", "0.5"],
    ["7.", "7"],
    ["+3", "3"],
    ["-4.1", "-4.1"],
    ["007", "7"],
    ["0.1234567890123456789012345678901234567890", "0.123456789012345678901234567890123456789"],
  ])("%j is the decimal it says", (text, expected) => {
    expect(parseDecimal(text)?.toFixed()).toBe(expected);
  });

  test.each([
    "",
    " ",
    ".",
    "-",
    "1e308",
    "1e5",
    "14.5.2",
    "1,5",
    "1,000",
    "1 000",
    "0x10",
    "Infinity",
    "NaN",
    "twelve",
    "=2",
    "--1",
    "5%",
    "٣",
    "1".repeat(400),
  ])("%j is refused", (text) => {
    expect(parseDecimal(text)).toBeUndefined();
  });
});

describe("a number cell", () => {
  test("counts as the decimal its 15 significant digits say", () => {
    expect(decimalOfCell(0.1 + 0.2).toFixed()).toBe("0.3");
    expect(decimalOfCell(1.1 * 3).toFixed()).toBe("3.3");
    expect(decimalOfCell(1 / 3).toFixed()).toBe("0.333333333333333");
    expect(decimalOfCell(-0.07).toFixed()).toBe("-0.07");
  });

  test("of up to 15 digits keeps every one of them", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 999_999_999_999_999 }), fc.integer({ min: 0, max: 9 }), (count, places) => {
        const text = pointed(BigInt(count), places);
        expect(decimalOfCell(Number(text)).eq(text)).toBe(true);
      }),
    );
  });
});

test("a double is exactly its binary fraction", () => {
  // 0.1 is 3602879701896397 / 2^55: IEEE 754, by hand.
  expect(decimalOfDouble(0.1).toFixed()).toBe("0.1000000000000000055511151231257827021181583404541015625");
  expect(decimalOfDouble(-0.375).toFixed()).toBe("-0.375");
  expect(decimalOfDouble(2 ** 60).toFixed()).toBe("1152921504606846976");
});

test("a division carries 60 digits, not the 20 of the bare library", () => {
  // 1/7 = 0.142857 repeating.
  expect(new Decimal(1).div(7).toFixed(58)).toBe(`0.${"142857".repeat(10).slice(0, 58)}`.replace(/1428$/, "1429"));
});

test("a large number is never written with an exponent", () => {
  expect(new Decimal(`1${"0".repeat(40)}`).toString()).toBe(`1${"0".repeat(40)}`);
  expect(new Decimal("0.00000000000001").toString()).toBe("0.00000000000001");
});

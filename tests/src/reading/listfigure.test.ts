import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { decimalEvidence, readListFigure } from "../../../src/reading/listfigure";

describe("the decimal sign of a list", () => {
  test.each([
    [["12,5", "1.234"], ","],
    [["1.234,50"], ","],
    [["1,234.50", "7"], "."],
    [["1.234.567"], ","],
    [["0.125"], "."],
    [["12345,678"], ","],
    [["1'234.5"], "."],
    [["1 234,5", "heavy"], ","],
  ])("%j is written with %s", (texts, sign) => {
    expect(decimalEvidence(texts)).toEqual({ sign, doubtful: undefined });
  });

  test("figures that do not tell, and figures that contradict each other, are asked about", () => {
    expect(decimalEvidence(["1360", "1.500"])).toEqual({ sign: undefined, doubtful: "1.500" });
    expect(decimalEvidence(["12,5", "12.5"])).toEqual({ sign: undefined, doubtful: "12,5" });
  });

  test("whole numbers need no sign", () => {
    expect(decimalEvidence(["1360", "12", ""])).toEqual({ sign: undefined, doubtful: undefined });
  });
});

describe("a figure of a list", () => {
  test.each([
    ["1.234,50", ",", "1234.50"],
    ["1,234.50", ".", "1234.50"],
    ["1.500", ",", "1500"],
    ["1.500", ".", "1.500"],
    ["1 234,5", ",", "1234.5"],
    ["1 234", undefined, "1234"],
    ["1'234.5", ".", "1234.5"],
    [",5", ",", "0.5"],
    ["-12,5", ",", "-12.5"],
    ["1360", undefined, "1360"],
  ] as const)("%s with the sign %s is %s", (text, sign, expected) => {
    expect(readListFigure(text, sign)).toBe(expected);
  });

  test.each([
    ["12.5", ","],
    ["1,23,456", "."],
    ["1.2.3", "."],
    ["1.500", undefined],
    ["heavy", "."],
    [".", "."],
    ["12 5", "."],
  ] as const)("%s with the sign %s is none", (text, sign) => {
    expect(readListFigure(text, sign)).toBeUndefined();
  });

  test("reads back what Intl writes, in German and in English, with and without groups", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10 ** 9 }), fc.boolean(), (cents, useGrouping) => {
        for (const [language, sign] of [
          ["de-DE", ","],
          ["en-US", "."],
          ["fr-FR", ","],
          ["de-CH", "."],
        ] as const) {
          const text = new Intl.NumberFormat(language, { minimumFractionDigits: 2, useGrouping }).format(cents / 100);
          expect(Number(readListFigure(text, sign))).toBe(cents / 100);
        }
      }),
    );
  });
});

import { describe, expect, test } from "vitest";
import { bearsMark, parseComposition } from "../../../src/gold/composition";
import { parseMark } from "../../../src/gold/mark";
import { expectFault } from "../reference";

const FIELD = "Composition";

describe("a composition", () => {
  test.each([
    "Au 585 Ag 265 Cu 150",
    "au:58.5, ag:26.5, cu:15",
    "Au=58.5% Ag=26.5% Cu=15%",
    "Au 0.585;Ag 0.265;Cu 0.15",
  ])("%s holds 585 parts of gold in a thousand", (text) => {
    expect(parseComposition(text, FIELD).fineness.value().toString()).toBe("585");
  });

  test("its density is that of its parts: 1000 / (585/19.32 + 265/10.49 + 150/8.96) = 13.82… (hand arithmetic)", () => {
    expect(parseComposition("Au 585 Ag 265 Cu 150", FIELD).density.value().toNumber()).toBeCloseTo(
      1000 / (585 / 19.32 + 265 / 10.49 + 150 / 8.96),
      12,
    );
  });
});

describe("a mark may understate, never overstate", () => {
  test("585 parts bear 585 and 9K, not 14K, which is 583.33… and borne, nor 750", () => {
    const composition = parseComposition("Au 585 Ag 265 Cu 150", FIELD);
    for (const mark of ["585", "9K", "14K"]) expect(() => bearsMark(composition, parseMark(mark), FIELD)).not.toThrow();
    expectFault(
      () => bearsMark(composition, parseMark("750"), FIELD),
      "outOfRange",
      "found 585 parts of gold",
      "mark 750",
    );
  });

  test("14/24 of gold, typed with the digits that a cell shows, bears 14K; with fewer it does not", () => {
    const bears = (text: string) => () => bearsMark(parseComposition(text, FIELD), parseMark("14kt"), FIELD);
    expect(bears("Au 583.333333333333 Cu 416.666666666667")).not.toThrow();
    expect(bears("Au 58.3333333333333 Cu 41.6666666666667")).not.toThrow();
    expectFault(bears("Au 583.3333 Cu 416.6667"), "outOfRange", "less than the mark 14kt;");
  });

  test("583 parts do not bear 14K (14/24 is 583.33…)", () => {
    const composition = parseComposition("Au 583 Ag 417", FIELD);
    expectFault(() => bearsMark(composition, parseMark("14K"), FIELD), "outOfRange", "mark 14K", "must not overstate");
  });
});

describe("bad input", () => {
  test.each(["", "gold", "Au", "Au 585 Xx 415", "Au -5 Ag 105", "585", "Au 585 Ag"])("%j is no composition", (text) => {
    expectFault(
      () => parseComposition(text, FIELD),
      "unknownWord",
      "Composition: found",
      "such as Au 585 Ag 265 Cu 150",
    );
  });

  test("parts that make up no whole", () => {
    expectFault(
      () => parseComposition("Au 585 Ag 200", FIELD),
      "outOfRange",
      "Composition: found parts that sum to 785",
    );
  });
});

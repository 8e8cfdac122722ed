import { ucum } from "@atomic-ehr/ucum";
import { describe, expect, test } from "vitest";
import { type AskedUnit, readAskedWeight, splitWeight, unitsOfWord, unitWeight } from "../../../src/market/askedunit";
import { expectFault } from "../reference";

const grams = (value: unknown) => readAskedWeight(value, "Weight").grams;

describe("the weight of an offer", () => {
  test.each([
    ["12.5", "12.5"],
    [12.5, "12.5"],
    ["12.5 g", "12.5"],
    ["12.5gm.", "12.5"],
    // 8 x 1.55517384, 0.4 x 31.1034768 and 0.4 x 28.349523125, by hand.
    ["8 dwt", "12.44139072"],
    ["0.4 troy oz", "12.44139072"],
    ["0.4 oz av", "11.33980925"],
  ])("%s is %s g", (typed, expected) => {
    expect(grams(typed).value().toString()).toBe(expected);
  });

  test.each([
    ["dwt", "[pwt_tr]"],
    ["ozt", "[oz_tr]"],
    ["oz av", "[oz_av]"],
    ["grain", "[gr]"],
    ["kg", "kg"],
    ["ct", "[car_m]"],
  ] as const)("one %s, and 7.25 of it, as UCUM 1.9 has them, relative 1e-12", (unit: AskedUnit, code) => {
    const near = (ours: number, theirs: number) => expect(Math.abs(ours - theirs) / theirs).toBeLessThan(1e-12);
    near(unitWeight(unit).grams.toNumber(), ucum.convert(1, code, "g"));
    near(grams(`7.25 ${unit}`).toNumber(), ucum.convert(7.25, code, "g"));
  });

  test("an ounce of which kind is not said is asked about, and so is gr", () => {
    for (const typed of ["0.4 oz", "0.4 OZ.", "0.4 ounces"]) {
      expectFault(() => grams(typed), "unknownWord", "Weight", "31.1035 g", "28.3495 g", "give 0.4 ozt or 0.4 oz av");
    }
    expectFault(() => grams("12 gr"), "unknownWord", "a gram", "a grain", "give 12 g or 12 grain");
  });

  test("anything else is told", () => {
    expectFault(() => grams(""), "blank", "found nothing");
    expectFault(() => grams("0"), "outOfRange", "above 0");
    expectFault(() => grams("0 dwt"), "outOfRange", "above 0");
    expectFault(() => grams("12 stone"), "unknownWord", '"12 stone"', "not known");
    expectFault(() => grams("heavy"), "notANumber", "heavy");
    expectFault(() => grams("2,5 g"), "notANumber", "2,5");
  });
});

test("a word is no unit, one unit, or two", () => {
  expect(unitsOfWord("Pennyweight")).toEqual(["dwt"]);
  expect(unitsOfWord("oz t")).toEqual(["ozt"]);
  expect(unitsOfWord("oz")).toEqual(["ozt", "oz av"]);
  expect(unitsOfWord("constructor")).toEqual([]);
});

test("figure and unit come apart, with a comma and with spaces", () => {
  expect(splitWeight(" 1.234,5 oz av ")).toEqual({ figure: "1.234,5", word: "oz av" });
  expect(splitWeight("8dwt")).toEqual({ figure: "8", word: "dwt" });
  expect(splitWeight("12")).toEqual({ figure: "12", word: "" });
  expect(splitWeight("heavy")).toEqual({ figure: "heavy", word: "" });
});

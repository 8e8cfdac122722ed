import { ucum } from "@atomic-ehr/ucum";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readScaleWeight } from "../../../src/units/scaleweight";
import { expectExact, expectFault, positives } from "../reference";

const grams = (value: unknown) => readScaleWeight(value, "Weight").grams;

describe("a weight as the scale shows it", () => {
  test.each([
    ["20.5", "20.5"],
    ["20.5 g", "20.5"],
    ["20.5g", "20.5"],
    // 8 x 1.55517384 = 12.44139072 and 0.04 x 1.55517384 = 0.0622069536, by hand.
    ["8.04 dwt", "12.5035976736"],
    ["0.4 OZT", "12.44139072"],
    ["12ct", "2.4"],
    [".5 g", "0.5"],
  ])("%s is %s g", (typed, expected) => {
    expect(grams(typed).value().toString()).toBe(expected);
  });

  test.each([
    ["dwt", "[pwt_tr]"],
    ["ozt", "[oz_tr]"],
    ["ct", "[car_m]"],
  ])("7.25 %s as UCUM 1.9 has it, relative 1e-12", (unit, code) => {
    const theirs = ucum.convert(7.25, code, "g");
    expect(Math.abs(grams(`7.25 ${unit}`).toNumber() - theirs) / theirs).toBeLessThan(1e-12);
  });

  test("grams are taken exactly, with and without their unit", () => {
    fc.assert(
      fc.property(positives(1000, 4), ({ text, fraction }) => {
        expectExact(grams(text), fraction);
        expectExact(grams(`${text} g`), fraction);
      }),
    );
  });

  test("anything else is told in a sentence that names the field and what would be right", () => {
    expectFault(() => grams(""), "blank", "Weight", "found nothing", "such as 8.04 dwt");
    expectFault(() => grams("12 oz"), "unknownWord", '"12 oz"', "g, dwt, ozt or ct");
    expectFault(() => grams("12 gr"), "unknownWord", '"12 gr"');
    expectFault(() => grams("0"), "outOfRange", "above 0");
    expectFault(() => grams("-2 g"), "outOfRange", "above 0");
    expectFault(() => grams("2,05"), "notANumber", "comma");
    expectFault(() => grams("2,05 g"), "notANumber", "2,05 g");
    expectFault(() => grams("heavy"), "notANumber", "heavy");
  });
});

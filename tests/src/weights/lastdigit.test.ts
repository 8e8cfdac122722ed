import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { readScaleWeight } from "../../../src/units/scaleweight";
import { grams } from "../../../src/units/weight";
import { finestDigit, isBeyondDigits, lastDigit } from "../../../src/weights/lastdigit";

const scale = (text: string) => readScaleWeight(text, "Weight");
const digit = (text: string) => lastDigit(scale(text)).grams.value().toString();

describe("the last digit of a scale", () => {
  test("is the last that was typed in grams", () => {
    expect(["20", "20.5", "20.52", "2.052", "2.0521"].map(digit)).toEqual(["1", "0.1", "0.01", "0.001", "0.0001"]);
  });

  test("of a weight in pennyweights is a hundredth of one: 0.0155517384 g (UCUM)", () => {
    expect(digit("13.2 dwt")).toBe("0.0155517384");
  });

  test("of several weights is the finest: a scale shows zeros that a cell does not keep", () => {
    expect(
      finestDigit([scale("20.5"), scale("20.51"), scale("21")])
        .grams.value()
        .toString(),
    ).toBe("0.01");
  });

  test("explains two of them, and no third, either way", () => {
    const within = (one: string, other: string) =>
      !isBeyondDigits(scale(one), scale(other), grams(Quotient.of("0.01")));
    expect([within("20.50", "20.52"), within("20.52", "20.50"), within("20.50", "20.53")]).toEqual([true, true, false]);
  });
});

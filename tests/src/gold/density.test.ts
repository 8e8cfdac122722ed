import { describe, expect, test } from "vitest";
import { readDensity } from "../../../src/gold/density";
import { expectFault } from "../reference";

const read = (value: unknown, fromComposition = true) => readDensity(value, "Density", "13.5", fromComposition);

describe("a density", () => {
  test("is taken as given in g/cm³", () => {
    expect(read(" 13.5 ").value.value().toString()).toBe("13.5");
    expect(read("13.5").composition).toBe(undefined);
  });

  test("of a composition is worked out: 1000 / (585/19.32 + 265/10.49 + 150/8.96) (hand arithmetic)", () => {
    const { value, composition } = read("Au 585 Ag 265 Cu 150");
    expect(value.value().toNumber()).toBeCloseTo(1000 / (585 / 19.32 + 265 / 10.49 + 150 / 8.96), 12);
    expect(composition?.parts.map(({ metal }) => metal)).toEqual(["Au", "Ag", "Cu"]);
  });

  test("that cannot be is told in a sentence", () => {
    expectFault(() => read(""), "blank", "Density", "such as 13.5");
    expectFault(() => read("0"), "outOfRange", "above 0");
    // No metal is as dense as 23 g/cm³.
    expectFault(() => read("135"), "outOfRange", "below 23");
    expectFault(() => read("14K"), "notANumber", '"14K"');
    expectFault(() => read("yellow"), "unknownWord", "no parts", "Au 585");
    expectFault(() => read("Au 585 Ag 100"), "outOfRange", "sum to 685");
    expectFault(() => read("Au 585 Ag 415", false), "notANumber", "g/cm³");
  });
});

import { describe, expect, test } from "vitest";
import { isBlank, readNumber } from "../../../src/reading/number";
import { expectFault } from "../reference";

const ANY = { right: "a number, such as 2.05" };
const read = (value: unknown, rule: Parameters<typeof readNumber>[2] = ANY) => readNumber(value, "Weight", rule);

describe("a number as a person gives it", () => {
  test.each([
    [2.05, "2.05"],
    ["2.05", "2.05"],
    [" 2.050 ", "2.05"],
    [0.1 + 0.2, "0.3"],
    [-0, "0"],
    [1e15, "1000000000000000"],
  ])("%j is read as %s", (value, expected) => {
    expect(read(value).value().abs().toFixed()).toBe(expected);
  });

  test.each([null, undefined, "", "   "])(
    "%j is blank, and the sentence names the field and what would be right",
    (value) => {
      expect(isBlank(value)).toBe(true);
      expectFault(() => read(value), "blank", "Weight:", "found nothing", "give a number, such as 2.05");
    },
  );

  test.each([0, "0", false, "x", Number.NaN])("%j is not blank", (value) => {
    expect(isBlank(value)).toBe(false);
  });

  test.each([
    ["two", "not a plain number"],
    ["14.5.2", "not a plain number"],
    ["1e308", "not a plain number"],
    ["12g", "not a plain number"],
    ["1,250.50", "separators"],
    ["1,250", "separators"],
    ["2,05", "comma where a point would be right"],
    ["=1+1", "not a plain number"],
    [true, "not a plain number"],
    [Number.NaN, "not a plain number"],
    [Number.POSITIVE_INFINITY, "not a plain number"],
    [{}, "not a plain number"],
    [[1], "not a plain number"],
  ])("%j is no number and the sentence says why", (value, why) => {
    expectFault(() => read(value), "notANumber", "Weight: found", why, "give a number");
  });

  test("the sentence shows what was found, as it was typed", () => {
    expectFault(() => read("two grams"), "notANumber", 'found "two grams"');
    expectFault(() => read(true), "notANumber", "found TRUE");
  });

  test.each([1e308, -1e308, 1e300, `1${"0".repeat(300)}`])("%d is too large to compute with", (value) => {
    expectFault(() => read(value), "tooLarge", "too large");
  });
});

describe("the range of a number", () => {
  test.each([
    [{ above: "0" }, ["0.001", 5], ["0", 0, "-1", -0.5]],
    [{ least: "0" }, ["0", 0, 7], ["-0.01"]],
    [{ below: "1" }, ["0.99", 0], ["1", 1, "1.5"]],
    [{ most: "1000" }, ["1000", 3], ["1000.01"]],
    [{ whole: true }, ["3", 3, "3.0"], ["3.5", 2.000001]],
    [{ least: "1", most: "5", whole: true }, [1, 5], [0, 6, 1.5]],
  ])("%j takes what is inside and refuses what is not", (bounds, inside, outside) => {
    const rule = { ...bounds, right: "what the rule says" };
    for (const value of inside) expect(() => read(value, rule)).not.toThrow();
    for (const value of outside) {
      expectFault(
        () => read(value, rule),
        "outOfRange",
        `found ${typeof value === "string" ? `"${value}"` : value}`,
        "give what the rule says",
      );
    }
  });
});

import { describe, expect, test } from "vitest";
import { UnreadableCell } from "../../../src/exact/errors";
import { readOptionalText, readText, wordsOf } from "../../../src/reading/words";
import { expectFault } from "../reference";

describe("a person's own words", () => {
  test.each(["=HYPERLINK(1)", "+49 30", "-Anna-", "@home", "<b>Anna</b> & {{customer}}", "Zoë 金 ✨", "'quoted'"])(
    "%j stays as it was typed",
    (text) => {
      expect(readText(text, "Customer", "the customer's name")).toBe(text);
      expect(readOptionalText(text, "Workshop")).toBe(text);
    },
  );

  test("only the spaces around them go", () => {
    expect(readText("  A  B \n", "Customer", "a name")).toBe("A  B");
  });

  test("a number counts as its words", () => {
    expect(readText(42, "Design", "a name")).toBe("42");
  });

  test.each([null, undefined, "", "  "])("%j is nothing where words are needed", (value) => {
    expectFault(
      () => readText(value, "Customer", "the customer's name"),
      "blank",
      "Customer: found nothing; give the customer's name",
    );
    expect(readOptionalText(value, "Workshop")).toBe("");
  });

  test("an error in their cell is not taken for words", () => {
    const cell = new UnreadableCell("error", "#N/A");
    expectFault(() => readText(cell, "Maker", "a name"), "unknownWord", "Maker: found the error #N/A; give a name");
    expectFault(() => readOptionalText(cell, "Engraving"), "unknownWord", "Engraving: found the error #N/A", "empty");
    expect(wordsOf(cell)).toBe("#N/A");
  });

  test("more than 200 characters are refused with their number, and only the start is shown", () => {
    expect(readText("x".repeat(200), "Customer", "a name")).toHaveLength(200);
    const long = "x".repeat(201);
    expectFault(() => readText(long, "Customer", "a name"), "tooLarge", "201 characters", "at most 200", "…");
    expect(() => readText(long, "Customer", "a name")).not.toThrow(long);
  });
});

test("a cell's words are those between the spaces around them, of whatever kind it is", () => {
  expect(["  Curb 8 mm ", 1001, "", "   ", null, undefined].map(wordsOf)).toEqual([
    "Curb 8 mm",
    "1001",
    "",
    "",
    "",
    "",
  ]);
});

import { describe, expect, test } from "vitest";
import { markAsWritten, sameLink, sameText } from "../../../src/weights/linkname";
import { expectFault } from "../reference";

const link = { model: "Ada curb", width: 8, mark: "14K", colour: "yellow" };

describe("which link a row speaks of", () => {
  test("letters' case and spaces make no other link, nor does a number typed as text", () => {
    expect(sameLink(link, { model: " ada  Curb", width: "8", mark: "14k", colour: "Yellow " })).toBe(true);
  });

  test.each([{ model: "Ada curb 2" }, { width: 9 }, { width: "" }, { mark: "585" }, { colour: "rose" }])(
    "%o makes another",
    (other) => {
      expect(sameLink(link, { ...link, ...other })).toBe(false);
    },
  );

  test("blank cells say the same, whatever they are", () => {
    expect(sameText("", null)).toBe(true);
    expect(sameText("  ", undefined)).toBe(true);
  });
});

describe("a mark as it is written down", () => {
  test.each([
    ["14 kt", "14K"],
    ["14/24", "14K"],
    ["585/1000", "585"],
    [585, "585"],
    // Struck it would be 583.3, which is less: the figure stays.
    ["583.34", "583.34"],
  ])("%s becomes %s", (typed, written) => {
    expect(markAsWritten(typed, "Mark")).toBe(written);
  });

  test("may be left out where there is no metal yet, and only there", () => {
    expect(markAsWritten(" ", "Mark", true)).toBe("");
    expectFault(() => markAsWritten(" ", "Mark"), "blank", "Mark");
    expectFault(() => markAsWritten("gold", "Mark", true), "unknownMark", "gold");
  });
});

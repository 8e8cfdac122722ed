import { expect, it, vi } from "vitest";
import { doneWith, wayTo } from "../../../taskpane/controls/ended";

it("what was put on a sheet has the way to it, and what was not has none", () => {
  const goTo = vi.fn();
  const ended = doneWith("Price list is in the workbook.", goTo, "Price list");
  expect(ended).toMatchObject({ kind: "done", sentence: "Price list is in the workbook." });
  expect(ended.ways?.map(({ words }) => words)).toEqual(["Show Price list"]);
  ended.ways?.[0]?.press();
  expect(goTo).toHaveBeenCalledWith("Price list");
  expect(doneWith("Taken out.", goTo).ways).toEqual([]);
});

it("a way may have words of its own", () => {
  expect(wayTo("Quote 1001", () => undefined, "Show the quote").words).toBe("Show the quote");
});

import { afterAll, expect, it } from "vitest";
import type { LineKey } from "../../../src/index";
import { freshEntries, typedIn } from "../../../taskpane/controls/entries";
import { lineGroups } from "../../../taskpane/order/linefields";
import {
  blankLine,
  linesOf,
  misreadLines,
  type OrderLines,
  opened,
  openLineOf,
  typedLines,
  untouchedLine,
  withLine,
  withOpen,
  withoutOpen,
  withTaken,
  withTexts,
} from "../../../taskpane/order/orderlines";
import { writeAs } from "../../../taskpane/wording/language";

afterAll(() => writeAs(() => "en-US"));

const groups = lineGroups();

function three(): OrderLines {
  const first = { all: [freshEntries(groups)], open: 0 };
  return linesOf(groups, first, [{ design: "A" }, { design: "B" }, { design: "C" }]);
}

const designs = (lines: OrderLines) => typedLines(groups, lines).map(({ design }) => design);

it("a line stands after the one that was open, in its units", () => {
  const inUnits = withTexts(groups, opened(three(), 1), { lengthUnit: "mm", linksPerUnit: "cm" });
  const lines = withTexts(groups, withLine(inUnits, blankLine(groups, inUnits)), { design: "new" });
  expect(designs(lines)).toEqual(["A", "B", "new", "C"]);
  expect(lines.open).toBe(2);
  expect(typedLines(groups, lines)[2]).toMatchObject({ lengthUnit: "mm", linksPerUnit: "cm" });
});

it("a line taken out comes back where it stood, as it was", () => {
  const before = withTexts(groups, opened(three(), 1), { engraving: "M & J" });
  const without = withoutOpen(before);
  if (!without) throw new Error("Nothing was taken out");
  expect(designs(without.lines)).toEqual(["A", "C"]);
  const back = withTaken(without.lines, without.taken);
  expect(typedLines(groups, back)).toEqual(typedLines(groups, before));
  expect(back.open).toBe(1);
});

it("a line taken out at the end comes back at the end, though there are fewer by then", () => {
  const last = withoutOpen(opened(three(), 2));
  const fewer = last && withoutOpen(last.lines);
  if (!last || !fewer) throw new Error("Nothing was taken out");
  expect(designs(withTaken(fewer.lines, last.taken))).toEqual(["A", "C"]);
});

it("the last line is never taken out", () => {
  const two = withoutOpen(three());
  const one = two && withoutOpen(two.lines);
  expect(one?.lines.all).toHaveLength(1);
  expect(one && withoutOpen(one.lines)).toBeUndefined();
});

it("lines as they were are not touched by what becomes of them", () => {
  const lines = opened(three(), 2);
  const before = JSON.stringify(typedLines(groups, lines));
  withTexts(groups, lines, { design: "other" });
  withOpen(lines, typedIn(openLineOf(lines), "mark", "9K"));
  linesOf(groups, lines, [{ design: "X" }]);
  expect(JSON.stringify(typedLines(groups, lines))).toBe(before);
});

it("an order filled in without units keeps those that were measured in", () => {
  const measured = withTexts(groups, three(), { lengthUnit: "cm", linksPerUnit: "in" });
  const lines = linesOf(groups, measured, [{ design: "A", lengthUnit: "" }]);
  expect(typedLines(groups, lines)[0]).toMatchObject({ lengthUnit: "cm", linksPerUnit: "in" });
});

it.each<[given: Partial<Record<LineKey, string>>, stonesOn: string, stoneCount: string]>([
  [{ stoneCount: "10" }, "a number of links", "10"],
  [{ stoneCount: "10", stonesOn: "" }, "a number of links", "10"],
  [{ stoneCount: "", stonesOn: "" }, "no links", ""],
  [{ stoneCount: "10", stonesOn: "all links" }, "all links", ""],
])("stones given as %j are on %s", (given, stonesOn, stoneCount) => {
  const lines = withTexts(groups, three(), given);
  expect(typedLines(groups, lines)[0]).toMatchObject({ stonesOn, stoneCount });
});

it("a line is untouched until something but its units is filled", () => {
  const lines = three();
  expect(untouchedLine(groups, lines)).toBeUndefined();
  const blank = withLine(lines, blankLine(groups, lines));
  expect(untouchedLine(groups, blank)).toBe(1);
  expect(untouchedLine(groups, withTexts(groups, blank, { lengthUnit: "mm" }))).toBe(1);
  expect(untouchedLine(groups, withTexts(groups, blank, { solidity: "hollow" }))).toBeUndefined();
});

it("a figure of two readings is named with its line", () => {
  writeAs(() => "de-DE");
  const lines = opened(three(), 1);
  const typed = withOpen(lines, typedIn(openLineOf(lines), "linkWeight", "1.500"));
  expect(misreadLines(groups, typed)).toMatchObject([{ field: "linkWeight", line: 1 }]);
  writeAs(() => "en-US");
});

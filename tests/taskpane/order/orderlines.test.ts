import { afterAll, expect, it } from "vitest";
import type { LineKey } from "../../../src/index";
import { freshEntries } from "../../../taskpane/order/entries";
import { lineGroups } from "../../../taskpane/order/linefields";
import { orderLines } from "../../../taskpane/order/orderlines";
import { writeAs } from "../../../taskpane/wording/language";

afterAll(() => writeAs(() => "en-US"));

function three() {
  const groups = lineGroups();
  const lines = orderLines(groups, freshEntries(groups));
  lines.fill([{ design: "A" }, { design: "B" }, { design: "C" }]);
  return lines;
}

const designs = (lines: ReturnType<typeof three>) => lines.typed().map(({ design }) => design);

it("a line stands after the one that was open, in its units", () => {
  const lines = three();
  lines.go(1);
  lines.fillOpen({ lengthUnit: "mm", linksPerUnit: "cm" });
  lines.insert(lines.blank());
  lines.fillOpen({ design: "new" });
  expect(designs(lines)).toEqual(["A", "B", "new", "C"]);
  expect(lines.open).toBe(2);
  expect(lines.typed()[2]).toMatchObject({ lengthUnit: "mm", linksPerUnit: "cm" });
});

it("a line taken out comes back where it stood, as it was", () => {
  const lines = three();
  lines.go(1);
  lines.fillOpen({ engraving: "M & J" });
  const before = lines.typed();
  const taken = lines.takeOut();
  expect(designs(lines)).toEqual(["A", "C"]);
  if (taken) lines.putBack(taken);
  expect(lines.typed()).toEqual(before);
  expect(lines.open).toBe(1);
});

it("the last line is never taken out", () => {
  const lines = three();
  lines.takeOut();
  lines.takeOut();
  expect(lines.takeOut()).toBeUndefined();
  expect(lines.typed()).toHaveLength(1);
});

it("what is kept comes back whatever was done since, also to the lines themselves", () => {
  const lines = three();
  lines.go(2);
  const before = lines.typed();
  const back = lines.keep();
  lines.fillOpen({ design: "other" });
  lines.fill([{ design: "X" }]);
  back();
  expect(lines.typed()).toEqual(before);
  expect(lines.open).toBe(2);
});

it("an order filled in without units keeps those that were measured in", () => {
  const lines = three();
  lines.fillOpen({ lengthUnit: "cm", linksPerUnit: "in" });
  lines.fill([{ design: "A", lengthUnit: "" }]);
  expect(lines.typed()[0]).toMatchObject({ lengthUnit: "cm", linksPerUnit: "in" });
});

it.each<[given: Partial<Record<LineKey, string>>, stonesOn: string, stoneCount: string]>([
  [{ stoneCount: "10" }, "a number of links", "10"],
  [{ stoneCount: "10", stonesOn: "" }, "a number of links", "10"],
  [{ stoneCount: "", stonesOn: "" }, "no links", ""],
  [{ stoneCount: "10", stonesOn: "all links" }, "all links", ""],
])("stones given as %j are on %s", (given, stonesOn, stoneCount) => {
  const lines = three();
  lines.fillOpen(given);
  expect(lines.typed()[0]).toMatchObject({ stonesOn, stoneCount });
});

it("a line is untouched until something but its units is filled", () => {
  const lines = three();
  expect(lines.untouched()).toBeUndefined();
  lines.insert(lines.blank());
  expect(lines.untouched()).toBe(1);
  lines.fillOpen({ lengthUnit: "mm" });
  expect(lines.untouched()).toBe(1);
  lines.fillOpen({ solidity: "hollow" });
  expect(lines.untouched()).toBeUndefined();
});

it("a figure of two readings is named with its line", () => {
  writeAs(() => "de-DE");
  const lines = three();
  lines.go(1);
  lines.current.texts.linkWeight = "1.500";
  expect(lines.misread()).toMatchObject([{ field: "linkWeight", line: 1 }]);
  writeAs(() => "en-US");
});

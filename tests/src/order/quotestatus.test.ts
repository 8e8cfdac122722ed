import { expect, test } from "vitest";
import { STANDINGS, standingOf } from "../../../src/order/quotestatus";

test("a quote stands in one of nine places, in the order in which the metal goes", () => {
  // Issue 3: "asked, quoted, agreed, at the caster, at the polisher, with the setter, finished, handed over, turned down".
  expect(STANDINGS.join(", ")).toBe(
    "asked, quoted, agreed, at the caster, at the polisher, with the setter, finished, handed over, turned down",
  );
});

test("no standing holds a comma: Excel's list rule parts its words there", () => {
  expect(STANDINGS.filter((standing) => standing.includes(","))).toEqual([]);
});

test.each([
  ["agreed", "agreed"],
  [" At The Caster ", "at the caster"],
  ["on hold", undefined],
  ["", undefined],
  [3, undefined],
  [null, undefined],
])("%s stands for %s", (cell, standing) => {
  expect(standingOf(cell)).toBe(standing);
});

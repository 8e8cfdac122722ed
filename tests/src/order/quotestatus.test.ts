import { expect, test } from "vitest";
import { QUOTE_STATUSES, quoteStatusOf } from "../../../src/order/quotestatus";

test("a quote stands in one of nine places, in the order in which the metal goes", () => {
  // The stages of the work (common practice): "asked, quoted, agreed, at the caster, at the polisher, with the setter, finished, handed over, turned down".
  expect(QUOTE_STATUSES.join(", ")).toBe(
    "asked, quoted, agreed, at the caster, at the polisher, with the setter, finished, handed over, turned down",
  );
});

test("no status holds a comma: Excel's list rule parts its words there", () => {
  expect(QUOTE_STATUSES.filter((status) => status.includes(","))).toEqual([]);
});

test.each([
  ["agreed", "agreed"],
  [" At The Caster ", "at the caster"],
  ["on hold", undefined],
  ["", undefined],
  [3, undefined],
  [null, undefined],
])("%s stands for %s", (cell, status) => {
  expect(quoteStatusOf(cell)).toBe(status);
});

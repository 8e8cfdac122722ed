import { beforeEach, expect, it } from "vitest";
import { EXTRA_FIELDS, LINE_FIELDS, ORDER_FIELDS, type OrderField } from "../../../src/index";
import type { PlannedField } from "../../../taskpane/controls/formplan";
import { lineGroups } from "../../../taskpane/order/linefields";
import { EXTRA_GROUP, ORDER_GROUPS } from "../../../taskpane/order/orderfields";
import { writeAs } from "../../../taskpane/wording/language";

beforeEach(() => {
  writeAs(() => "en-US");
});

interface Placed {
  readonly field: OrderField<unknown>;
  readonly planned: Omit<PlannedField<string>, "key" | "isAsked" | "unit" | "caution" | "cautions">;
  readonly unit: (texts: Readonly<Record<string, string>>) => string;
}

/** Each field of the form beside its declaration, by its key. */
function placed(): ReadonlyMap<string, Placed> {
  const all = [
    ...lineGroups().flatMap(({ fields }) => fields.map((each) => [each.key, LINE_FIELDS[each.key], each] as const)),
    ...ORDER_GROUPS.flatMap(({ fields }) => fields.map((each) => [each.key, ORDER_FIELDS[each.key], each] as const)),
    ...EXTRA_GROUP.fields.map((each) => [each.key, EXTRA_FIELDS[each.key], each] as const),
  ];
  return new Map(
    all.map(([key, field, planned]) => [
      key,
      { field, planned, unit: (texts) => planned.unit((at) => texts[at] ?? "", "USD") },
    ]),
  );
}

it("every declared field stands in the form once", () => {
  const declared = [ORDER_FIELDS, LINE_FIELDS, EXTRA_FIELDS].flatMap((fields) => Object.keys(fields));
  expect([...placed().keys()].sort()).toEqual(declared.sort());
  expect(lineGroups().flatMap(({ fields }) => fields).length).toBe(Object.keys(LINE_FIELDS).length);
});

it("the form offers a choice's words, counts figures, and marks what must be filled", () => {
  for (const [key, { field, planned }] of placed()) {
    const { choices, numeric = false, required = false } = planned.plan;
    expect(choices?.map(({ value }) => value) ?? [], key).toEqual(field.words);
    expect(choices?.filter(({ shown }) => shown.trim() === "") ?? [], key).toEqual([]);
    expect([numeric, required], key).toEqual([field.is === "figure", field.needed]);
    expect(planned.usual !== undefined, key).toBe(field.usual !== undefined);
  }
});

it.each([
  ["ease", { lengthUnit: "cm" }, "cm"],
  ["claspLength", { lengthUnit: "in" }, "in"],
  // Beside these the unit is chosen in a field of its own.
  ["length", { lengthUnit: "cm" }, ""],
  ["linksPer", { linksPerUnit: "cm" }, ""],
  ["linkWeight", {}, "g"],
  ["ownGoldWeight", {}, "g"],
  ["claspStoneWidth", {}, "mm"],
  ["stoneCarat", {}, "ct"],
  ["setup", {}, "USD"],
  ["amount", {}, "USD"],
  ["spot", {}, "USD / ozt"],
  ["linePriceFigure", { linePriceBy: "premium" }, "USD / g"],
  ["linePriceFigure", { linePriceBy: "own price" }, "USD"],
  ["linePriceFigure", { linePriceBy: "margin" }, ""],
  ["priceFigure", { priceBy: "premium" }, "USD / g"],
  ["quantity", {}, ""],
  ["deposit", {}, ""],
] as const)("%s shows the unit it is counted in: %j %s", (key, texts, unit) => {
  expect(placed().get(key)?.unit(texts)).toBe(unit);
});

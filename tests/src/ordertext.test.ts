import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ORDER_KEYS } from "../../src/order";
import { readOrderText, type TypedOrder, writeOrderText } from "../../src/ordertext";

const typedOrder = fc
  .tuple(...ORDER_KEYS.map(() => fc.string({ unit: "grapheme", maxLength: 30 })))
  .map((texts) => Object.fromEntries(ORDER_KEYS.map((key, index) => [key, texts[index] ?? ""])) as TypedOrder);

describe("an order as typed, as one text", () => {
  test("comes back exactly, whatever was typed", () => {
    fc.assert(
      fc.property(typedOrder, (typed) => {
        expect(readOrderText(writeOrderText(typed))).toEqual(typed);
      }),
    );
  });

  test("leaves out what was left empty", () => {
    const blank = Object.fromEntries(ORDER_KEYS.map((key) => [key, ""])) as TypedOrder;
    expect(writeOrderText({ ...blank, customer: '=1+1 "quoted"', length: "24" })).toBe(
      '{"customer":"=1+1 \\"quoted\\"","length":"24"}',
    );
  });

  test.each<unknown>([
    "",
    "mine",
    '{"customer":"Ada"',
    "[]",
    "null",
    "7",
    '"customer"',
    '{"customer":7}',
    '{"customer":null}',
    '{"courier":"Ada"}',
    '{"__proto__":"Ada"}',
    7,
    undefined,
    null,
    true,
  ])("%j is no such text", (text) => {
    expect(readOrderText(text)).toBeUndefined();
  });
});

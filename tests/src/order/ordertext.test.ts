import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { EXTRA_KEYS } from "../../../src/order/extrafields";
import { LINE_KEYS, ORDER_KEYS } from "../../../src/order/fields";
import { readOrderText, type TypedOrder, writeOrderText } from "../../../src/order/ordertext";
import { NOT_KNOWN, termsOf } from "../../../src/rates/quotedterms";
import { randomRates, ratesOf } from "../orders";
import { blankOrder } from "../typedorders";

const TERMS = termsOf(ratesOf({ tax: "0" }), NOT_KNOWN);

const texts = <K extends string>(keys: readonly K[]) =>
  fc
    .tuple(...keys.map(() => fc.string({ unit: "grapheme", maxLength: 12 })))
    .map((typed) => Object.fromEntries(keys.map((key, index) => [key, typed[index] ?? ""])) as Record<K, string>);
const typedOrder: fc.Arbitrary<TypedOrder> = fc.record({
  order: texts(ORDER_KEYS),
  lines: fc.array(texts(LINE_KEYS), { minLength: 1, maxLength: 4 }),
  extras: fc.array(texts(EXTRA_KEYS), { maxLength: 3 }),
});

describe("an order as typed, as one text", () => {
  test("comes back exactly, whatever was typed in however many lines", () => {
    fc.assert(
      fc.property(typedOrder, (typed) => {
        expect(readOrderText(writeOrderText(typed, TERMS))?.typed).toEqual(typed);
      }),
    );
  });

  test("brings back what it was quoted at, at any rates, with when and where the spot was read", () => {
    fc.assert(
      fc.property(randomRates, fc.option(fc.nat(60_000)), fc.constantFrom("", "noon fixing"), (given, time, source) => {
        for (const by of ["markup", "margin", "premium"] as const) {
          const rates = ratesOf({ ...given.record, priceBy: by, [by]: "0.25" });
          const terms = termsOf(rates, { time: time ?? undefined, source });
          const kept = readOrderText(writeOrderText(blankOrder(), terms))?.terms;
          expect(JSON.stringify(kept)).toBe(JSON.stringify(terms));
        }
      }),
    );
  });

  test("of a version that kept no terms says so, and terms that are damaged are not taken for none", () => {
    expect(readOrderText('{"lines":[{}]}')).toEqual({ typed: blankOrder(), terms: undefined });
    const written = writeOrderText(blankOrder(), TERMS);
    for (const [good, damaged] of [
      ['"on top"', '"under"'],
      ['"tax":"0"', '"tax":"1,5"'],
      [/"quoted":.*\}\}$/, '"quoted":7}'],
      [/"currency":"USD",/, ""],
    ] as const) {
      expect(written).toMatch(good);
      expect(readOrderText(written.replace(good, damaged)), damaged).toBeUndefined();
    }
  });

  test("leaves out what was left empty", () => {
    const [line] = blankOrder().lines;
    if (!line) throw new Error("a blank order has a line");
    const typed = { ...blankOrder(), lines: [{ ...line, length: "24" }, line] };
    expect(writeOrderText({ ...typed, order: { ...typed.order, customer: '=1+1 "quoted"' } }, TERMS)).toMatch(
      /^\{"customer":"=1\+1 \\"quoted\\"","lines":\[\{"length":"24"\},\{\}\],"quoted":\{/,
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
    "{}",
    '{"customer":"Ada"}',
    '{"lines":[]}',
    '{"lines":{}}',
    '{"lines":[7]}',
    '{"lines":[[]]}',
    '{"lines":[{"customer":"Ada"}]}',
    '{"lines":[{}],"extras":7}',
    '{"lines":[{}],"extras":[{"length":"24"}]}',
    '{"lines":[{}],"extras":[null]}',
    '{"customer":7,"lines":[{}]}',
    '{"customer":null,"lines":[{}]}',
    '{"courier":"Ada","lines":[{}]}',
    '{"__proto__":"Ada","lines":[{}]}',
    7,
    undefined,
    null,
    true,
  ])("%j is no such text", (text) => {
    expect(readOrderText(text)).toBeUndefined();
  });
});

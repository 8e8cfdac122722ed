import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { keyOfHeader } from "../../../src/designs/headerwords";
import { parseOrder } from "../../../src/order/order";
import { readOrderText, writeOrderText } from "../../../src/order/ordertext";
import { orderQuestions } from "../../../src/order/questions";
import { costOrder } from "../../../src/quote/costsheet";
import { makeQuote } from "../../../src/quote/quote";
import { NOT_KNOWN, termsOf } from "../../../src/rates/quotedterms";
import { isPlated, platingOf, readPlatingMetal } from "../../../src/trade/plating";
import { ORDER, orderOf, RATES, type Record_, ratesOf } from "../orders";

const { customer: _customer, spot: _spot, discount: _discount, ...LINE } = ORDER;

/** The quote of lines, at rates with what plating costs. */
function quoteOf(lines: readonly Record_[], changes: Record_ = {}) {
  const rates = ratesOf({ plating: "40", ...changes });
  const form = {
    order: { customer: "A. Customer" },
    lines: lines.map((line) => ({ ...LINE, clasp: "none", ...line })),
    extras: [],
  };
  const read = parseOrder(form, rates);
  if (!read.ok) throw new Error(read.faults.map(({ sentence }) => sentence).join("\n"));
  const { quote } = makeQuote(read.value, costOrder(read.value, rates), rates, "2026-03-04");
  return { quote, asked: orderQuestions(read.value, form, rates).flatMap(({ lines }) => lines) };
}
const platingIn = (line: Record_, changes?: Record_) => quoteOf([line], changes).quote.lines[0]?.plating;
const faultsOf = (line: Record_, changes: Record_ = {}) => {
  const rates = ratesOf({ plating: "40", ...changes });
  const read = parseOrder({ order: { customer: "A." }, lines: [{ ...LINE, ...line }], extras: [] }, rates);
  return read.ok ? [] : read.faults.map(({ field, sentence }) => `${field}: ${sentence}`);
};

const RHODIUM = { platingMetal: "rhodium" };
const TWO_COLOURS = { pattern: "YYW", linkWeightWhite: "2.1" };

describe("the plating that a customer reads", () => {
  test.each([
    ["a white piece, with the metal on Rates", { colour: "white" }, RHODIUM, "rhodium", "piece"],
    [
      "with the line's own metal before that on Rates",
      { colour: "white", platingMetal: "black rhodium" },
      RHODIUM,
      "black rhodium",
      "piece",
    ],
    ["with the line's alone", { colour: "white", platingMetal: " rhodium " }, {}, "rhodium", "piece"],
    ["a rose piece that is plated by choice", { colour: "rose", plated: "plated" }, RHODIUM, "rhodium", "piece"],
    ["the white links of several colours", TWO_COLOURS, RHODIUM, "rhodium", "white links"],
    [
      "all of several colours without white",
      { pattern: "YR", linkWeightRose: "2", plated: "plated" },
      RHODIUM,
      "rhodium",
      "piece",
    ],
  ])("%s", (_what, line, rates, metal, part) => {
    expect(platingIn(line, rates)).toEqual({ metal, part });
  });

  test.each([
    ["yellow gold", {}, RHODIUM],
    ["white gold that is not plated", { colour: "white", plated: "not plated" }, RHODIUM],
    ["a metal beside a piece that is not plated", { platingMetal: "rhodium" }, {}],
    ["what is no metal beside such a piece", { platingMetal: "-" }, {}],
  ])("is none of %s", (_what, line, rates) => {
    const { quote, asked } = quoteOf([line], rates);
    expect([quote.lines[0]?.plating, asked]).toEqual([undefined, []]);
  });

  test("is never said without its metal, which is asked for, line by line", () => {
    const { quote, asked } = quoteOf([{ colour: "white" }, {}, { colour: "white", ...RHODIUM }, TWO_COLOURS]);
    expect(quote.lines.map(({ plating }) => plating?.metal)).toEqual([undefined, undefined, "rhodium", undefined]);
    expect(asked).toEqual([0, 3]);
  });

  test("costs the same, named or not", () => {
    const costs = [{}, RHODIUM].map((rates) => quoteOf([{ colour: "white" }], rates).quote.total.amount);
    expect(costs[0]?.equals(costs[1] ?? costs[0].plus(costs[0]))).toBe(true);
  });
});

test("a piece is plated by choice, or as usual where any of its links is white", () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom("yellow", "rose", "white", "green", "own"), { minLength: 1 }), (colours) => {
      expect(isPlated("as usual", colours)).toBe(colours.includes("white"));
      expect([isPlated("plated", colours), isPlated("not plated", colours)]).toEqual([true, false]);
    }),
  );
});

describe("a plating metal", () => {
  test.each([
    ["rhodium", "rhodium"],
    ["  Black Rhodium ", "Black Rhodium"],
    ["platinum", "platinum"],
    ["", ""],
    [undefined, ""],
  ])("%j is %j", (typed, metal) => {
    expect(readPlatingMetal(typed, "Plating metal")).toBe(metal);
  });

  test.each(["rhodium plated", "Plated with rhodium", "rhodium plating", "plate", "-", "2", 2, "?"])(
    "%j is no metal's name",
    (typed) => {
      expect(() => readPlatingMetal(typed, "Plating metal")).toThrow(
        /^Plating metal: found .*; give the metal alone, such as rhodium$/,
      );
    },
  );

  test("that is none is named as the line's or as that of Rates", () => {
    expect(faultsOf({ colour: "white", platingMetal: "rhodium plated" })).toEqual([
      'platingMetal: Plating metal: found "rhodium plated"; give the metal alone, such as rhodium',
    ]);
    expect(() => ratesOf({ platingMetal: "plated" })).toThrow("Plating metal: found");
  });
});

describe("workbooks from before plating metals", () => {
  test("have none on Rates, and are read", () => {
    const { platingMetal: _none, ...older } = { ...RATES, platingMetal: "" };
    expect(ratesOf(older).platingMetal).toBe("");
  });

  test("keep orders that are read as they were written", () => {
    const kept = readOrderText('{"customer":"Ada","lines":[{"design":"Curb","colour":"white","plated":"plated"}]}');
    expect(kept?.typed.lines[0]).toMatchObject({ plated: "plated", platingMetal: "" });
  });
});

test("an order keeps the metal it was made with", () => {
  const [line] = orderOf({ colour: "white", platingMetal: "rhodium" }, ratesOf({ plating: "0" })).lines;
  expect(line && platingOf(line)).toEqual({ metal: "rhodium", part: "piece" });
  const written = readOrderText('{"customer":"Ada","lines":[{"design":"Curb","platingMetal":"rhodium"}]}');
  const again = written && writeOrderText(written.typed, termsOf(ratesOf(), NOT_KNOWN));
  expect(readOrderText(again)?.typed.lines[0]?.platingMetal).toBe("rhodium");
});

test.each(["Plating metal", "plating metal", "Plated with", "PlatingMetal"])("a column %s says it", (header) => {
  expect(keyOfHeader(header)).toBe("platingMetal");
});

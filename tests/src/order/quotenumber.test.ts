import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CostingError } from "../../../src/exact/errors";
import {
  nextQuoteNumber,
  nextRevision,
  type QuoteNumber,
  readQuoteNumber,
  showQuoteNumber,
} from "../../../src/order/quotenumber";

const numbers = (...written: string[]): QuoteNumber[] =>
  written.map((each) => readQuoteNumber(each) ?? { number: Number.NaN, revision: each });
const anyNumber = fc.record({
  number: fc.integer({ min: 1, max: 9_999_999 }),
  revision: fc.constantFrom("", ..."abcdefghijklmnopqrstuvwxyz"),
});

describe("a quote's number", () => {
  test.each<[unknown, QuoteNumber]>([
    ["1001", { number: 1001, revision: "" }],
    [1001, { number: 1001, revision: "" }],
    ["1001a", { number: 1001, revision: "a" }],
    [" 1001B ", { number: 1001, revision: "b" }],
    ["9999999z", { number: 9_999_999, revision: "z" }],
  ])("%s is read", (written, read) => {
    expect(readQuoteNumber(written)).toEqual(read);
  });

  test.each([
    "",
    "a",
    "0",
    "0a",
    "01001",
    "1001ab",
    "1001 a",
    "1001-a",
    "10.5",
    "-3",
    "1e3",
    "10000000",
    "1001ä",
    null,
    undefined,
    true,
  ])("%s is no quote's number", (written) => {
    expect(readQuoteNumber(written)).toBeUndefined();
  });

  test("reads as it was written", () => {
    fc.assert(
      fc.property(anyNumber, (number) => {
        expect(readQuoteNumber(showQuoteNumber(number))).toEqual(number);
      }),
    );
  });
});

describe("the next number", () => {
  test.each<[least: number, taken: string[], next: string]>([
    [1001, [], "1001"],
    [1001, ["1001"], "1002"],
    [1001, ["1001", "1001c"], "1002"],
    [1003, ["1001"], "1003"],
    // Turned back by a person: what is listed keeps it up.
    [1, ["1007", "1002"], "1008"],
    // A gap is never filled: the quote that had that number may be in a customer's hand.
    [1001, ["1001", "1003"], "1004"],
  ])("from %s with %j taken is %s", (least, taken, next) => {
    expect(showQuoteNumber(nextQuoteNumber(least, numbers(...taken)))).toBe(next);
  });

  test("is never one that was taken, nor below the least", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9999 }), fc.array(anyNumber), (least, taken) => {
        const next = nextQuoteNumber(least, taken);
        expect(next.number).toBeGreaterThanOrEqual(least);
        expect(taken.some(({ number }) => number === next.number)).toBe(false);
      }),
    );
  });
});

describe("a revision", () => {
  test.each<[of: string, taken: string[], next: string]>([
    ["1001", ["1001"], "1001a"],
    ["1001", ["1001", "1001a"], "1001b"],
    ["1001a", ["1001", "1001a", "1001b"], "1001c"],
    // Its row and sheets were deleted: the one in hand still counts.
    ["1001b", ["1001"], "1001c"],
    ["1001", ["1001", "1002a", "1002b"], "1001a"],
    ["1001y", [], "1001z"],
  ])("of %s with %j taken is %s", (of, taken, next) => {
    const [number] = numbers(of);
    expect(number && showQuoteNumber(nextRevision(number, numbers(...taken)))).toBe(next);
  });

  test("after z is a sentence", () => {
    const [number] = numbers("1001");
    const revise = () => number && nextRevision(number, numbers("1001z"));
    expect(revise).toThrow(CostingError);
    expect(revise).toThrow(/^Quote 1001: its revisions have come to z, .* start a new order/);
  });
});

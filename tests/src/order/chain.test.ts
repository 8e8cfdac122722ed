import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Quotient, sum } from "../../../src/exact/quotient";
import { parseChain } from "../../../src/order/chain";
import { moneyOf } from "../../../src/trade/boughtpart";
import { ORDER, type Record_, read } from "../orders";

const chainOf = (changes: Record_) => read(parseChain({ ...ORDER, ...changes }, "USD"));
const text = (value: Quotient | undefined) => value?.value().toString();

describe("the chain of an order", () => {
  test("24 in less a clasp of half an inch at 4 links an inch: 94 links, 47 closed and 47 open (hand arithmetic)", () => {
    const { links, linkGroups, clasp } = chainOf({ claspLength: "0.5", claspWeight: "3.4", claspCost: "12" });
    expect(text(links)).toBe("94");
    expect(linkGroups.map(({ closed, open }) => [text(closed), text(open)])).toEqual([["47", "47"]]);
    expect([
      clasp.kind,
      clasp.cast,
      text(clasp.length.millimetres),
      text(moneyOf(clasp.cost) ?? clasp.length.millimetres),
    ]).toEqual(["bought lobster clasp", false, "12.7", "12"]);
  });

  test("a neck of 40 cm and 5 cm of ease are a chain of 450 mm", () => {
    const chain = chainOf({ lengthGiven: "neck", length: "40", ease: "5", lengthUnit: "cm" });
    expect([text(chain.length.millimetres), text(chain.measured), text(chain.ease)]).toEqual(["450", "40", "5"]);
  });

  test("groups add up to the links, closed and open to each group, whatever the pattern", () => {
    const weights = { linkWeightYellow: "2", linkWeightRose: "2.1", linkWeightWhite: "1.9", linkWeightGreen: "2.2" };
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom(..."YRWG"), minLength: 1, maxLength: 7 }),
        fc.integer({ min: 2, max: 90 }),
        (letters, length) => {
          const pattern = `Y${letters}`;
          const { links, linkGroups } = chainOf({ ...weights, pattern, length: String(length) });
          expect(sum(linkGroups.map((group) => group.links)).equals(links)).toBe(true);
          for (const group of linkGroups) expect(group.closed.plus(group.open).equals(group.links)).toBe(true);
        },
      ),
    );
  });

  test("faults of the fields and of the clasp are gathered together", () => {
    const parsed = parseChain({ ...ORDER, length: "x", clasp: "magnet", pattern: "Z" }, "USD");
    expect(parsed.ok ? [] : parsed.faults.map(({ field }) => field).sort()).toEqual(["clasp", "length", "pattern"]);
  });

  test("each colour has its own link weight; none is taken for another", () => {
    const { linkGroups } = chainOf({ colour: "white", pattern: "WY", linkWeight: "1.9", linkWeightYellow: "2.05" });
    expect(linkGroups.map(({ colour, linkWeight }) => [colour, text(linkWeight.grams)])).toEqual([
      ["yellow", "2.05"],
      ["white", "1.9"],
    ]);
    const parsed = parseChain({ ...ORDER, pattern: "YRW" }, "USD");
    expect(parsed.ok ? [] : parsed.faults.map(({ field }) => field)).toEqual(["linkWeightRose", "linkWeightWhite"]);
  });
});

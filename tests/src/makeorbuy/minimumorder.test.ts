import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import type { MinimumOrder } from "../../../src/makeorbuy/makeroffer";
import { leastOrder } from "../../../src/makeorbuy/minimumorder";
import { money } from "../../../src/units/money";
import { grams } from "../../../src/units/weight";
import { expectFault, figures, positives } from "../reference";

const q = (text: string) => Quotient.of(text);
const usd = (text: string) => money(q(text), "USD");
const inGrams = (text: string): MinimumOrder => ({ kind: "weight", weight: grams(q(text)) });
const inMoney = (text: string): MinimumOrder => ({ kind: "money", money: usd(text) });
/** 8 g at 28.25 a gram. */
const EIGHT = { weight: grams(q("8")), cost: usd("226") };

const said = (minimum: MinimumOrder | undefined, wanted: string, each = EIGHT) => {
  const { pieces, weight, cash, spare, tiedUp } = leastOrder(minimum, each, q(wanted));
  return [pieces, weight.grams, cash.amount, spare, tiedUp.amount].map((value) => value.value().toString());
};

describe("the least order, in whole pieces", () => {
  test("100 g of 8 g pieces are 13, 104 g and 2,938; of 3 wanted 10 lie in stock, 2,260 (hand arithmetic)", () => {
    expect(said(inGrams("100"), "3")).toEqual(["13", "104", "2938", "10", "2260"]);
  });

  test("500 in money are 3 pieces of 226, 678 (hand arithmetic)", () => {
    expect(said(inMoney("500"), "1")).toEqual(["3", "24", "678", "2", "452"]);
  });

  test("a minimum that is just reached, or that the order goes beyond, ties nothing up", () => {
    expect(said(inGrams("96"), "12")).toEqual(["12", "96", "2712", "0", "0"]);
    expect(said(inGrams("96"), "20").slice(3)).toEqual(["0", "0"]);
    expect(said(undefined, "2")).toEqual(["2", "16", "452", "0", "0"]);
  });

  test("is the smallest that reaches the minimum: one piece fewer would not, unless they are wanted", () => {
    fc.assert(
      fc.property(
        positives(900, 2),
        positives(60, 2),
        positives(90, 2),
        figures(1, 40, 0),
        fc.boolean(),
        (minimum, weight, cost, wanted, byWeight) => {
          const least: MinimumOrder = byWeight
            ? { kind: "weight", weight: grams(minimum.quotient) }
            : { kind: "money", money: money(minimum.quotient, "USD") };
          const each = { weight: grams(weight.quotient), cost: money(cost.quotient, "USD") };
          const { pieces, spare } = leastOrder(least, each, wanted.quotient);
          const count = Number(pieces.value());
          const one = byWeight ? weight.fraction : cost.fraction;
          expect(Number.isInteger(count)).toBe(true);
          expect(one.mul(count).gte(minimum.fraction)).toBe(true);
          expect(count >= Number(wanted.text)).toBe(true);
          expect(Number(spare.value())).toBe(count - Number(wanted.text));
          if (count > Number(wanted.text)) expect(one.mul(count - 1).lt(minimum.fraction)).toBe(true);
        },
      ),
      { numRuns: 500 },
    );
  });

  test("a minimum in another currency is refused, even where the compiler could not see it", () => {
    const euro: MinimumOrder = { kind: "money", money: money(q("500"), "EUR") };
    expectFault(() => leastOrder(euro, EIGHT, q("1")), "currencyMismatch");
  });
});

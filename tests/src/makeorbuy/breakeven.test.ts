import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { breakEven } from "../../../src/makeorbuy/breakeven";
import { compareSources, sellersFor } from "../../../src/makeorbuy/chainchoice";
import { LEVER_KEYS, type Lever, moved } from "../../../src/makeorbuy/figures";
import { readPriceLists } from "../../../src/makeorbuy/makers";
import { AT_25, costed, HUNDRED_GRAMS, priced } from "../chains";
import { type Record_, randomOrder, randomRates } from "../orders";
import { type Cells, randomSellers, rowsOf, sellersOfRandom } from "../pricelists";
import { expectExact, figures } from "../reference";

const q = (text: string) => Quotient.of(text);

function choiceOf(order: Record_ = {}, rates: Record_ = {}, rows: readonly Cells[] = []) {
  const { line, spot, rates: workshop } = costed({ ...HUNDRED_GRAMS, ...order }, { ...AT_25, ...rates });
  const { sellers } = sellersFor(readPriceLists(rowsOf(...rows), "USD"), line, workshop);
  return { line, spot, rates: workshop, sellers };
}
const level = (key: Lever, choice: ReturnType<typeof choiceOf>) => {
  const said = breakEven(choice, key);
  return said && [said.value.rounded(6).toString(), said.change.rounded(6).toString()];
};

describe("the value of a figure at which making and buying are level", () => {
  test("100 g, 75 saved by making, by hand", () => {
    // 100 x 3.25 - 100 x 1.50 - 50 - 2 x 25 = 75.
    const choice = choiceOf();
    expect(level("surcharge", choice)).toEqual(["2.5", "-0.230769"]);
    expect(level("castingFee", choice)).toEqual(["2.25", "0.5"]);
    expect(level("labourFlat", choice)).toEqual(["125", "1.5"]);
    expect(level("loss", choice)).toEqual(["5", "1.5"]);
    // 100 flat over 1.75: 57.142857 g for 100 links.
    expect(level("linkWeight", choice)).toEqual(["0.571429", "-0.428571"]);
    // 2 g of it cost 125 at 62.50 a gram; the rest of the gold is in both.
    expect(level("spot", choice)).toEqual(["7775.8692", "1.5"]);
  });

  test("there is none for a figure in neither cost, for one that is nothing, or where no value would do", () => {
    const choice = choiceOf({ claspCost: "20" });
    for (const key of ["claspCost", "settingFee", "setup", "overhead", "castingMinimum"] as const) {
      expect([key, level(key, choice)]).toEqual([key, undefined]);
    }
    // 28.25 bought: with labour at nothing 26.50 + 50 / 100 and 2.00 more a gram still is dearer.
    const dear = choiceOf({}, { labourPerGram: "2" });
    expect(compareSources(dear).verdict).toBe("buy");
    expect(level("labourFlat", dear)).toBeUndefined();
    // 200 + 150 + 50 + 50 - 325 = 125 too dear; from 2.00 a gram down to 0.75.
    expect(level("labourPerGram", dear)).toEqual(["0.75", "-0.625"]);
  });

  test("a minimum has one too: 225 for casting 100 g, below which its fee counts (hand arithmetic)", () => {
    // 325 - 50 - 50 = 225; at 1.50 a gram 150.
    expect(level("castingMinimum", choiceOf({}, { castingMinimum: "300" }))).toEqual(["225", "-0.25"]);
    expect(level("castingFee", choiceOf({}, { castingMinimum: "300" }))).toBeUndefined();
  });

  test("a maker's surcharge has none beyond what another maker asks", () => {
    // Made at 27.50: Fennick at 2.40 is bought; at 2.50 it would be level, but Orrin asks 2.45.
    const rows: Cells[] = [["Fennick", 250, 0, 2.4]];
    expect(level("surcharge", choiceOf({}, {}, rows))).toEqual(["2.5", "0.041667"]);
    expect(level("surcharge", choiceOf({}, {}, [...rows, ["Orrin", 250, 0, 2.45]]))).toBeUndefined();
    expect(level("surcharge", choiceOf({}, {}, [...rows, ["Orrin", 250, 0, 2.55]]))).toEqual(["2.5", "0.041667"]);
  });

  test("a share of the cast weight is never all of it: 28 lost of 100 g are level, 112 are no answer (hand arithmetic)", () => {
    const quick = { loss: "0.02", lossBasis: "cast", costBasis: "quick" };
    // 100 x 9 - 150 - 50 = 700, and 700 / 25 = 28 g; 100 x 30 - 200 = 2,800, and 2,800 / 25 = 112 g.
    expect(level("loss", choiceOf({}, { ...quick, surcharge: "9" }))).toEqual(["0.28", "13"]);
    expect(level("loss", choiceOf({}, { ...quick, surcharge: "30" }))).toBeUndefined();
  });

  test("2 % of the cast weight lost, all of it paid for: level at 1 - 26.50 / (28.25 - 0.50) (hand arithmetic)", () => {
    const choice = choiceOf({}, { loss: "0.02", lossBasis: "cast", costBasis: "finished" });
    const said = breakEven(choice, "loss");
    expectExact(said?.value ?? Quotient.zero, new Fraction(1).sub(new Fraction("26.5").div("27.75")));
  });

  test("at it the saving is nothing, a little to one side making wins and to the other buying", () => {
    fc.assert(
      fc.property(randomRates, randomOrder, randomSellers, figures(0, 80, 2), (rates, order, random, setup) => {
        const record = { ...order.record, setup: setup.text };
        const { line, spot, rates: workshop } = priced(rates, { ...order, record });
        const sellers = sellersOfRandom(random, workshop.currency as "USD");
        const choice = { line, spot, rates: workshop, sellers };
        for (const key of LEVER_KEYS) {
          const said = breakEven(choice, key);
          if (!said) continue;
          const factor = said.change.plus(Quotient.one);
          const at = (times: string) => compareSources(moved(choice, key, factor.times(q(times))));
          // At the start of a class of weight the saving jumps.
          if (key !== "linkWeight") expect(at("1").best?.saving.amount.toNumber()).toBeCloseTo(0, 20);
          const sides = [at("0.9999999"), at("1.0000001")].map(({ verdict }) => verdict);
          expect(sides.toSorted()).toEqual(["buy", "make"]);
          if (key !== "surcharge" && key !== "linkWeight") expect(sides[0]).toBe("make");
          if (key === "surcharge") expect(sides[0]).toBe("buy");
        }
      }),
      { numRuns: 120 },
    );
  });

  test("where there is none, no value from nothing to a hundred times as much turns the answer", () => {
    fc.assert(
      fc.property(randomRates, randomOrder, randomSellers, (rates, order, random) => {
        const { line, spot, rates: workshop } = priced(rates, order);
        const choice = { line, spot, rates: workshop, sellers: sellersOfRandom(random, workshop.currency as "USD") };
        fc.pre(compareSources(choice).best !== undefined);
        const { verdict } = compareSources(choice);
        for (const key of LEVER_KEYS) {
          if (key === "linkWeight" || key === "loss" || breakEven(choice, key)) continue;
          for (const times of ["0.001", "0.5", "2", "99.9"]) {
            expect([key, compareSources(moved(choice, key, q(times))).verdict]).toEqual([key, verdict]);
          }
        }
      }),
      { numRuns: 80 },
    );
  });
});

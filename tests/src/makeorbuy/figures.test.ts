import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { compareSources, sellersFor } from "../../../src/makeorbuy/chainchoice";
import { LEVER_KEYS, LEVERS, type Lever, leverValue, moved } from "../../../src/makeorbuy/figures";
import { readPriceLists } from "../../../src/makeorbuy/makers";
import { AT_25, costed, HUNDRED_GRAMS, priced } from "../chains";
import { type Record_, randomOrder, randomRates } from "../orders";
import { type Cells, randomSellers, rowsOf, sellersOfRandom } from "../pricelists";
import { figures } from "../reference";

const q = (text: string) => Quotient.of(text);

function choiceOf(order: Record_ = {}, rates: Record_ = {}, rows: readonly Cells[] = []) {
  const { line, spot, rates: workshop } = costed({ ...HUNDRED_GRAMS, ...order }, { ...AT_25, ...rates });
  const { sellers } = sellersFor(readPriceLists(rowsOf(...rows), "USD"), line, workshop);
  return { line, spot, rates: workshop, sellers };
}
const value = (key: Lever, choice = choiceOf()) => leverValue(choice, key)?.value().toString();

describe("the figures that costs rest on", () => {
  test("stand as the order, Rates and the cheapest maker say them", () => {
    const choice = choiceOf(
      { setup: "35", claspCost: "12", findingsCost: "4" },
      { labourPerLink: "0.3", plating: "40" },
      [
        ["Fennick", 250, 0, 4],
        ["Orrin", 250, 0, 3.5],
      ],
    );
    const all = Object.fromEntries(LEVER_KEYS.map((key) => [key, value(key, choice)]));
    expect(all).toEqual({
      spot: "3110.34768",
      surcharge: "3.5",
      castingFee: "1.5",
      castingMinimum: "0",
      loss: "2",
      labourFlat: "50",
      labourPerLink: "0.3",
      labourPerGram: "0",
      labourMinimum: "0",
      linkWeight: "1",
      setup: "35",
      claspCost: "12",
      findings: "4",
      settingFee: "1",
      plating: "40",
      overhead: "0",
    });
  });

  test("have the words of the sheet or form they come from, and the unit of their figure", () => {
    expect(LEVERS.surcharge.label).toBe("Maker's surcharge");
    expect(LEVERS.linkWeight.label).toBe("Weight of one link");
    expect(LEVERS.loss.unit(choiceOf())).toBe("weight");
    expect(LEVERS.loss.unit(choiceOf({}, { loss: "0.02", lossBasis: "cast" }))).toBe("share");
    expect(value("plating")).toBeUndefined();
  });

  test("moved, each is so many times itself and all others stay", () => {
    fc.assert(
      fc.property(randomRates, randomOrder, randomSellers, figures(0, 3, 2), (rates, order, random, factor) => {
        const { line, spot, rates: workshop } = priced(rates, order);
        const choice = { line, spot, rates: workshop, sellers: sellersOfRandom(random, workshop.currency as "USD") };
        for (const key of LEVER_KEYS) {
          const before = leverValue(choice, key);
          const after = moved(choice, key, factor.quotient);
          const share = workshop.loss.basis === "cast" ? workshop.loss.share.times(factor.quotient) : Quotient.zero;
          if (key === "loss" && !share.isLessThan(Quotient.one)) continue;
          // Another maker may be the cheapest then, or another class count: see the tornado.
          if (before && key !== "surcharge")
            expect(leverValue(after, key)?.equals(before.times(factor.quotient))).toBe(true);
          for (const other of LEVER_KEYS) {
            if (other === key || other === "surcharge" || (key === "linkWeight" && factor.quotient.isZero())) continue;
            expect(leverValue(after, other)?.equals(leverValue(choice, other) ?? Quotient.zero) ?? true).toBe(true);
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  test("of several makers only the cheapest one's surcharges move, in every class", () => {
    const choice = choiceOf({}, {}, [
      ["Fennick", 250, 0, 4],
      ["Orrin", 250, 0, 5],
      ["Orrin", 250, 20, 3],
    ]);
    const { sellers } = moved(choice, "surcharge", q("1.1"));
    expect(sellers.map(({ classes }) => classes.map(({ surcharge }) => surcharge.perGram.value().toString()))).toEqual([
      ["4"],
      ["5.5", "3.3"],
    ]);
  });

  test("a share of the cast weight stays below all of it", () => {
    const choice = choiceOf({}, { loss: "0.95", lossBasis: "cast" });
    const loss = value("loss", moved(choice, "loss", q("1.1")));
    expect(Number(loss)).toBeGreaterThan(0.95);
    expect(Number(loss)).toBeLessThan(1);
    expect(compareSources(moved(choice, "loss", q("1.1"))).verdict).toBe("buy");
  });
});

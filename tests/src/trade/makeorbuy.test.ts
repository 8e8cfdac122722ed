import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { metalRateOf, perGram, type Rate } from "../../../src/gold/goldrate";
import { landedCost } from "../../../src/trade/landedcost";
import { crossoverWeight, makeOrBuy } from "../../../src/trade/makeorbuy";
import type { Currency } from "../../../src/units/currency";
import { money } from "../../../src/units/money";
import { grams } from "../../../src/units/weight";
import { published } from "../published";
import { expectExact, expectFault, figure, figures, positives } from "../reference";

const q = (text: string) => Quotient.of(text);
const rate = (text: string) => perGram(q(text), "USD");
const usd = (text: string) => money(q(text), "USD");

/** Ready-made chain of the metal that is cast. */
const ready = <C extends Currency>(metal: string, surcharge: Rate<C>) => ({
  metalRate: metalRateOf("the mark", perGram(q(metal), "USD" as C)),
  surcharge,
});

function piece(weight: string, lost: string) {
  return {
    weight: grams(q(weight)),
    metalRate: metalRateOf("the pot", rate("25")),
    castingFee: rate("1.50"),
    labour: usd("50"),
    loss: { basis: "grams", weight: grams(q(lost)) },
    other: usd("0"),
    basis: "quick",
  } as const;
}

describe("make or buy", () => {
  test("at a surcharge of 3.25 the piece of 100 g is made: 27.50 against 28.25, 75 saved (common practice)", () => {
    const said = makeOrBuy(piece("100", "2"), ready("25", rate("3.25")));
    expect(said.verdict).toBe("make");
    expect(said.makePerGram.perGram.value().toString()).toBe("27.5");
    expect(said.buyPerGram.perGram.value().toString()).toBe("28.25");
    expect(said.saving.amount.value().toString()).toBe("75");
  });

  test("at a surcharge of 3.25 the piece of 20 g is bought: 30.25 against 28.25, 40 lost by making (common practice)", () => {
    const said = makeOrBuy(piece("20", "1"), ready("25", rate("3.25")));
    expect(said.verdict).toBe("buy");
    expect(said.saving.amount.value().toString()).toBe("-40");
  });

  test.each(["3", "3.25", "3.5"])(
    "within the usual surcharge (%s a gram) the heavy piece is made and the light one bought (common practice)",
    (surcharge) => {
      expect(makeOrBuy(piece("100", "2"), ready("25", rate(surcharge))).verdict).toBe("make");
      expect(makeOrBuy(piece("20", "1"), ready("25", rate(surcharge))).verdict).toBe("buy");
    },
  );

  const { source, rows } = published<{
    source: string;
    rows: readonly {
      make: readonly [string, string, string];
      buy: string;
      units: string;
      makeTotal: string;
      buyTotal: string;
      decision: string;
    }[];
  }>("make-or-buy.json");
  test.each(rows)(`$units units at 0.87 + 0.45 + 0.36 against $buy: $decision (${source})`, (row) => {
    const [material, fee, work] = row.make;
    const making = {
      weight: grams(q(row.units)),
      metalRate: metalRateOf("the pot", rate(material)),
      castingFee: rate(fee),
      labour: money(q(work).times(q(row.units)), "USD"),
      loss: { basis: "grams", weight: grams(Quotient.zero) },
      other: usd("0"),
      basis: "finished",
    } as const;
    const said = makeOrBuy(making, ready(material, perGram(q(row.buy).minus(q(material)), "USD")));
    expect(landedCost(making).amount.value().toString()).toBe(row.makeTotal);
    expect(said.buyPerGram.perGram.times(q(row.units)).value().toString()).toBe(row.buyTotal);
    expect(said.saving.amount.equals(q(row.buyTotal).minus(q(row.makeTotal)))).toBe(true);
    expect(said.verdict).toBe(row.decision);
  });

  test("the verdict, both figures a gram and the saving are the rational ones (fraction.js)", () => {
    fc.assert(
      fc.property(
        positives(500, 3),
        figures(0, 200, 4),
        figures(0, 10, 2),
        figures(0, 300, 2),
        figures(0, 0.2, 4),
        figures(0, 10, 2),
        (weight, metal, fee, labour, lost, surcharge) => {
          const said = makeOrBuy(
            {
              weight: grams(weight.quotient),
              metalRate: metalRateOf("the pot", perGram(metal.quotient, "USD")),
              castingFee: perGram(fee.quotient, "USD"),
              labour: money(labour.quotient, "USD"),
              loss: { basis: "cast", share: lost.quotient },
              other: usd("0"),
              basis: "finished",
            },
            ready(metal.text, perGram(surcharge.quotient, "USD")),
          );
          const make = metal.fraction
            .add(fee.fraction)
            .div(figure("1").fraction.sub(lost.fraction))
            .add(labour.fraction.div(weight.fraction));
          const buy = metal.fraction.add(surcharge.fraction);
          expectExact(said.makePerGram.perGram, make);
          expectExact(said.buyPerGram.perGram, buy);
          expectExact(said.saving.amount, buy.sub(make).mul(weight.fraction));
          expect(said.verdict).toBe(make.lt(buy) ? "make" : "buy");
          expect(Object.isFrozen(said)).toBe(true);
        },
      ),
      { numRuns: 1000 },
    );
  });

  test("a surcharge in another currency is refused, even where the compiler could not see it", () => {
    const wide = { ...piece("20", "1"), metalRate: metalRateOf<"the pot", Currency>("the pot", rate("25")) };
    expectFault(() => makeOrBuy(wide, ready("25", perGram<Currency>(q("3"), "EUR"))), "currencyMismatch");
  });
});

describe("the crossover weight", () => {
  test("50 flat, 1.50 added a gram, surcharge 3.50: 25 g (hand arithmetic)", () => {
    // 50 / (3.50 - 1.50) = 25.
    expect(crossoverWeight(q("50"), q("1.5"), q("3.5")).grams.value().toString()).toBe("25");
  });

  test("at it both cost the same and the verdict is buy; just above it, make; just below, buy", () => {
    fc.assert(
      fc.property(
        positives(300, 2),
        figures(0, 5, 2),
        positives(10, 2),
        figures(1, 200, 2),
        (flat, added, gained, metal) => {
          const surcharge = added.quotient.plus(gained.quotient);
          const crossing = crossoverWeight(flat.quotient, added.quotient, surcharge).grams;
          const at = (weight: Quotient) =>
            makeOrBuy(
              {
                weight: grams(weight),
                metalRate: metalRateOf("the pot", perGram(metal.quotient, "USD")),
                castingFee: perGram(added.quotient, "USD"),
                labour: money(flat.quotient, "USD"),
                loss: { basis: "grams", weight: grams(Quotient.zero) },
                other: usd("0"),
                basis: "finished",
              },
              ready(metal.text, perGram(surcharge, "USD")),
            );
          expect(at(crossing).saving.amount.isZero()).toBe(true);
          expect(at(crossing).verdict).toBe("buy");
          expect(at(crossing.times(q("1.0001"))).verdict).toBe("make");
          expect(at(crossing.times(q("0.9999"))).verdict).toBe("buy");
        },
      ),
      { numRuns: 500 },
    );
  });

  test.each([
    ["1.5", "1.5"],
    ["2", "1.5"],
    ["0", "0"],
  ])("where making adds %s a gram and the surcharge is %s it is never reached", (added, surcharge) => {
    expectFault(
      () => crossoverWeight(q("50"), q(added), q(surcharge)),
      "neverReached",
      `found ${surcharge}`,
      "never wins",
    );
  });
});

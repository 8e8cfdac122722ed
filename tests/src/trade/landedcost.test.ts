import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { metalRateOf, perGram } from "../../../src/gold/goldrate";
import {
  COST_BASES,
  type CostBasis,
  chargedWeight,
  labourCost,
  landedCost,
  lostWeight,
  perGramOf,
  stoneCost,
} from "../../../src/trade/landedcost";
import type { Loss } from "../../../src/trade/polishloss";
import { LOSS_BASES } from "../../../src/trade/polishloss";
import { premium } from "../../../src/trade/price";
import type { Currency } from "../../../src/units/currency";
import { money } from "../../../src/units/money";
import { grams } from "../../../src/units/weight";
import { expectExact, expectFault, type Figure, figure, figures, positives } from "../reference";

const q = (text: string) => Quotient.of(text);
const usd = (text: string) => money(q(text), "USD");
const rate = (text: string) => perGram(q(text), "USD");

function making(weight: string, lost: string, basis: CostBasis) {
  return {
    weight: grams(q(weight)),
    metalRate: metalRateOf("the pot", rate("25")),
    castingFee: rate("1.50"),
    labour: usd("50"),
    loss: { basis: "grams", weight: grams(q(lost)) },
    other: usd("0"),
    basis,
  } as const;
}

describe("landed cost, metal rate 25.00, casting fee 1.50, labour 50 (common practice)", () => {
  test.each([
    // quick: 100 x 26.50 + 50 + 2 x 25 = 2,750; finished: (100 + 2) x 26.50 + 50 = 2,753
    ["100", "2", "quick", "2750", "27.5", "2.5"],
    ["100", "2", "finished", "2753", "27.53", "2.53"],
    // quick: 20 x 26.50 + 50 + 1 x 25 = 605
    ["20", "1", "quick", "605", "30.25", "5.25"],
  ] as const)(
    "%s g with %s g lost, %s basis: %s landed, %s a gram, premium %s",
    (weight, lost, basis, landed, each, over) => {
      const given = making(weight, lost, basis);
      const cost = landedCost(given);
      const perGramLanded = perGramOf(cost, given.weight);
      expect(cost.amount.value().toString()).toBe(landed);
      expect(perGramLanded.perGram.value().toString()).toBe(each);
      expect(premium(perGramLanded, given.metalRate).perGram.value().toString()).toBe(over);
    },
  );
});

const amounts = figures(0, 500, 4);
const losses = fc
  .constantFrom(...LOSS_BASES)
  .chain((basis) => (basis === "grams" ? figures(0, 50, 3) : figures(0, 0.95, 4)).map((lost) => ({ basis, lost })));

function lossOf(basis: Loss["basis"], lost: Figure): Loss {
  return basis === "grams" ? { basis, weight: grams(lost.quotient) } : { basis, share: lost.quotient };
}

/** Landed cost by the definitions of the trade, in exact rationals. */
function landed(
  basis: CostBasis,
  weight: Fraction,
  metal: Fraction,
  fee: Fraction,
  labour: Fraction,
  other: Fraction,
  loss: { basis: Loss["basis"]; lost: Figure },
) {
  const lost = loss.lost.fraction;
  const metalAndCasting = metal.add(fee);
  if (basis === "quick") {
    const lostGrams = loss.basis === "grams" ? lost : weight.mul(lost);
    return weight.mul(metalAndCasting).add(labour).add(lostGrams.mul(metal)).add(other);
  }
  const cast =
    loss.basis === "grams"
      ? weight.add(lost)
      : loss.basis === "finished"
        ? weight.mul(lost.add(1))
        : weight.div(new Fraction(1).sub(lost));
  return cast.mul(metalAndCasting).add(labour).add(other);
}

test("landed cost and cost per gram follow the definition on both bases and all losses (fraction.js)", () => {
  fc.assert(
    fc.property(
      positives(500, 3),
      amounts,
      amounts,
      amounts,
      amounts,
      losses,
      fc.constantFrom(...COST_BASES),
      (weight, metal, fee, labour, other, loss, basis) => {
        const cost = landedCost({
          weight: grams(weight.quotient),
          metalRate: metalRateOf("the pot", perGram(metal.quotient, "USD")),
          castingFee: perGram(fee.quotient, "USD"),
          labour: money(labour.quotient, "USD"),
          loss: lossOf(loss.basis, loss.lost),
          other: money(other.quotient, "USD"),
          basis,
        });
        const expected = landed(
          basis,
          weight.fraction,
          metal.fraction,
          fee.fraction,
          labour.fraction,
          other.fraction,
          loss,
        );
        expectExact(cost.amount, expected);
        expectExact(perGramOf(cost, grams(weight.quotient)).perGram, expected.div(weight.fraction));
      },
    ),
    { numRuns: 2000 },
  );
});

test("figures of 15 digits, as cells compute them, lose nothing that 36 decimals could show (fraction.js)", () => {
  const long = positives(500, 12);
  fc.assert(
    fc.property(
      long,
      long,
      long,
      long,
      figures(0, 0.9, 14),
      fc.constantFrom(...COST_BASES),
      (weight, metal, fee, labour, lost, basis) => {
        const cost = landedCost({
          weight: grams(weight.quotient),
          metalRate: metalRateOf("the pot", perGram(metal.quotient, "USD")),
          castingFee: perGram(fee.quotient, "USD"),
          labour: money(labour.quotient, "USD"),
          loss: { basis: "cast", share: lost.quotient },
          other: usd("0"),
          basis,
        });
        const expected = landed(
          basis,
          weight.fraction,
          metal.fraction,
          fee.fraction,
          labour.fraction,
          new Fraction(0),
          { basis: "cast", lost },
        );
        expectExact(cost.amount, expected);
      },
    ),
    { numRuns: 300 },
  );
});

test("with no loss the two bases cost the same", () => {
  fc.assert(
    fc.property(positives(500, 3), amounts, amounts, amounts, (weight, metal, fee, labour) => {
      const given = {
        weight: grams(weight.quotient),
        metalRate: metalRateOf("the pot", perGram(metal.quotient, "USD")),
        castingFee: perGram(fee.quotient, "USD"),
        labour: money(labour.quotient, "USD"),
        loss: { basis: "cast", share: Quotient.zero },
        other: usd("0"),
      } as const;
      expect(
        landedCost({ ...given, basis: "quick" }).amount.equals(landedCost({ ...given, basis: "finished" }).amount),
      ).toBe(true);
    }),
  );
});

test("a casting fee, labour or other cost in another currency is refused, even where the compiler could not see it", () => {
  const euros = money<Currency>(Quotient.one, "EUR");
  const wide = { ...making("100", "2", "quick"), metalRate: metalRateOf<"the pot", Currency>("the pot", rate("25")) };
  expectFault(() => landedCost({ ...wide, labour: euros }), "currencyMismatch");
  expectFault(() => landedCost({ ...wide, other: euros }), "currencyMismatch");
  expectFault(() => landedCost({ ...wide, castingFee: perGram<Currency>(Quotient.one, "EUR") }), "currencyMismatch");
});

describe("labour", () => {
  const labour = { flat: usd("20"), perLink: usd("0.5"), perGram: rate("0.25"), minimum: usd("0") };

  test("is flat + per link + per gram: 20 + 96 x 0.5 + 192 x 0.25 = 116 (hand arithmetic)", () => {
    expect(
      labourCost(labour, q("96"), grams(q("192")))
        .amount.value()
        .toString(),
    ).toBe("116");
  });

  test("is never below its minimum, and the minimum adds nothing above it", () => {
    expect(
      labourCost({ ...labour, minimum: usd("120") }, q("96"), grams(q("192")))
        .amount.value()
        .toString(),
    ).toBe("120");
    expect(
      labourCost({ ...labour, minimum: usd("116") }, q("96"), grams(q("192")))
        .amount.value()
        .toString(),
    ).toBe("116");
    expect(
      labourCost({ ...labour, minimum: usd("115.99") }, q("96"), grams(q("192")))
        .amount.value()
        .toString(),
    ).toBe("116");
  });

  test("is the rational sum (fraction.js)", () => {
    fc.assert(
      fc.property(
        amounts,
        amounts,
        amounts,
        amounts,
        figures(1, 500, 0),
        positives(300, 3),
        (flat, perLink, each, least, links, weight) => {
          const worked = flat.fraction
            .add(perLink.fraction.mul(links.fraction))
            .add(each.fraction.mul(weight.fraction));
          const cost = labourCost(
            {
              flat: money(flat.quotient, "USD"),
              perLink: money(perLink.quotient, "USD"),
              perGram: perGram(each.quotient, "USD"),
              minimum: money(least.quotient, "USD"),
            },
            links.quotient,
            grams(weight.quotient),
          );
          expectExact(cost.amount, worked.lt(least.fraction) ? least.fraction : worked);
        },
      ),
    );
  });
});

describe("stones", () => {
  test("ten stones at 9 with a setting fee of 1 cost about 100 in all (common practice)", () => {
    expect(stoneCost(q("10"), usd("9"), usd("1"), Quotient.zero).amount.value().toString()).toBe("100");
  });

  test("breakage falls on the stones and not on the setting: 10 x (9 x 1.1 + 1) = 109 (hand arithmetic)", () => {
    expect(stoneCost(q("10"), usd("9"), usd("1"), q("0.1")).amount.value().toString()).toBe("109");
  });

  test("count x (price x (1 + breakage) + setting) exactly (fraction.js)", () => {
    fc.assert(
      fc.property(figures(0, 200, 0), amounts, amounts, figures(0, 0.5, 3), (count, price, setting, breakage) => {
        expectExact(
          stoneCost(count.quotient, money(price.quotient, "USD"), money(setting.quotient, "USD"), breakage.quotient)
            .amount,
          count.fraction.mul(price.fraction.mul(breakage.fraction.add(1)).add(setting.fraction)),
        );
      }),
    );
  });
});

test("a clasp that costs nothing and no stones leave nothing to pay", () => {
  expect(stoneCost(figure("0").quotient, usd("9"), usd("1"), Quotient.zero).amount.isZero()).toBe(true);
});

describe("what a caster charges and what polishing takes, by the basis of the cost", () => {
  // 98 g left of 100 g cast at 2 % of the cast weight; the bench counts 2 % of the stated 98 g: 1.96 g.
  const piece = { finished: grams(q("98")), cast: grams(q("100")) };
  const twoPercent: Loss = { basis: "cast", share: q("0.02") };

  test("the fee goes on all that is cast; on the quick basis on the stated weight", () => {
    expect(chargedWeight(piece, "finished").grams.value().toFixed()).toBe("100");
    expect(chargedWeight(piece, "quick").grams.value().toFixed()).toBe("98");
  });

  test("the loss is cast less finished; on the quick basis the share of the stated weight", () => {
    expect(lostWeight(piece, twoPercent, "finished").grams.value().toFixed()).toBe("2");
    expect(lostWeight(piece, twoPercent, "quick").grams.value().toFixed()).toBe("1.96");
  });
});

import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { chainWeightOf, crossingWeight, plainChainAt, straightRates } from "../../../src/makeorbuy/crossover";
import { sourcingCurve } from "../../../src/makeorbuy/curve";
import { crossoverWeight } from "../../../src/trade/makeorbuy";
import { grams } from "../../../src/units/weight";
import { AT_25, costed, HUNDRED_GRAMS, madeChain, priced } from "../chains";
import { type RandomRates, randomOrder, randomRates } from "../orders";
import { expectExact, figures, positives, rounded } from "../reference";

const q = (text: string) => Quotient.of(text);

describe("the weight above which making wins", () => {
  test("2 g lost: they cross at 100 / 1.75 g, between the 20 g bought and the 100 g made (hand arithmetic)", () => {
    // 50 labour and 2 x 25 lost make no difference by weight; 3.25 - 1.50 is gained a gram.
    const { line, spot, rates } = costed(HUNDRED_GRAMS, AT_25);
    const crossing = crossingWeight(line, spot, rates, "more links")?.grams ?? Quotient.zero;
    expectExact(crossing, new Fraction(400, 7));
    expect(crossing.isGreaterThan(q("20")) && crossing.isLessThan(q("100"))).toBe(true);
  });

  test("a labour minimum moves the crossing: 200 for 1.75 gained a gram (hand arithmetic)", () => {
    const { line, spot, rates } = costed(HUNDRED_GRAMS, { ...AT_25, labourMinimum: "150" });
    expectExact(crossingWeight(line, spot, rates, "more links")?.grams ?? Quotient.zero, new Fraction(800, 7));
  });

  test("so does a casting minimum: 300 + 100 for 3.25 gained a gram (hand arithmetic)", () => {
    // At 400 / 3.25 = 123.1 g casting by weight is 184.6, below the minimum of 300.
    const { line, spot, rates } = costed(HUNDRED_GRAMS, { ...AT_25, castingMinimum: "300" });
    expectExact(crossingWeight(line, spot, rates, "more links")?.grams ?? Quotient.zero, new Fraction(1600, 13));
  });

  test("on the finished basis with 2 % of the cast weight lost it is the library's own crossover weight", () => {
    // Added a gram: 26.50 / 0.98 - 25.
    const { line, spot, rates } = costed(HUNDRED_GRAMS, {
      ...AT_25,
      costBasis: "finished",
      loss: "0.02",
      lossBasis: "cast",
    });
    const added = q("26.5").dividedBy(q("0.98")).minus(q("25"));
    const crossing = crossingWeight(line, spot, rates, "more links")?.grams ?? Quotient.zero;
    expectExact(crossing, new Fraction(50).div(new Fraction("3.25").add(25).sub(new Fraction("26.5").div("0.98"))));
    expectExact(crossoverWeight(q("50"), added, q("3.25")).grams.minus(crossing), new Fraction(0));
  });

  test("without flat costs making wins at any weight above zero; without a surcharge at none", () => {
    const free = costed(HUNDRED_GRAMS, { ...AT_25, loss: "0", labourFlat: "0" });
    expect(crossingWeight(free.line, free.spot, free.rates, "more links")?.grams.isZero()).toBe(true);
    const dear = costed(HUNDRED_GRAMS, { ...AT_25, surcharge: "1.5" });
    expect(crossingWeight(dear.line, dear.spot, dear.rates, "more links")).toBeUndefined();
  });

  test("with the loss a share and no minimum the crossing is flat cost / (surcharge - added a gram)", () => {
    fc.assert(
      fc.property(randomRates, randomOrder, (rates, order) => {
        fc.pre(rates.lossBasis !== "grams");
        const none = { labourMinimum: "0", castingMinimum: "0" };
        const { line, spot, rates: workshop } = priced({ ...rates, record: { ...rates.record, ...none } }, order);
        const rate = (key: keyof RandomRates["figures"]) => rates.figures[key].fraction;
        const share = rates.loss.fraction;
        const quick = workshop.costBasis === "quick";
        const cast = rates.lossBasis === "cast" ? new Fraction(1).div(new Fraction(1).sub(share)) : share.add(1);
        const metalRate = rate("spot").mul(order.share).div("31.1034768");
        const added = (quick ? share : cast.sub(1))
          .mul(metalRate)
          .add(rate("castingFee").mul(quick ? 1 : cast))
          .add(rate("labourPerLink").div(order.figures.linkWeight.fraction))
          .add(rate("labourPerGram"));
        const crossing = crossingWeight(line, spot, workshop, "more links");
        if (rate("surcharge").lte(added)) {
          expect(crossing).toBeUndefined();
          return;
        }
        const expected = rate("labourFlat").div(rate("surcharge").sub(added));
        expect(crossing?.grams.rounded(25).toFixed(25)).toBe(rounded(expected, 25));
      }),
      { numRuns: 500 },
    );
  });

  test("below the crossing buying is cheaper, at it they are level, above it making is; with every minimum", () => {
    fc.assert(
      fc.property(randomRates, randomOrder, (rates, order) => {
        const { line, spot, rates: workshop } = priced(rates, order);
        const gain = (weight: Quotient) => {
          const point = sourcingCurve(line, spot, workshop, [grams(weight)], "more links")[0];
          return point?.buy.perGram.minus(point.make.perGram) ?? Quotient.zero;
        };
        const crossing = crossingWeight(line, spot, workshop, "more links")?.grams;
        if (!crossing) {
          expect(gain(q("1e12")).isPositive()).toBe(false);
          return;
        }
        if (!crossing.isZero()) {
          expectExact(gain(crossing), new Fraction(0));
          expect(gain(crossing.times(q("0.999"))).isNegative()).toBe(true);
        }
        expect(gain(crossing.times(q("1.001")).plus(q("0.001"))).isPositive()).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  test("the model and mould share is one more flat cost: 35 + 50 + 50 for 1.75 gained a gram (hand arithmetic)", () => {
    const { line, spot, rates } = costed({ ...HUNDRED_GRAMS, setup: "35" }, AT_25);
    expectExact(crossingWeight(line, spot, rates, "more links")?.grams ?? Quotient.zero, new Fraction(540, 7));
  });

  test("with as many links, each heavier, labour a link is flat: 30 more for 100 links (hand arithmetic)", () => {
    const { line, spot, rates } = costed(HUNDRED_GRAMS, { ...AT_25, labourPerLink: "0.3" });
    // 50 + 50 + 100 x 0.30 over 1.75; growing in number it is 100 / (1.75 - 0.30).
    expectExact(crossingWeight(line, spot, rates, "heavier links")?.grams ?? Quotient.zero, new Fraction(520, 7));
    expectExact(crossingWeight(line, spot, rates, "more links")?.grams ?? Quotient.zero, new Fraction(2000, 29));
  });

  test.each(["more links", "heavier links"] as const)(
    "is where halving finds that the costs cross, links %s (numeric root over fraction.js)",
    (heavier) => {
      fc.assert(
        fc.property(randomRates, randomOrder, figures(0, 80, 2), (rates, order, setup) => {
          const record = { ...order.record, setup: setup.text };
          const { line, spot, rates: workshop } = priced(rates, { ...order, record });
          const links = new Fraction(line.links.value().toString());
          const buy = rates.figures.spot.fraction
            .mul(order.share)
            .div("31.1034768")
            .add(rates.figures.surcharge.fraction);
          const gain = (weight: number) => {
            const chain = new Fraction(Math.round(weight * 1e6), 1e6);
            const made = madeChain(rates, order, chain, {
              setup: setup.fraction,
              ...(heavier === "heavier links" ? { links } : {}),
            });
            return buy.mul(chain).sub(made).valueOf();
          };
          const crossing = crossingWeight(line, spot, workshop, heavier)?.grams.toNumber();
          if (crossing === undefined) {
            expect(gain(1e9)).toBeLessThanOrEqual(0);
            return;
          }
          fc.pre(crossing > 0.01 && crossing < 1e8);
          let [low, high] = [0, 1e9];
          for (let turn = 0; turn < 70; turn += 1) {
            const middle = (low + high) / 2;
            if (gain(middle) > 0) high = middle;
            else low = middle;
          }
          expect(Math.abs(high - crossing)).toBeLessThan(1e-5 + crossing * 1e-6);
        }),
        { numRuns: 100 },
      );
    },
  );
});

describe("a plain chain at another weight", () => {
  test("at its own weight is the chain itself, however its links would grow", () => {
    const { line, sheet, spot, rates } = costed(HUNDRED_GRAMS, { ...AT_25, labourPerLink: "0.3" });
    for (const heavier of ["more links", "heavier links"] as const) {
      const said = plainChainAt(line, chainWeightOf(line), heavier, spot, rates);
      expect(said.makePerGram.perGram.equals(sheet.sourcing.makePerGram.perGram)).toBe(true);
    }
  });

  test("its cost is the greatest of the four without a minimum that bends (fraction.js)", () => {
    fc.assert(
      fc.property(randomRates, randomOrder, positives(500, 2), (rates, order, weight) => {
        const { line, spot, rates: workshop } = priced(rates, order);
        const at = (each: typeof workshop) =>
          plainChainAt(line, grams(weight.quotient), "more links", spot, each).makePerGram.perGram;
        const all = straightRates(workshop).map(at);
        expect(all.some((cost) => cost.equals(at(workshop)))).toBe(true);
        expect(all.every((cost) => !cost.isGreaterThan(at(workshop)))).toBe(true);
        expectExact(at(workshop), madeChain(rates, order, weight.fraction).div(weight.fraction));
      }),
      { numRuns: 200 },
    );
  });
});

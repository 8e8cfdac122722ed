import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { grams } from "../../../src/units/weight";
import { isFarOff, meanLossShare, meanWeight, type Weighing } from "../../../src/weights/weighingmean";
import { positives } from "../reference";

const weighing = (pieces: string, weight: string): Weighing => ({
  pieces: Quotient.of(pieces),
  weight: grams(Quotient.of(weight)),
});
const text = (weight: { grams: Quotient } | undefined) => weight?.grams.value().toString();

describe("the mean weight of a link", () => {
  test("10 links of 20.5 g are 2.05 g each, and say nothing of a spread (hand arithmetic)", () => {
    const { mean, spread, within, pieces } = meanWeight([weighing("10", "20.5")]);
    expect([text(mean), spread, within, pieces.toNumber()]).toEqual(["2.05", undefined, undefined, 10]);
  });

  test("single links of 2, 4, 4, 4, 5, 5, 7 and 9 g: mean 5 g, variance 32/7 (hand arithmetic)", () => {
    const { mean, spread, within } = meanWeight(
      ["2", "4", "4", "4", "5", "5", "7", "9"].map((weight) => weighing("1", weight)),
    );
    expect(text(mean)).toBe("5");
    expect(spread?.grams.toNumber()).toBeCloseTo(Math.sqrt(32 / 7), 12);
    // Student's t at 7 degrees of freedom is 2.365.
    expect(within?.grams.toNumber()).toBeCloseTo(2.365 * Math.sqrt(32 / 7 / 8), 3);
  });

  test("a weighing of many links counts as many: 30 at 2 g and 10 at 2.4 g are 2.1 g (hand arithmetic)", () => {
    const { mean, spread } = meanWeight([weighing("30", "60"), weighing("10", "24")]);
    expect(text(mean)).toBe("2.1");
    // 30 x 0.1² + 10 x 0.3² = 1.2, over one degree of freedom.
    expect(spread?.grams.toNumber()).toBeCloseTo(Math.sqrt(1.2), 12);
  });

  test("lies between the lightest and the heaviest weighing, whatever their order", () => {
    const weighings = fc.array(fc.tuple(fc.integer({ min: 1, max: 200 }), positives(20, 3)), {
      minLength: 2,
      maxLength: 12,
    });
    fc.assert(
      fc.property(weighings, (drawn) => {
        const list = drawn.map(([pieces, weight]) => ({ pieces: Quotient.of(pieces), weight: grams(weight.quotient) }));
        const means = list.map(({ pieces, weight }) => weight.grams.dividedBy(pieces).toNumber());
        const { mean, spread } = meanWeight(list);
        expect(mean.grams.toNumber()).toBeGreaterThanOrEqual(Math.min(...means) * (1 - 1e-12));
        expect(mean.grams.toNumber()).toBeLessThanOrEqual(Math.max(...means) * (1 + 1e-12));
        expect(meanWeight([...list].reverse()).mean.grams.equals(mean.grams)).toBe(true);
        expect(spread?.grams.isNegative()).toBe(false);
      }),
    );
  });
});

describe("a weighing far off the others", () => {
  const CENTIGRAM = grams(Quotient.of("0.01"));
  const isFar = (one: Weighing, rest: readonly Weighing[]) => isFarOff(one, rest, CENTIGRAM);
  const others = ["2.00", "2.02", "1.98", "2.01", "1.99"].map((weight) => weighing("1", weight));

  test("2.03 g among links of 1.98 to 2.02 g is no surprise, 2.3 g is", () => {
    // Their spread is 0.0158…, three of it at one piece against five 0.052.
    expect(isFar(weighing("1", "2.03"), others)).toBe(false);
    expect(isFar(weighing("1", "2.3"), others)).toBe(true);
    expect(isFar(weighing("1", "1.7"), others)).toBe(true);
  });

  test("ten links together must lie closer than one", () => {
    // Three spreads at ten pieces against five: 0.0158 x 3 x √(1/10 + 1/5) = 0.026.
    expect(isFar(weighing("10", "20.3"), others)).toBe(true);
    expect(isFar(weighing("10", "20.2"), others)).toBe(false);
  });

  test("one or two of the scale's last digits are never far, however alike the others are", () => {
    const alike = ["20.50", "20.50", "20.50"].map((weight) => weighing("10", weight));
    expect(["20.51", "20.48", "20.52"].map((weight) => isFar(weighing("10", weight), alike))).toEqual([
      false,
      false,
      false,
    ]);
    expect(isFar(weighing("10", "20.53"), alike)).toBe(true);
    expect(isFarOff(weighing("10", "20.6"), alike, grams(Quotient.of("0.1")))).toBe(false);
  });

  test("with fewer than three others nothing is said", () => {
    expect(isFar(weighing("1", "9"), others.slice(0, 2))).toBe(false);
  });
});

describe("a finisher's mean loss", () => {
  test("102 g and 51 g out, 100 g and 50 g back: 3 of 153 (hand arithmetic)", () => {
    const passages = [
      { out: grams(Quotient.of("102")), back: grams(Quotient.of("100")) },
      { out: grams(Quotient.of("51")), back: grams(Quotient.of("50")) },
    ];
    expect(meanLossShare(passages).equals(Quotient.of(3).dividedBy(Quotient.of(153)))).toBe(true);
  });

  test("more back than went out is a loss below zero", () => {
    expect(meanLossShare([{ out: grams(Quotient.of("50")), back: grams(Quotient.of("51")) }]).isNegative()).toBe(true);
  });
});

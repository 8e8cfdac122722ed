import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { BUDGET_LABELS, type Budget, type BudgetKey, parseBudget } from "../../../src/cashplan/budget";
import { cashLine, cashNeeded, depositFor, firstPieces, takenOn } from "../../../src/cashplan/cashplan";
import { Quotient } from "../../../src/exact/quotient";
import { read } from "../orders";
import { expectExact, type Figure, figures } from "../reference";

const BUDGET_KEYS = Object.keys(BUDGET_LABELS) as readonly BudgetKey[];

type Texts = Partial<Record<BudgetKey, string>>;

/** Once 900; a piece 1000, of it 40 casting; sold at 1400 with half of it before. */
const START: Texts = {
  models: "600",
  moulds: "200",
  marking: "100",
  metal: "700",
  casting: "40",
  labour: "120",
  findings: "60",
  stones: "30",
  plating: "0",
  assay: "20",
  shipping: "25",
  other: "5",
  price: "1400",
  deposit: "50 %",
  pieces: "3",
  cash: "2000",
};

function budget(changes: Texts = {}): Budget {
  const blank = Object.fromEntries(BUDGET_KEYS.map((key) => [key, ""])) as Record<BudgetKey, string>;
  return read(parseBudget({ ...blank, ...START, ...changes }, { currency: "USD" }));
}

describe("cash before the first sale (hand arithmetic)", () => {
  test("three pieces: 900 + 3 x 1000 go out, 3 x 700 come in before: 1800 of one's own", () => {
    const { once, pieces, out, deposits, needed } = cashNeeded(budget(), 3);
    expect([once, pieces, out, deposits, needed].map(({ amount }) => amount.toNumber())).toEqual([
      900, 3000, 3900, 2100, 1800,
    ]);
  });

  test("a casting minimum of 100 is for all pieces together: 960 + 100 for one, 2880 + 120 for three", () => {
    const minimum = budget({ castingMinimum: "100" });
    expect(cashNeeded(minimum, 1).pieces.amount.toNumber()).toBe(1060);
    expect(cashNeeded(minimum, 3).pieces.amount.toNumber()).toBe(3000);
  });

  test("deposits beyond the costs do not pay for what comes before them: 900 stay needed", () => {
    expect(cashNeeded(budget({ deposit: "1" }), 3).needed.amount.toNumber()).toBe(900);
  });
});

describe("what can be taken on (hand arithmetic)", () => {
  test("2000 less 900 carries 1100 / 300: three pieces at a time", () => {
    expect(takenOn(budget())).toEqual({ from: 1, to: 3 });
  });

  test("1200 left is four at exactly nothing left", () => {
    expect(takenOn(budget({ cash: "2100" }))).toEqual({ from: 1, to: 4 });
  });

  test("899 does not pay the models; 1199 not the first piece; a deposit of 70.1 % would do there", () => {
    expect(takenOn(budget({ cash: "899" }))).toBeUndefined();
    expect(depositFor(budget({ cash: "899" }), 1)).toBeUndefined();
    expect(takenOn(budget({ cash: "1199" }))).toBeUndefined();
    // 1000 - 299 = 701 of 1400.
    expectExact(depositFor(budget({ cash: "1199" }), 1) ?? Quotient.zero, new Fraction(701, 1400));
  });

  test("deposits of the whole cost carry any number", () => {
    expect(takenOn(budget({ deposit: "0.75", cash: "900" }))).toEqual({ from: 1, to: undefined });
  });

  test("a casting minimum that one piece cannot carry, but three can", () => {
    // Minimum 200: k x (960 - 980) + 200 = 200 - 20 k within 150 from 3 on.
    expect(takenOn(budget({ castingMinimum: "200", deposit: "0.7", cash: "1050" }))).toEqual({ from: 3, to: 7 });
    // By weight k x 20 within 150: up to 7.
  });
});

describe("the first three pieces, one after the other (hand arithmetic)", () => {
  test("cash: 2000, 1100 after the models, then 1800, 800, 1500 for the first; lowest once the first is paid for", () => {
    const { steps, low, costOfOne, gainOfOne, paidBackWith } = cashLine(budget(), 3);
    expect(steps.map(({ cash }) => cash.amount.toNumber())).toEqual([
      1100, 1800, 800, 1500, 2200, 1200, 1900, 2600, 1600, 2300,
    ]);
    expect([low.kind, low.piece, low.cash.amount.toNumber()]).toEqual(["costs", 1, 800]);
    expect([costOfOne.amount.toNumber(), gainOfOne.amount.toNumber()]).toEqual([1000, 400]);
    // 400, 800, 1200: 900 is back with the third.
    expect(paidBackWith).toBe(3);
  });

  test("each alone pays the whole casting minimum: 1060", () => {
    const line = cashLine(budget({ castingMinimum: "100" }), 3);
    expect(line.costOfOne.amount.toNumber()).toBe(1060);
    expect(line.paidBackWith).toBe(3);
  });

  test("set-up carried by the first: 1900, 1000, 1000; spread: 1300 each; 500 short, 100 short, 300 left", () => {
    const pieces = firstPieces(budget(), 3);
    expect(pieces.map(({ costCarried }) => costCarried.amount.toNumber())).toEqual([1900, 1000, 1000]);
    expect(pieces.map(({ costSpread }) => costSpread.amount.toNumber())).toEqual([1300, 1300, 1300]);
    expect(pieces.map(({ leftSoFar }) => leftSoFar.amount.toNumber())).toEqual([-500, -100, 300]);
  });

  test("a piece that loses money never pays anything back; one that gains 0.01 does in the end", () => {
    expect(cashLine(budget({ price: "1000" }), 3).paidBackWith).toBeUndefined();
    expect(cashLine(budget({ price: "1000.01" }), 3).paidBackWith).toBe(90000);
    expect(cashLine(budget({ models: "", moulds: "", marking: "" }), 3).paidBackWith).toBe(1);
  });
});

describe("any budget", () => {
  const texts = fc
    .record({
      models: figures(0, 900, 2),
      metal: figures(0, 2000, 2),
      casting: figures(0, 90, 2),
      labour: figures(0, 300, 2),
      castingMinimum: figures(0, 300, 2),
      price: figures(1, 4000, 2),
      deposit: figures(0, 1, 2),
      cash: figures(0, 9000, 2),
    })
    .map((record): Record<keyof typeof record, Figure> => record);
  const blank = { moulds: "", marking: "", findings: "", stones: "", plating: "", assay: "", shipping: "", other: "" };
  const of = (given: Readonly<Record<string, Figure>>) =>
    budget({ ...blank, ...Object.fromEntries(Object.entries(given).map(([key, { text }]) => [key, text])) });

  test("a number of pieces lies in what can be taken on exactly where its need is within the cash (fraction.js)", () => {
    fc.assert(
      fc.property(texts, fc.integer({ min: 1, max: 40 }), (given, pieces) => {
        const { models, metal, casting, labour, castingMinimum, price, deposit, cash } = given;
        const cast = casting.fraction.mul(pieces);
        const made = metal.fraction
          .add(labour.fraction)
          .mul(pieces)
          .add(cast.lt(castingMinimum.fraction) ? castingMinimum.fraction : cast);
        const open = made.sub(price.fraction.mul(deposit.fraction).mul(pieces));
        const needed = models.fraction.add(open.lt(0) ? 0 : open);
        expectExact(cashNeeded(of(given), pieces).needed.amount, needed);
        const taken = takenOn(of(given));
        const lies = taken !== undefined && taken.from <= pieces && pieces <= (taken.to ?? 1000);
        expect(lies).toBe(needed.lte(cash.fraction));
      }),
      { numRuns: 400 },
    );
  });

  test("at the least deposit the cash just carries the pieces", () => {
    fc.assert(
      fc.property(texts, fc.integer({ min: 1, max: 40 }), (given, pieces) => {
        const plan = of(given);
        const share = depositFor(plan, pieces);
        if (!share || share.isZero()) return;
        const { needed } = cashNeeded({ ...plan, deposit: share }, pieces);
        expect(needed.amount.minus(plan.cash.amount).rounded(40).isZero()).toBe(true);
      }),
      { numRuns: 200 },
    );
  });

  test("the line ends with what was there, less what is paid once, and the gain of each piece", () => {
    fc.assert(
      fc.property(texts, fc.integer({ min: 1, max: 9 }), (given, pieces) => {
        const { steps, low } = cashLine(of(given), pieces);
        const { models, metal, casting, labour, castingMinimum, price, cash } = given;
        const cast = casting.fraction.lt(castingMinimum.fraction) ? castingMinimum.fraction : casting.fraction;
        const gain = price.fraction.sub(metal.fraction).sub(labour.fraction).sub(cast);
        expectExact(
          steps.at(-1)?.cash.amount ?? Quotient.zero,
          cash.fraction.sub(models.fraction).add(gain.mul(pieces)),
        );
        expect(steps.every((step) => !step.cash.amount.isLessThan(low.cash.amount))).toBe(true);
        const [, second] = firstPieces(of(given), pieces);
        if (second) expectExact(second.leftSoFar.amount, gain.mul(2).sub(models.fraction));
      }),
      { numRuns: 200 },
    );
  });
});

import { afterAll, afterEach, beforeAll, describe, expect, test, vi } from "vitest";
import * as amounts from "../../functions/amounts";
import * as asking from "../../functions/asking";
import * as cash from "../../functions/cash";
import * as chain from "../../functions/chain";
import * as cost from "../../functions/cost";
import * as making from "../../functions/making";
import * as metal from "../../functions/metal";
import * as price from "../../functions/price";
import * as selling from "../../functions/selling";
import * as settling from "../../functions/settling";
import { Quotient } from "../../src/exact/quotient";
import { chance, decimal, isNearest, roundedRatio, scaled, ten } from "./rows";

/** Excel's error for a cell; the rows here have none. */
beforeAll(() => {
  vi.stubGlobal("CustomFunctions", { Error: class extends Error {}, ErrorCode: {} });
});
afterAll(() => {
  vi.unstubAllGlobals();
});
afterEach(() => {
  vi.restoreAllMocks();
});

interface Row {
  readonly weight: number;
  readonly metalRate: number;
  readonly castingFee: number;
  readonly labour: number;
  readonly loss: number;
}

const KEYS = ["weight", "metalRate", "castingFee", "labour", "loss"] as const;

/** Landed cost on the finished basis as one whole number over another: cast weight x (rate + fee) + labour. */
function exactCost(row: Row): { readonly over: bigint; readonly under: bigint } {
  const [weight, rate, fee, labour, loss] = KEYS.map((key) => scaled(row[key]));
  if (!weight || !rate || !fee || !labour || !loss) throw new Error("a row lacks a figure");
  const kept = ten(loss.places) - loss.digits;
  const perGram = rate.digits * ten(fee.places) + fee.digits * ten(rate.places);
  const metal = weight.digits * perGram * ten(loss.places);
  const under = ten(weight.places + rate.places + fee.places) * kept;
  return { over: metal * ten(labour.places) + labour.digits * under, under: under * ten(labour.places) };
}

function costs(rows: readonly Row[], decimals: number | null): readonly unknown[][] {
  const [weight = [], rate = [], fee = [], labour = [], loss = []] = KEYS.map((key) => rows.map((row) => [row[key]]));
  return cost.landedCostOf(weight, rate, fee, labour, loss, [[null]], [[null]], [[null]], [[decimals]]);
}

const GOLD = [9 / 24, 14 / 24, 18 / 24, 0.585, 0.75];

/** Rates as METALRATE gives them: doubles with all their digits. */
function spotRow(random: () => number): Row {
  const share = GOLD[Math.floor(random() * GOLD.length)] ?? 1;
  return {
    weight: decimal(random, 0.5, 250, 2),
    metalRate: (decimal(random, 1500, 4500, 2) * share) / 31.1034768,
    castingFee: decimal(random, 0, 5, 2),
    labour: decimal(random, 0, 300, 2),
    loss: decimal(random, 0, 0.06, 3),
  };
}

/** Round weights, rates and losses, as people type them: many costs lie on an exact half cent. */
function tieRow(random: () => number): Row {
  return {
    weight: decimal(random, 1, 60, 1) / (random() < 0.5 ? 1 : 2),
    metalRate: decimal(random, 20, 90, 2),
    castingFee: decimal(random, 0, 4, 1),
    labour: decimal(random, 0, 100, 0),
    loss: [0, 0, 0.2, 0.5, 0.6, 0.36, 0.04][Math.floor(random() * 7)] ?? 0,
  };
}

/** Sums that people make in cells: doubles a hair beside their decimals, large and small beside each other. */
function unevenRow(random: () => number): Row {
  const off = (value: number) => value * (1 + (Math.floor(random() * 5) - 2) * 2 ** -52);
  return {
    weight: off(decimal(random, 0.01, 10, 2) + 0.1 + 0.2),
    metalRate: off(10 ** Math.floor(random() * 12 - 5) * decimal(random, 1, 9.99, 2)),
    castingFee: off(0.1 + 0.2),
    labour: off(10 ** Math.floor(random() * 14 - 6) * decimal(random, 1, 9.9, 1)),
    loss: off(decimal(random, 0, 0.999, 3)),
  };
}

const rowsOf = (count: number, seed: number, row: (random: () => number) => Row): readonly Row[] => {
  const random = chance(seed);
  return Array.from({ length: count }, () => row(random));
};

describe("a million rows of LANDEDCOST are those of exact whole-number arithmetic (BigInt), bit for bit", () => {
  test.each([
    ["rates from spot", 500_000, spotRow, 0, 0.01],
    ["round figures, many of them on a half cent", 350_000, tieRow, 0.05, 1],
    ["uneven doubles and sizes", 150_000, unevenRow, 0, 1],
  ] as const)("%s, rounded to cents", (_, count, row, leastTies, mostTies) => {
    const rows = rowsOf(count, count, row);
    const answers = costs(rows, 2);
    let ties = 0;
    const wrong: unknown[] = [];
    rows.forEach((each, at) => {
      const { over, under } = exactCost(each);
      const { value, tie } = roundedRatio(over, under, 2);
      if (tie) ties += 1;
      if (!Object.is(answers[at]?.[0], value)) wrong.push([each, answers[at]?.[0], value]);
    });
    expect(wrong.slice(0, 3)).toEqual([]);
    expect(answers.length).toBe(count);
    expect(ties / count).toBeGreaterThanOrEqual(leastTies);
    expect(ties / count).toBeLessThanOrEqual(mostTies);
  });

  test.each([
    ["rates from spot", 60_000, spotRow],
    ["round figures", 60_000, tieRow],
    ["uneven doubles and sizes", 60_000, unevenRow],
  ] as const)("%s: without decimals, the double nearest to the exact cost", (_, count, row) => {
    const rows = rowsOf(count, count + 1, row);
    const answers = costs(rows, null);
    const wrong = rows.filter((each, at) => {
      const { over, under } = exactCost(each);
      const answer = answers[at]?.[0];
      return typeof answer !== "number" || !isNearest(answer, over, under);
    });
    expect(wrong.slice(0, 3)).toEqual([]);
  });
});

/** Plain figures for every function that goes row by row; the n-th row differs a little from the others. */
const PLAIN: readonly (readonly [(...cells: unknown[][][]) => unknown, ...((n: number) => unknown)[]])[] = [
  [metal.finenessOf, (n) => 300 + (n % 700)],
  [metal.karatOf, (n) => `${1 + (n % 20)}K`],
  [metal.standardMarkOf, (n) => 340 + (n % 640)],
  [metal.assayPassesFor, (n) => 570 + (n % 40), () => "14K", () => 3],
  [metal.fineGoldIn, (n) => 2 + n / 8, () => "18K"],
  [metal.metalRateOf, (n) => 1800 + n / 8, () => "14K"],
  [metal.meltValueOf, (n) => 2 + n / 100, () => 585, () => 2000.5, () => 2],
  [metal.weightInUnit, (n) => n / 10 + 1, () => "dwt", () => "g"],
  [metal.lengthInUnit, (n) => n / 10 + 1, () => "in", () => "cm"],
  [chain.linksIn, (n) => 6 + n / 50, () => 4, () => 0.5, () => null, () => 2],
  [chain.lengthOfLinks, (n) => 40 + n, () => 4.5],
  [chain.weightOfChain, (n) => 40 + n, () => 1.37, () => 2.2],
  [chain.resizedLinkWeight, (n) => 1 + n / 100, () => 8, () => 6.5],
  [chain.recastIn, (n) => 1 + n / 100, () => 13.1, () => 15.6],
  [chain.metalForWax, (n) => 1 + n / 100, () => 0.97, () => 15.6],
  [chain.weightToCast, (n) => 1 + n / 100, () => 0.025],
  [chain.weightFinished, (n) => 1 + n / 100, () => 0.025],
  [cost.landedCostOf, (n) => 1 + n / 100, () => 41.3, () => 1.5, () => 50, () => 0.02],
  [cost.landedPerGramOf, (n) => 1 + n / 100, () => 41.3, () => 1.5, () => 50, () => 0.02],
  [cost.stonesCost, (n) => 1 + n, () => 9.5, () => 1.25, () => 0.05, () => 2],
  [cost.crossoverAt, (n) => 1 + n / 100, () => 1.75, () => 3.25],
  [cost.makeOrBuyChain, (n) => 1 + n / 100, () => 41.3, () => 1.5, () => 50, () => 0.02, () => 3.25],
  [
    cost.makeOrBuyChain,
    (n) => 1 + n / 100,
    () => 41.3,
    () => 1.5,
    () => 50,
    () => 0.02,
    () => 3.25,
    () => null,
    () => null,
    () => null,
    (n) => (n % 2 === 0 ? 40.2 : null),
  ],
  [making.linksOfColour, (n) => 1 + n, () => "YYW", () => "white"],
  [making.labourCostOf, (n) => 1 + n, () => 41.3, () => 50, () => 0.35, () => 0.5, () => 120],
  [making.castingCostOf, (n) => 1 + n / 100, () => 1.5, () => 25, () => 3],
  [making.weightCharged, (n) => 1 + n / 100, () => 0.02],
  [making.weightLost, (n) => 1 + n / 100, () => 0.02, () => "finished", () => "quick"],
  [making.linksPolished, (n) => 200 + n / 100, () => 173.81, () => 95, () => 91, () => 92],
  [making.stonesBought, (n) => 1 + n, () => 3, () => 0.05],
  [
    selling.sellingPriceOf,
    (n) => 100 + n / 100,
    () => 12.5,
    () => "margin",
    () => 0.3,
    () => 12.5,
    () => 41.3,
    () => 0.08,
    () => "in the price ",
    () => 5,
    () => 2,
  ],
  [selling.partBrings, (n) => n / 100, () => 41.3, () => 12.5, () => 90],
  [selling.netPriceOf, (n) => 100 + n / 100, () => 0.08, () => "in the price", () => 0.1],
  [selling.salesTaxOn, (n) => 100 + n / 100, () => 0.08, () => "on top", () => 2],
  [amounts.amountOfLine, (n) => 100 + n / 100, () => 3, () => 2],
  [amounts.discountOff, (n) => 100 + n / 100, () => 0.125, () => 2],
  [amounts.overheadOf, (n) => 100 + n / 100, () => 0.06],
  [amounts.linksSet, (n) => 10 + (n % 90), () => 7],
  [amounts.goldOfCustomer, (n) => 10 + n / 100, () => 42.5],
  [amounts.creditForGold, (n) => 10 + n / 100, () => 2650, () => 0.95, () => 2],
  [settling.goldOfScale, (n) => 10 + n / 100, () => 1.25, () => 2],
  [settling.priceSettled, (n) => 1000 + n / 100, () => 41.3, () => 20, () => 20.1, () => 0.05, () => 2],
  [cash.costOfPieces, (n) => 100 + n / 100, () => 20, () => 150, () => 4],
  [cash.cashNeededFor, (n) => 100 + n / 100, () => 500, () => 300],
  [cash.coveredByDeposit, (n) => 500 + n / 100, () => 40.5, () => "with the deposit"],
  [price.markupOf, (n) => 100 + n / 100, () => 160],
  [price.marginOf, (n) => 100 + n / 100, () => 160],
  [price.priceByMarkup, (n) => 100 + n / 100, () => 0.3, () => 5, () => 2],
  [price.priceByMargin, (n) => 100 + n / 100, () => 0.35, () => 0.05, () => 2],
  [price.priceByPremium, (n) => 1 + n / 100, () => 41.3, () => 12.5],
  [asking.askedPerGram, (n) => 100 + n / 100, () => 12.5, () => "dwt"],
  [asking.premiumOf, (n) => 50 + n / 100, () => 41.3],
  [asking.checkAsking, (n) => 500 + n, () => 12.5, () => "14K", () => 2000, () => 40.5],
  [asking.spotLimitOf, (n) => 900 + n, () => 12.5, () => "14K", () => 120, () => 0.2],
];

describe("the exact way is asked for few rows", () => {
  test.each(PLAIN.map(([run, ...cells]) => [run.name, run, cells] as const))("by %s", (_, run, cells) => {
    // Every row by the exact way reads a figure or more.
    const asked = vi.spyOn(Quotient, "of");
    run(...cells.map((cell) => Array.from({ length: 1000 }, (_, n) => [cell(n)])));
    expect(asked.mock.calls.length).toBeLessThan(500);
  });
});

test("the exact way is asked for few of a range's rows", () => {
  const asked = vi.spyOn(Quotient, "of");
  for (const [row, decimals] of [
    [spotRow, 2],
    [tieRow, 2],
    [spotRow, null],
    [tieRow, null],
  ] as const) {
    asked.mockClear();
    costs(rowsOf(20_000, 7, row), decimals);
    // A row by the exact way reads its figures, seven of them.
    expect(asked.mock.calls.length).toBeLessThan(7 * 20);
  }
});

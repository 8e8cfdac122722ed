import { describe, expect, test } from "vitest";
import { lineOf } from "../../../src/columns/lines";
import {
  checkPairComparison,
  checkPairDifference,
  makePairWhole,
  nearestDouble,
  roundPair,
} from "../../../src/columns/pairproofs";
import type { PlannedStep } from "../../../src/columns/plan";
import type { PairRows } from "../../../src/columns/scratch";

const U2 = 2 ** -106;
const bound = { double: 0, pair: 0, least: 0, most: 3, sign: 1, whole: false, differs: false } as const;
const step = (kind: PlannedStep["kind"], decimals = 0): PlannedStep => ({
  kind,
  a: 0,
  b: 0,
  input: 0,
  decimals,
  bound,
  double: 0,
  pair: 100 * U2,
  used: false,
  shared: false,
});

function rows(high: number, low = 0, grain?: { readonly power: number; readonly count: number }): PairRows {
  const grains = grain && { power: lineOf(grain.power), count: lineOf(grain.count) };
  return { high: lineOf(high), low: lineOf(low), grains };
}
function decided(run: (out: PairRows, open: Uint8Array) => void, out = rows(0)): number | undefined {
  const open = new Uint8Array(1);
  run(out, open);
  return open[0] === 0 ? out.high[0] : undefined;
}

describe("a rounding of pairs", () => {
  const toCents = (value: PairRows) => decided((out, open) => roundPair(value, step("decimals", 2), out, 1, open));
  // 0.165 as a pair: the double nearest to it and what that is off by, from the expansion 0.16500000000000000777156117237609….
  const HALF_CENT = [0.165, -7.771561172376e-18] as const;

  test("a half cent is proved by its grain, a whole number of thousandths, and goes away from zero", () => {
    expect(toCents(rows(...HALF_CENT, { power: 3, count: 1 }))).toBe(0.17);
    expect(toCents(rows(-HALF_CENT[0], -HALF_CENT[1], { power: 3, count: 1 }))).toBe(-0.17);
  });

  test("without a grain, or with one too fine, it stays open", () => {
    expect(toCents(rows(...HALF_CENT))).toBeUndefined();
    expect(toCents(rows(...HALF_CENT, { power: 40, count: 1 }))).toBeUndefined();
  });

  test("a hair beside it is decided by the pair alone", () => {
    expect(toCents(rows(0.165, HALF_CENT[1] - 1e-25))).toBe(0.16);
    expect(toCents(rows(0.165, HALF_CENT[1] + 1e-25))).toBe(0.17);
  });
});

test("a rounded decimal that is computed with is as near to it as a pair can be", () => {
  const out = rows(0);
  roundPair(rows(1234.5678), { ...step("decimals", 2), used: true }, out, 1, new Uint8Array(1));
  // The double's own digits are 1234.5699999999999363353708758950233459… (JavaScript's toFixed(40)).
  expect(out.high[0]).toBe(1234.57);
  expect(out.low[0]).toBeCloseTo(6.366462912410498e-14, 28);
});

test("a whole number is proved by its grain before it is rounded up", () => {
  const up = (value: PairRows) => decided((out, open) => makePairWhole(value, step("ceil"), out, 1, open));
  expect(up(rows(25, 1e-32, { power: 2, count: 3 }))).toBe(25);
  expect(up(rows(25, 1e-32))).toBeUndefined();
  expect(up(rows(25, 1e-25))).toBe(26);
  expect(up(rows(25, -1e-25))).toBe(25);
  expect(decided((out, open) => makePairWhole(rows(25, -1e-25), step("floor"), out, 1, open))).toBe(24);
});

test("a difference of nothing is proved by its grain", () => {
  const differ = (out: PairRows) =>
    decided((_, open) => checkPairDifference(out, rows(41.3), rows(41.3), step("minus"), 1, open), out);
  expect(differ(rows(1e-31, 0, { power: 1, count: 1 }))).toBe(0);
  expect(differ(rows(1e-31))).toBeUndefined();
  expect(differ(rows(0.5))).toBe(0.5);
});

test("two values are level only where their grains say so", () => {
  const comparison = { a: 0, b: 1, below: false, equal: true, above: false, implied: false, double: 0, pair: 100 * U2 };
  const level = (a: PairRows, b: PairRows) =>
    decided((_, open) => checkPairComparison(comparison, a, b, 1, open), rows(1)) === 1;
  expect(level(rows(585, 0, { power: 0, count: 1 }), rows(585, 1e-30, { power: 0, count: 24 }))).toBe(true);
  expect(level(rows(585), rows(585, 1e-30))).toBe(false);
  expect(level(rows(585, 0, { power: 0, count: 1 }), rows(585, 1e-25, { power: 0, count: 1 }))).toBe(false);
});

test("a nearest double is certain unless the middle of two is within the error", () => {
  const certain = (low: number) => decided((out, open) => nearestDouble(out, 100 * U2, 1, open), rows(1, low)) === 1;
  expect(certain(1e-20)).toBe(true);
  // The middle between 1 and the next double is 2^-53 above.
  expect(certain(2 ** -53 * (1 - 1e-10))).toBe(true);
  expect(certain(2 ** -53)).toBe(false);
});

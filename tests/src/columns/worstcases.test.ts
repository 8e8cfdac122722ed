import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Block } from "../../../src/columns/block";
import { boundOf, type StepBound } from "../../../src/columns/bounds";
import { computeDoubles } from "../../../src/columns/doubles";
import { lineOf, OTHER_PATH, UNDECIDED } from "../../../src/columns/lines";
import { addPairs } from "../../../src/columns/pairmath";
import {
  checkPairComparison,
  checkPairDifference,
  makePairWhole,
  nearestDouble,
  roundPair,
} from "../../../src/columns/pairproofs";
import type { Plan, PlannedComparison, PlannedStep } from "../../../src/columns/plan";
import { type PairRows, Scratch } from "../../../src/columns/scratch";
import { chance, isNearest, roundedRatio } from "../../functions/rows";
import { exactly } from "./exactly";

/*
 * Values whose exact value may lie anywhere within their bound, as near as can be to where a step is decided. Whatever a step calls
 * decided must hold for both ends of that interval, in exact fractions; and enough must be decided, or nothing would be tried.
 */

const ONE = new Fraction(1);
const bound = (double: number, sign: -1 | 1 = 1): StepBound => ({
  double,
  pair: double,
  least: 0,
  most: 3,
  sign,
  whole: false,
  differs: false,
});
const stepOf = (kind: PlannedStep["kind"], over: Partial<PlannedStep> = {}): PlannedStep => ({
  kind,
  a: 0,
  b: 1,
  input: 0,
  decimals: 0,
  bound: bound(0),
  used: false,
  shared: false,
  double: 0,
  pair: 0,
  ...over,
});

/** The two ends of where an exact value may lie. */
const ends = (value: Fraction, within: number) => {
  const part = exactly(within);
  return [value.mul(ONE.sub(part)), value.mul(ONE.add(part))] as const;
};
const rounded = (value: Fraction, decimals: number) =>
  roundedRatio(value.s < 0n ? -value.n : value.n, value.d, decimals).value;
const wholeUp = (value: Fraction) => Number(value.ceil().n * value.ceil().s);
const wholeDown = (value: Fraction) => Number(value.floor().n * value.floor().s);

describe("in doubles", () => {
  /** One or two columns of doubles through a plan of one step over them; the answer, or undefined where the row is left. */
  function decided(x: number, y: number, last: PlannedStep, comparisons: readonly PlannedComparison[] = []) {
    const block = new Block([{ mark: false }, { mark: false }]);
    block.columns[0]?.values.set([x]);
    block.columns[1]?.values.set([y]);
    const plan: Plan = {
      path: "",
      steps: [stepOf("input"), stepOf("input", { input: 1 }), last],
      comparisons,
      outputs: [2],
      rules: [],
      signed: [],
      wholes: [],
      nearest: [],
      plain: true,
    };
    const scratch = new Scratch();
    const lines = computeDoubles(plan, block, { at: undefined, count: 1 }, scratch);
    return scratch.open[0] === 0 ? lines[2]?.[0] : undefined;
  }

  test("a rounding holds for every value within the bound", () => {
    const random = chance(7);
    let taken = 0;
    for (let turn = 0; turn < 4000; turn += 1) {
      const decimals = turn % 5;
      const within = [0, 1, 2, 3.3, 48, 1000][turn % 6] ?? 0;
      const tie = (Math.floor(random() * 10 ** (turn % 7)) + 0.5) / 10 ** decimals;
      const ulps = Math.round((random() * 2 - 1) * (within * 1.3 + 4));
      const value = tie * (1 + ulps * 2 ** -53);
      const double = within * 2 ** -53;
      const answer = decided(value, 1, stepOf("decimals", { decimals, double }));
      if (answer === undefined) continue;
      taken += 1;
      for (const end of ends(exactly(value), double)) expect(answer).toBe(rounded(end, decimals));
    }
    expect(taken).toBeGreaterThan(400);
  });

  test.each(["ceil", "floor"] as const)("%s holds for every value within the bound", (kind) => {
    const random = chance(8);
    let taken = 0;
    for (let turn = 0; turn < 3000; turn += 1) {
      const within = [0, 1, 2, 3.3, 48, 1000][turn % 6] ?? 0;
      const whole = 1 + Math.floor(random() * 10 ** (turn % 7));
      const value = whole * (1 + Math.round((random() * 2 - 1) * (within * 1.3 + 4)) * 2 ** -53);
      const double = within * 2 ** -53;
      const answer = decided(value, 1, stepOf(kind, { double }));
      if (answer === undefined) continue;
      taken += 1;
      for (const end of ends(exactly(value), double))
        expect(answer).toBe(kind === "ceil" ? wholeUp(end) : wholeDown(end));
    }
    expect(taken).toBeGreaterThan(400);
  });

  test("a difference keeps within its bound, however small it may be beside its operands", () => {
    const cells = [48, 1, 500].map((units) => bound(units * 2 ** -53));
    const random = chance(9);
    let taken = 0;
    for (let turn = 0; turn < 3000; turn += 1) {
      const operand = cells[turn % 3] ?? bound(0);
      const step = stepOf("minus", { bound: boundOf({ kind: "minus", a: 0, b: 1 }, 1, [operand, operand], []) });
      const x = 1 + random();
      // |x - y| / (x + y) around 1 / 32, where a row is taken or left.
      const y = x * (1 - (2 / 32) * (0.4 + random() * 0.9));
      const answer = decided(x, y, step);
      if (answer === undefined) continue;
      taken += 1;
      const [, highX] = ends(exactly(x), operand.double);
      const [lowY] = ends(exactly(y), operand.double);
      const off = highX.sub(lowY).sub(exactly(answer)).abs();
      expect(off.lte(exactly(step.bound.double).mul(exactly(answer)))).toBe(true);
    }
    expect(taken).toBeGreaterThan(400);
  });

  test("a whole number that many steps make is exact, or left: a x b + c around 2^53", () => {
    const random = chance(17);
    const whole = { ...bound(0), whole: true };
    const plan: Plan = {
      path: "",
      steps: [
        ...[0, 1, 2].map((input) => stepOf("input", { input, bound: whole })),
        stepOf("times", { a: 0, b: 1, bound: whole }),
        stepOf("plus", { a: 3, b: 2, bound: whole }),
      ],
      comparisons: [],
      outputs: [4],
      rules: [],
      signed: [],
      wholes: [4],
      nearest: [4],
      plain: true,
    };
    let taken = 0;
    for (let turn = 0; turn < 4000; turn += 1) {
      const block = new Block([{ mark: false }, { mark: false }, { mark: false }]);
      const cells = [2 ** (24 + random() * 4), 2 ** 26, 9].map((most) => Math.ceil(most * (0.5 + random() / 2)));
      cells.forEach((cell, column) => {
        block.columns[column]?.values.set([cell]);
      });
      const scratch = new Scratch();
      const lines = computeDoubles(plan, block, { at: undefined, count: 1 }, scratch);
      if (scratch.open[0] !== 0) continue;
      taken += 1;
      const [a = 0n, b = 0n, c = 0n] = cells.map(BigInt);
      expect(lines[4]?.[0]).toBe(Number(a * b + c));
    }
    expect(taken).toBeGreaterThan(400);
  });

  test("a comparison holds for all values within the bound", () => {
    const random = chance(10);
    let taken = 0;
    for (let turn = 0; turn < 4000; turn += 1) {
      const within = [0, 1, 3.3, 48][turn % 4] ?? 0;
      const double = within * 2 ** -53;
      const x = 1 + random();
      const y = x * (1 + Math.round((random() * 2 - 1) * (within * 2.6 + 3)) * 2 ** -52);
      const of = { a: 0, b: 1, below: true, equal: true, above: true, implied: false, double, pair: 0 };
      if (decided(x, y, stepOf("plus", { double }), [of]) === undefined) continue;
      taken += 1;
      const signs = ends(exactly(x), double).flatMap((a) => ends(exactly(y), double).map((b) => a.compare(b)));
      expect(new Set(signs).size).toBe(1);
    }
    expect(taken).toBeGreaterThan(400);
  });
});

describe("in pairs", () => {
  const pair = (high: number, low: number, grain?: { readonly power: number; readonly count: number }): PairRows => ({
    high: lineOf(high, 4),
    low: lineOf(low, 4),
    grains: grain && { power: lineOf(grain.power, 4), count: lineOf(grain.count, 4) },
  });
  function decided(run: (out: PairRows, open: Uint8Array) => void, out = pair(0, 0)) {
    const open = new Uint8Array(1);
    run(out, open);
    return open[0] === 0 ? out.high[0] : undefined;
  }
  const exactOf = ({ high, low }: PairRows) => exactly(high[0] ?? 0).add(exactly(low[0] ?? 0));

  /** Values of a grain, n / count, that lie within the bound around a pair, near a tie or whole number. */
  function* possible(value: Fraction, within: number, count: number): Iterable<Fraction> {
    const [from, to] = ends(value, within);
    const least = from.mul(count).ceil();
    for (let step = 0; step < 4; step += 1) {
      const each = least.add(step).div(count);
      if (each.lte(to)) yield each;
    }
  }

  test("a rounding is the one of every value that may be meant: all within the bound, or all of the grain within it", () => {
    const random = chance(11);
    let taken = 0;
    let ties = 0;
    for (let turn = 0; turn < 6000; turn += 1) {
      const tie = Math.floor(random() * 1000) + 0.5;
      const within = 2 ** -45;
      const reach = within * tie;
      // The smallest step of the grain from a little less to a little more than what proves a tie; odd counts have no ties.
      const count = 2 * Math.round(0.25 / (reach * (0.35 + random() * 2))) + 1;
      const low = (random() * 2 - 1) * reach * 1.3;
      const value = pair(tie, low, turn % 3 ? { power: 0, count } : undefined);
      const answer = decided((out, open) => roundPair(value, stepOf("decimals", { pair: within }), out, 1, open));
      if (answer === undefined) continue;
      taken += 1;
      if (Math.abs(low) < reach) ties += 1;
      const all = value.grains ? [...possible(exactOf(value), within, count)] : ends(exactOf(value), within);
      for (const each of all) expect(answer).toBe(rounded(each, 0));
    }
    expect(taken).toBeGreaterThan(400);
    expect(ties).toBeGreaterThan(50);
  });

  test("a rounding of large values is the nearest double of the whole number, or left", () => {
    const random = chance(18);
    let taken = 0;
    for (let turn = 0; turn < 4000; turn += 1) {
      const high = Math.floor(2 ** (50 + random() * 4));
      const value = pair(high, (random() - 0.5) * (high >= 2 ** 53 ? 2 : 1));
      const answer = decided((out, open) => roundPair(value, stepOf("decimals"), out, 1, open));
      if (answer === undefined) continue;
      taken += 1;
      expect(answer).toBe(rounded(exactOf(value), 0));
    }
    expect(taken).toBeGreaterThan(400);
  });

  test("a rounding loses no more than it counts, beside a bound as small as itself", () => {
    const random = chance(12);
    let taken = 0;
    for (let turn = 0; turn < 12_000; turn += 1) {
      const decimals = 2 + (turn % 7);
      const halves = 2 * Math.floor(random() * 100_000) + 1;
      const high = halves / 2 / 10 ** decimals;
      const tie = new Fraction(BigInt(halves), 2n * 10n ** BigInt(decimals));
      // The rest to the tie as a double, and a few u² of the value beside it.
      const rest = Number(tie.sub(exactly(high)).valueOf());
      const value = pair(high, rest + (random() * 2 - 1) * ([3, 14][turn % 2] ?? 3) * 2 ** -106 * high);
      const within = [0, 1, 4][turn % 3] ?? 0;
      const answer = decided((out, open) =>
        roundPair(value, stepOf("decimals", { decimals, pair: within * 2 ** -106 }), out, 1, open),
      );
      if (answer === undefined) continue;
      taken += 1;
      for (const end of ends(exactOf(value), within * 2 ** -106)) expect(answer).toBe(rounded(end, decimals));
    }
    expect(taken).toBeGreaterThan(200);
  });

  test.each(["ceil", "floor"] as const)("%s is that of every value that may be meant", (kind) => {
    const random = chance(13);
    let taken = 0;
    for (let turn = 0; turn < 6000; turn += 1) {
      const whole = Math.floor(random() * 1000) + 1;
      const within = 2 ** -45;
      const reach = within * whole;
      const count = Math.round(1 / (reach * (0.35 + random() * 2)));
      const value = pair(whole, (random() * 2 - 1) * reach * 1.3, turn % 3 ? { power: 0, count } : undefined);
      const answer = decided((out, open) => makePairWhole(value, stepOf(kind, { pair: within }), out, 1, open));
      if (answer === undefined) continue;
      taken += 1;
      const all = value.grains ? [...possible(exactOf(value), within, count)] : ends(exactOf(value), within);
      for (const each of all) expect(answer).toBe(kind === "ceil" ? wholeUp(each) : wholeDown(each));
    }
    expect(taken).toBeGreaterThan(400);
  });

  test("a difference is as large as a row may have it, or is zero for every value that may be meant", () => {
    const random = chance(14);
    let [taken, zeros] = [0, 0];
    for (let turn = 0; turn < 6000; turn += 1) {
      const within = 2 ** -60;
      const size = 1 + random();
      // Around 1 / 1024 of both together, and around nothing.
      const small = turn % 2 ? 2 * size * within * random() * 1.5 : ((2 * size) / 1024) * (0.4 + random());
      const difference = turn % 4 < 2 ? small : -small;
      const count = Math.round(1 / (2 * size * within * (0.35 + random() * 2.5)));
      const out = pair(difference, 0, { power: 0, count });
      const [a, b] = [pair(size, 0), pair(size - difference, 0)];
      const answer = decided(
        (_, open) => checkPairDifference(out, a, b, stepOf("minus", { pair: within }), 1, open),
        out,
      );
      if (answer === undefined) continue;
      taken += 1;
      if (answer !== 0) {
        expect(answer * 1024).toBeGreaterThanOrEqual(size + (size - difference));
        continue;
      }
      zeros += 1;
      // Off by the bound of both operands together: of all multiples of the grain's step only 0 may lie there.
      const reach = exactly(within).mul(exactly(size).add(exactly(size - difference)));
      const least = exactly(difference).sub(reach).mul(count).ceil();
      const most = exactly(difference).add(reach).mul(count).floor();
      if (least.lte(most)) expect([least.valueOf() + 0, most.valueOf() + 0]).toEqual([0, 0]);
    }
    expect(taken).toBeGreaterThan(400);
    expect(zeros).toBeGreaterThan(50);
  });

  test("a comparison holds for all values within the bound, or is equal for all of the grain within it", () => {
    const random = chance(15);
    let [taken, equals] = [0, 0];
    for (let turn = 0; turn < 6000; turn += 1) {
      const within = 2 ** -60;
      const x = 1 + random();
      const apart = 2 * x * within * (random() * 2 - 1) * 1.5;
      const count = Math.round(1 / (2 * x * within * (0.35 + random() * 2.5)));
      const grain = turn % 3 ? { power: 0, count } : undefined;
      const [a, b] = [pair(x, apart, grain), pair(x, 0, grain)];
      const answers = { below: turn % 2 === 0, equal: true, above: turn % 2 === 0 };
      const of = { a: 0, b: 1, ...answers, implied: false, double: 0, pair: within };
      if (decided((_, open) => checkPairComparison(of, a, b, 1, open)) === undefined) continue;
      taken += 1;
      const reach = exactly(within).mul(exactly(x).mul(2).add(exactly(apart).abs()));
      const between = [exactly(apart).sub(reach), exactly(apart).add(reach)] as const;
      if (between[0].compare(0) === between[1].compare(0)) continue;
      equals += 1;
      expect(between[0].mul(count).ceil().valueOf() + 0).toBe(0);
      expect(between[1].mul(count).floor().valueOf() + 0).toBe(0);
    }
    expect(taken).toBeGreaterThan(400);
    expect(equals).toBeGreaterThan(50);
  });

  /** Two pairs without error whose highs and lows nearly take each other away: what is left is of the size of a last digit. */
  function nearlyTaken(random: () => number) {
    const x = 1 + random();
    // In steps of 2^-106, the last digit of a low that is near its largest.
    const tiny = () => Math.floor(random() * 6) * 2 ** -106;
    return [pair(x, -(2 ** -53) + tiny()), pair(x - 2 ** -52, 2 ** -53 - tiny())] as const;
  }

  test("a comparison of pairs without error counts what taking them apart loses", () => {
    const random = chance(21);
    const taken = { below: 0, equal: 0, above: 0 };
    for (let turn = 0; turn < 3000; turn += 1) {
      const [a, b] = turn % 2 ? nearlyTaken(random) : [...nearlyTaken(random)].reverse();
      if (!a || !b) continue;
      if (turn % 3 === 0) for (const low of [a.low, b.low]) low[0] = (random() - 0.5) * 2 ** -53;
      const sign = exactOf(a).compare(exactOf(b));
      for (const answer of ["below", "equal", "above"] as const) {
        const of = {
          a: 0,
          b: 1,
          below: false,
          equal: false,
          above: false,
          implied: false,
          double: 0,
          pair: 0,
          [answer]: true,
        };
        if (decided((_, open) => checkPairComparison(of, a, b, 1, open)) === undefined) continue;
        taken[answer] += 1;
        expect(sign).toBe({ below: -1, equal: 0, above: 1 }[answer]);
      }
    }
    expect(Math.min(taken.below, taken.above)).toBeGreaterThan(100);
  });

  test("a difference of pairs without error that is one step of its grain is not taken for zero", () => {
    const random = chance(22);
    let small = 0;
    for (let turn = 0; turn < 3000; turn += 1) {
      const [a, b] = nearlyTaken(random);
      const exact = exactOf(a).sub(exactOf(b));
      if (exact.compare(0) === 0) continue;
      const out = pair(0, 0, { power: 0, count: Number(exact.abs().inverse().valueOf()) });
      addPairs(a, b, -1, out, 1);
      const open = new Uint8Array(1);
      checkPairDifference(out, a, b, stepOf("minus"), 1, open);
      if (Math.abs(out.high[0] ?? 0) < Math.abs(Number(exact.valueOf()))) small += 1;
      expect(open[0] === 0 && out.high[0] === 0).toBe(false);
    }
    // Cases in which the difference as computed is less than the step.
    expect(small).toBeGreaterThan(50);
  });

  test("values of two grains may differ by less than either step: 2 / 3 and 5 / 7 by 1 / 21", () => {
    const of = { a: 0, b: 1, below: false, equal: true, above: false, implied: false, double: 0, pair: 2 ** -4 };
    const compared = (x: number, y: number) => {
      const [a, b] = [pair(x, 0, { power: 0, count: 3 }), pair(y, 0, { power: 0, count: 7 })];
      const open = new Uint8Array(1);
      checkPairComparison(of, a, b, 1, open);
      return open[0];
    };
    expect(compared(2 / 3, 5 / 7)).toBe(UNDECIDED);
    expect(compared(5 / 3, 1)).toBe(OTHER_PATH);
  });

  test("a nearest double is that of every value within the bound", () => {
    const random = chance(16);
    let taken = 0;
    for (let turn = 0; turn < 4000; turn += 1) {
      const high = 1 + random();
      const within = [1, 50, 2000][turn % 3] ?? 0;
      // The middle between two doubles is half a unit in the last place away.
      const low = 2 ** -53 * (turn % 2 ? 1 : -1) * (1 - (random() * 2 - 0.5) * within * 2 ** -52);
      const value = pair(high, low);
      const answer = decided((out, open) => nearestDouble(out, within * 2 ** -106, 1, open), value);
      if (answer === undefined) continue;
      taken += 1;
      for (const end of ends(exactOf(value), within * 2 ** -106)) expect(isNearest(answer, end.n, end.d)).toBe(true);
    }
    expect(taken).toBeGreaterThan(200);
  });
});

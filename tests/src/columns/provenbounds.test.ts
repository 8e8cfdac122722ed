import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { boundOf, type Input, LARGEST_BOUND, type StepBound } from "../../../src/columns/bounds";
import type { Step } from "../../../src/columns/trace";
import { Quotient } from "../../../src/exact/quotient";
import { chance } from "../../functions/rows";
import { exactly, saidBy } from "./exactly";

/*
 * For each rule of bounds.ts the worst that its operands may be, and the worst that the operation may lose, in exact fractions.
 * What a result is then off by, beside the result that was computed, must be within the bound that the rule gives.
 */

const ONE = new Fraction(1);
const U = new Fraction(1n, 2n ** 53n);
const U2 = U.mul(U);

type Kind = "double" | "pair";
const SPARE = { double: 32, pair: 1024 } as const;

/** An operand with such a bound in both tiers, and the worst that its exact value can be for a computed 1. */
const operand = (bound: number, sign: -1 | 1 = 1): StepBound => ({
  double: bound,
  pair: bound,
  least: 0,
  most: 0,
  sign,
  whole: false,
  differs: false,
});
/** Up to the largest that a plan may have: as a pair, a cell's after as many differences as doubles allow. */
const BOUNDS = { double: [0, 2 ** -53, 48 * 2 ** -53, LARGEST_BOUND], pair: [0, 2 ** -106, 164 * 2 ** -106, 2 ** -58] };

function ruleOf(kind: "plus" | "minus" | "times" | "dividedBy" | "larger", ra: number, rb: number): StepBound {
  return boundOf({ kind, a: 0, b: 1 } as Step, 1, [operand(ra), operand(rb)], []);
}

/** What a value is off by, in parts of what was computed. */
const off = (exact: Fraction, computed: Fraction) => exact.sub(computed).abs().div(computed.abs());

/** What one operation may lose at most, as bounds.ts and pairmath.ts derive it. */
const LOST = {
  double: { times: U, dividedBy: U, plus: U },
  pair: { times: U2.mul(8), dividedBy: U2.mul(19), plus: U2.mul(3) },
} as const;

describe.each<Kind>(["double", "pair"])("the bound as a %s", (kind) => {
  const within = (worst: Fraction, bound: StepBound) => expect(worst.lte(exactly(bound[kind]))).toBe(true);
  const lost = LOST[kind];
  /** All pairs of bounds, with their fractions: a rule is tried for each. */
  const both = BOUNDS[kind].flatMap((ra) => BOUNDS[kind].map((rb) => [ra, rb, exactly(ra), exactly(rb)] as const));

  test("of a product holds for operands at their bounds and the largest loss", () => {
    for (const [ra, rb, a, b] of both) {
      const exact = ONE.add(a).mul(ONE.add(b));
      within(off(exact, ONE.sub(lost.times)), ruleOf("times", ra, rb));
    }
  });

  test("of a quotient holds for operands at their bounds and the largest loss", () => {
    for (const [ra, rb, a, b] of both) {
      const exact = ONE.add(a).div(ONE.sub(b));
      within(off(exact, ONE.sub(lost.dividedBy)), ruleOf("dividedBy", ra, rb));
    }
  });

  test("of a sum holds for operands at their bounds and the largest loss", () => {
    for (const [ra, rb, a, b] of both) {
      // One operand far larger than the other: the worse of the two counts.
      const [large, small] = [new Fraction(1_000_000n), ONE];
      for (const [x, y] of [
        [large, small],
        [small, large],
        [ONE, ONE],
      ] as const) {
        const exact = x.mul(ONE.add(a)).add(y.mul(ONE.add(b)));
        const computed = x.add(y).mul(ONE.sub(lost.plus));
        within(off(exact, computed), ruleOf("plus", ra, rb));
      }
    }
  });

  test("of a difference holds where it is as small beside its operands as a row may have it", () => {
    for (const [ra, rb, a, b] of both) {
      const [x, y] = [new Fraction(SPARE[kind] + 1), new Fraction(SPARE[kind] - 1)];
      // x - y is 2 and x + y is 2 SPARE: the row is taken by a hair.
      const exact = x.mul(ONE.add(a)).sub(y.mul(ONE.sub(b)));
      const loss = kind === "double" ? lost.plus.mul(2) : lost.plus.mul(x.add(y));
      within(off(exact, x.sub(y).sub(loss)), ruleOf("minus", ra, rb));
    }
  });

  test("of the larger of two is that of the worse, and of pairs what they cannot tell apart", () => {
    for (const [ra, rb, a, b] of both) {
      const unseen = kind === "pair" ? U.mul(U2).mul(4) : new Fraction(0);
      within(a.gt(b) ? a.add(unseen) : b.add(unseen), ruleOf("larger", ra, rb));
    }
  });

  test("of a constant, and of a rounded value, holds for what its nearest double or pair may lose", () => {
    const lostByOne = kind === "double" ? U : U2;
    // Half a unit in the last place above 1, less a hair: 1 is its nearest double.
    const above = boundOf({ kind: "constant", value: Quotient.of("1.0000000000000001110223024625156540") }, 1, [], []);
    const rounded = boundOf({ kind: "decimals", a: 0, decimals: 2 }, 1, [operand(0)], []);
    for (const bound of [above, rounded]) {
      if (kind === "pair") within(off(ONE, ONE.sub(lostByOne)), bound);
      else within(new Fraction("0.000000000000000111022302462515654"), bound);
    }
  });
});

describe("the bound of a cell", () => {
  const INPUT: Input = { unsigned: true, whole: false };
  const bound = boundOf({ kind: "input", input: 0 }, 1, [], [INPUT]);

  test("holds for doubles furthest from the decimals of their 15 digits", () => {
    let worst = new Fraction(0);
    for (const power of [-7, -3, 0, 2, 9, 14])
      for (let step = 0; step < 100; step += 1) {
        const cell = Number(`1e${power}`) * (1 + step * 2 ** -52);
        const miss = off(saidBy(cell), exactly(cell));
        if (miss.gt(worst)) worst = miss;
      }
    expect(worst.lte(exactly(bound.double))).toBe(true);
    // The generator finds what the bound is for: more than 40 u.
    expect(worst.gt(U.mul(40))).toBe(true);
  });

  test("as a pair leaves room for reading, 92 u², and for the division of a mark, 19 u²", () => {
    expect(exactly(bound.pair).gte(U2.mul(92 + 19))).toBe(true);
  });

  test("gives the sizes of a mark's share: 1e-8 of a thousand parts", () => {
    expect(bound.least).toBeLessThanOrEqual(-11);
    expect(bound.most).toBeGreaterThanOrEqual(15);
  });
});

test("the sizes of a step hold the smallest and largest values of random operands", () => {
  const random = chance(41);
  const inputs: Input[] = [
    { unsigned: true, whole: false },
    { unsigned: true, whole: false },
  ];
  const cells = [0, 1].map((input) => boundOf({ kind: "input", input }, 1, [], inputs));
  const at = (log: number) => 10 ** log;
  for (let turn = 0; turn < 2000; turn += 1) {
    const [a, b] = cells.map(({ least, most }) =>
      at(turn % 2 ? least + random() * (most - least) : ([least, most][turn % 3 ? 0 : 1] ?? 0)),
    );
    const [x = 1, y = 1] = [a, b];
    for (const [kind, value] of [
      ["plus", x + y],
      ["times", x * y],
      ["dividedBy", x / y],
      ["larger", Math.max(x, y)],
    ] as const) {
      const { least, most } = boundOf({ kind, a: 0, b: 1 }, 1, cells, inputs);
      expect(Math.log10(value)).toBeGreaterThanOrEqual(least - 1e-9);
      expect(Math.log10(value)).toBeLessThanOrEqual(most + 1e-9);
    }
  }
  // The smallest difference that a row may have in pairs, and a rounding that goes up to the next power of ten.
  const difference = boundOf({ kind: "minus", a: 0, b: 1 }, 1, cells, inputs);
  expect(difference.least).toBeLessThanOrEqual((cells[0]?.least ?? 0) - Math.log10(SPARE.pair));
  const rounded = boundOf({ kind: "decimals", a: 0, decimals: 0 }, 1, [{ ...operand(0), most: 2 }], []);
  expect(rounded.most).toBeGreaterThan(2);
});

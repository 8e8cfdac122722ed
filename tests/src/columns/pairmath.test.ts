import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { SPARE } from "../../../src/columns/bounds";
import { lineOf } from "../../../src/columns/lines";
import {
  addPairs,
  choosePairs,
  dividePairs,
  lost,
  lowOf,
  multiplyPairs,
  type Pairs,
  readDecimals,
} from "../../../src/columns/pairmath";
import { Quotient } from "../../../src/exact/quotient";
import { exactly, saidBy } from "./exactly";

const U2 = new Fraction(1n, 2n ** 106n);

const fractionOf = ({ high, low }: Pairs) => exactly(high[0] ?? 0).add(exactly(low[0] ?? 0));

const size = fc.double({ min: 1e-4, max: 1e6, noNaN: true });
const pair = fc
  .tuple(size, fc.double({ min: -1, max: 1, noNaN: true }), fc.boolean())
  .map(([high, part, minus]): Pairs => {
    const sign = minus ? -1 : 1;
    return { high: lineOf(sign * high), low: lineOf(part * high * 2 ** -54) };
  });
const fresh = (): Pairs => ({ high: lineOf(), low: lineOf() });

describe("pairs against exact fractions (fraction.js), within the bounds of bounds.ts", () => {
  test("a product misses by 10 u² at most, a quotient by 24 u², a sum by 4 u² of both", () => {
    fc.assert(
      fc.property(pair, pair, (a, b) => {
        const out = fresh();
        multiplyPairs(a, b, out, 1);
        const product = fractionOf(a).mul(fractionOf(b));
        expect(fractionOf(out).sub(product).abs().lte(product.abs().mul(U2).mul(10))).toBe(true);
        dividePairs(a, b, out, 1);
        const quotient = fractionOf(a).div(fractionOf(b));
        expect(fractionOf(out).sub(quotient).abs().lte(quotient.abs().mul(U2).mul(24))).toBe(true);
        const both = fractionOf(a).abs().add(fractionOf(b).abs());
        for (const sign of [1, -1] as const) {
          addPairs(a, b, sign, out, 1);
          const sum = fractionOf(a).add(fractionOf(b).mul(sign));
          // Without the check of a difference's size its last sum may lose as much again.
          expect(fractionOf(out).sub(sum).abs().lte(both.mul(U2).mul(8))).toBe(true);
          if (sum.abs().mul(SPARE.pair).gte(both))
            expect(fractionOf(out).sub(sum).abs().lte(both.mul(U2).mul(4))).toBe(true);
        }
      }),
      { numRuns: 600 },
    );
  });

  test("the larger is one of two, and at most u² below the other", () => {
    const nearly = fc.tuple(pair, fc.integer({ min: -3, max: 3 })).map(([a, step]): readonly [Pairs, Pairs] => {
      const low = lineOf((a.low[0] ?? 0) + step * (a.high[0] ?? 0) * 2 ** -107);
      return [a, { high: a.high, low }];
    });
    fc.assert(
      fc.property(fc.oneof(fc.tuple(pair, pair), nearly), fc.constantFrom(1 as const, -1 as const), ([a, b], sign) => {
        const out = fresh();
        choosePairs(a, b, sign, out, 1);
        const [x, y, chosen] = [fractionOf(a), fractionOf(b), fractionOf(out)];
        expect(chosen.equals(x) || chosen.equals(y)).toBe(true);
        const right = (sign === 1) === x.gte(y) ? x : y;
        expect(chosen.sub(right).abs().lte(right.abs().mul(U2))).toBe(true);
      }),
      { numRuns: 600 },
    );
  });

  test("what a product loses is known exactly", () => {
    fc.assert(
      fc.property(size, size, (x, y) => {
        expect(
          exactly(x)
            .mul(exactly(y))
            .equals(exactly(x * y).add(exactly(lost(x, y, x * y)))),
        ).toBe(true);
      }),
    );
  });
});

describe("cells as the decimals of their 15 digits", () => {
  const read = (value: number) => {
    const [digits, powers, out, open] = [lineOf(), lineOf(), fresh(), new Uint8Array(1)];
    readDecimals(lineOf(value), digits, powers, out, 1, open);
    return { digits: digits[0] ?? 0, power: powers[0] ?? 0, value: fractionOf(out), open: open[0] };
  };

  test("are those of JavaScript's own toPrecision(15), and the pair misses them by 140 u² at most", () => {
    const cells = fc.oneof(
      fc.double({ min: 1e-8, max: 9e14, noNaN: true }),
      fc.integer({ min: 1, max: 1_000_000_000 }).map((count) => count / 1000),
      fc.tuple(fc.integer({ min: -7, max: 14 }), fc.integer({ min: -3, max: 3 })).map(([power, off]) => {
        const ten = Number(`1e${power}`);
        return ten + off * ten * 2 ** -53;
      }),
      fc.integer({ min: 1, max: 10_000 }).map((count) => count / 100 + 0.1 + 0.2),
    );
    let opened = 0;
    fc.assert(
      fc.property(cells, fc.boolean(), (above, minus) => {
        const cell = minus ? -above : above;
        const made = read(cell);
        if (made.open) {
          opened += 1;
          return;
        }
        const said = saidBy(cell);
        expect(new Fraction(BigInt(made.digits), 10n ** BigInt(made.power)).equals(said)).toBe(true);
        expect(made.value.sub(said).abs().lte(said.abs().mul(U2).mul(140))).toBe(true);
      }),
      { numRuns: 5000 },
    );
    expect(opened).toBeLessThan(50);
  });

  test("a double at the middle of two decimals is left open", () => {
    // 2^-1 and a half of the 15th digit: 562949953421312.5 is a double and ends in 5 after 15 digits.
    expect(read(562949953421312.5).open).toBe(1);
  });

  test("a double just beyond the middle goes to the nearer decimal", () => {
    // Seen in a catalogue: 2387.45 x 0.585 / 31.1034768, whose product with 10^13 rounds to the middle.
    const cell = (2387.45 * 0.585) / 31.1034768;
    const said = saidBy(cell);
    expect(read(cell).value.sub(said).abs().lte(said.mul(U2).mul(140))).toBe(true);
  });

  test("zero is zero", () => {
    expect(read(0).value.equals(0)).toBe(true);
  });
});

test("what an exact value is above its nearest double", () => {
  const ounce = Quotient.of("31.1034768");
  const high = ounce.toNumber();
  const whole = exactly(high).add(exactly(lowOf(ounce, high)));
  expect(whole.sub(new Fraction("31.1034768")).abs().lte(new Fraction("31.1034768").mul(U2))).toBe(true);
});

import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { anyNumber } from "../../functions/readers";
import { spread } from "../../functions/spread";
import { CostingError } from "../../src/exact/errors";
import { Quotient } from "../../src/exact/quotient";

beforeAll(() => {
  vi.stubGlobal("CustomFunctions", { Error: class extends Error {}, ErrorCode: {} });
});
afterAll(() => {
  vi.unstubAllGlobals();
});

const TWO = Quotient.of("2");
const COLUMN = [[5], [6], [7]];

/** A worksheet function of its own for each test, so that none has learned anything yet. */
const triple = () => spread({ b: anyNumber }, ({ b }) => b.times(Quotient.of("3")));

test("a formula that calls another function between its steps is computed row by row as it stands: 2a + 1", () => {
  const inner = triple();
  const outer = spread({ a: anyNumber }, ({ a }) => {
    const twice = a.times(TWO);
    inner({ b: [[1], [2], [3], [4]] });
    return twice.plus(Quotient.one);
  });
  expect(outer({ a: COLUMN })).toEqual([[11], [13], [15]]);
});

test("so is one whose inner call ends in a fault", () => {
  const inner = spread({ b: anyNumber }, ({ b }) => {
    throw new CostingError("outOfRange", "b", `found ${b.times(TWO).inWords()}`);
  });
  const outer = spread({ a: anyNumber }, ({ a }) => {
    const twice = a.times(TWO);
    expect(() => inner({ b: 1 })).toThrow();
    return twice.plus(Quotient.one);
  });
  expect(outer({ a: COLUMN })).toEqual([[11], [13], [15]]);
});

test("a formula that takes its answer from an inner call gets each row's own: 3a + 1", () => {
  const inner = triple();
  const outer = spread({ a: anyNumber }, ({ a }) => {
    const [[threefold] = []] = inner({ b: [[a.toNumber()]] });
    return Quotient.of(Number(threefold)).plus(Quotient.one);
  });
  expect(outer({ a: COLUMN })).toEqual([[16], [19], [22]]);
});

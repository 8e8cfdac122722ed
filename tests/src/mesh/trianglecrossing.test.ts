import fc from "fast-check";
import { expect, test } from "vitest";
import { crossingOf } from "../../../src/mesh/trianglecrossing";

const FLAT = [0, 0, 0, 4, 0, 0, 0, 4, 0];
const between = (...others: readonly number[]) => ({
  corners: Float64Array.of(...FLAT, ...others),
  index: Uint32Array.of(0, 1, 2, 3, 4, 5),
});
const crossing = (others: readonly number[]) => crossingOf(between(...others), 0, 1, 1e-6);

test("an edge through the middle of a triangle crosses it there", () => {
  expect(crossing([1, 1, -1, 1, 1, 1, 1.2, 1, 2])).toEqual([1, 1, 0]);
});

test.each([
  ["beside it", [5, 5, -1, 5, 5, 1, 9, 9, 0]],
  ["above it", [1, 1, 1, 2, 1, 1, 1, 2, 2]],
  ["in its plane, over it", [1, 1, 0, 5, 1, 0, 1, 5, 0]],
  ["touching it with a corner", [1, 1, 0, 1, 1, 2, 2, 1, 2]],
  ["touching its edge", [2, 0, -1, 2, 0, 1, 2, -3, 0]],
])("%s it does not", (_, others) => {
  expect(crossing(others)).toBeUndefined();
});

test("neighbours at a corner or an edge do not cross by meeting there, but do beyond", () => {
  const mesh = (...others: readonly number[]) => ({
    corners: Float64Array.of(...FLAT, ...others),
    index: Uint32Array.of(0, 1, 2, 0, 3, 4),
  });
  expect(crossingOf(mesh(-1, 0, 1, -1, 1, -1), 0, 1, 1e-6)).toBeUndefined();
  // The far edge of the neighbour goes down through 1, 1, 0.
  expect(crossingOf(mesh(1, 1, 1, 1, 1, -1), 0, 1, 1e-6)).toEqual([1, 1, 0]);
  expect(
    crossingOf({ corners: Float64Array.of(...FLAT, 1, 1, 1), index: Uint32Array.of(0, 1, 2, 1, 0, 3) }, 0, 1, 1e-6),
  ).toBeUndefined();
});

test("which of the two is asked about makes no difference", () => {
  const coordinate = fc.integer({ min: -3, max: 6 });
  fc.assert(
    fc.property(fc.array(coordinate, { minLength: 9, maxLength: 9 }), (others) => {
      const mesh = between(...others);
      expect(crossingOf(mesh, 0, 1, 1e-6) === undefined).toBe(crossingOf(mesh, 1, 0, 1e-6) === undefined);
    }),
  );
});

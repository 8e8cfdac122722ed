import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { joinNear, toleranceOf } from "../../../src/mesh/joincorners";

describe("corners that are near", () => {
  const meshOf = () => ({
    corners: Float64Array.of(0, 0, 0, 0.9, 0, 0, 1.8, 0, 0, 5, 5, 5),
    index: Uint32Array.of(0, 1, 2, 1, 2, 3),
  });

  test("join directly or by steps, to the lowest", () => {
    const mesh = meshOf();
    expect(joinNear(mesh, new Set([3, 1, 2, 0]), 1)).toBe(2);
    expect([...mesh.index]).toEqual([0, 0, 0, 0, 0, 3]);
  });

  test("stay apart where they are farther than the tolerance, or are not asked about", () => {
    const mesh = meshOf();
    expect(joinNear(mesh, new Set([0, 1, 2, 3]), 0.8)).toBe(0);
    expect(joinNear(mesh, new Set([0, 2, 3]), 1)).toBe(0);
    expect([...mesh.index]).toEqual([...meshOf().index]);
  });

  test("join across the borders of the grid that finds them, wherever they lie", () => {
    const place = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(place, place, place, (x, y, z) => {
        const corners = Float64Array.of(x, y, z, x + 0.5, y - 0.5, z + 0.5);
        expect(joinNear({ corners, index: Uint32Array.of(0, 1, 0) }, new Set([0, 1]), 0.9)).toBe(1);
      }),
    );
  });
});

test("the tolerance is a millionth of the model and grows with its distance from the origin", () => {
  const at = (away: number) =>
    toleranceOf({ corners: Float64Array.of(away, 0, 0, away + 3, 4, 0), index: new Uint32Array(0) });
  // From corner to corner the model is 5 long.
  expect(at(0)).toBe(5 * 2 ** -20 + 4 * 2 ** -22);
  expect(at(1000)).toBe(5 * 2 ** -20 + 1003 * 2 ** -22);
});

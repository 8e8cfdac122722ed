import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Welding } from "../../../src/mesh/weld";
import { soupOf } from "../modelfile";

describe("corners that are equal", () => {
  test("become one, and every triangle keeps its coordinates", () => {
    const coordinate = fc.integer({ min: -2, max: 2 }).map((whole) => whole / 4);
    const corner = fc.tuple(coordinate, coordinate, coordinate);
    fc.assert(
      fc.property(fc.array(corner, { maxLength: 100 }), fc.constantFrom("single", "double"), (given, precision) => {
        const welding = new Welding(precision, 4);
        for (const each of given) welding.add(...each);
        const mesh = welding.mesh();
        // Adding zero: minus zero is zero.
        expect(soupOf(mesh)).toEqual(given.flat().map((value) => value + 0));
        const texts = Array.from({ length: mesh.corners.length / 3 }, (_, i) =>
          mesh.corners.subarray(3 * i, 3 * i + 3).join(),
        );
        expect(new Set(texts).size).toBe(texts.length);
      }),
    );
  });

  test("in all digits: the nearest double is another corner, the nearest single is not", () => {
    for (const [precision, corners] of [
      ["single", 1],
      ["double", 2],
    ] as const) {
      const welding = new Welding(precision, 1);
      for (const x of [1, 1 + 2 ** -50]) welding.add(x, 0, 0);
      expect(welding.mesh().corners.length).toBe(3 * corners);
    }
  });

  test("are many: the table grows", () => {
    const welding = new Welding("single", 10);
    for (let pass = 0; pass < 2; pass += 1) for (let i = 0; i < 30_000; i += 1) welding.add(i, i % 100, 0);
    const { corners, index } = welding.mesh();
    expect([corners.length, index.length, index[59_999]]).toEqual([90_000, 60_000, 29_999]);
  });
});

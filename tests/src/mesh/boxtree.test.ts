import fc from "fast-check";
import { expect, test } from "vitest";
import { BoxTree } from "../../../src/mesh/boxtree";
import type { Mesh } from "../../../src/mesh/mesh";

/** Triangles of nine coordinates each, on a coarse grid so that many touch. */
const soups = fc
  .array(fc.array(fc.integer({ min: 0, max: 12 }), { minLength: 9, maxLength: 9 }), { minLength: 1, maxLength: 40 })
  .map((triangles): Mesh => {
    const corners = Float64Array.from(
      triangles.flatMap((triangle) => triangle.map((value, i) => value / (i < 3 ? 4 : 3))),
    );
    return { corners, index: Uint32Array.from({ length: corners.length / 3 }, (_, corner) => corner) };
  });

function boxOf({ corners }: Mesh, triangle: number) {
  return [0, 1, 2].map((axis) => {
    const values = [0, 1, 2].map((corner) => corners[9 * triangle + 3 * corner + axis] ?? 0);
    return [Math.min(...values), Math.max(...values)] as const;
  });
}

const all = (mesh: Mesh) => Uint32Array.from({ length: mesh.index.length / 3 }, (_, triangle) => triangle);

test("every two triangles whose boxes touch are visited once, and no others", () => {
  fc.assert(
    fc.property(soups, (mesh) => {
      const expected: string[] = [];
      const boxes = [...all(mesh)].map((triangle) => boxOf(mesh, triangle));
      boxes.forEach((a, one) => {
        boxes.slice(one + 1).forEach((b, beside) => {
          const touch = a.every(([low, high], axis) => low <= (b[axis]?.[1] ?? 0) && high >= (b[axis]?.[0] ?? 0));
          if (touch) expected.push(`${one} ${one + 1 + beside}`);
        });
      });
      const visited: string[] = [];
      new BoxTree(mesh, all(mesh)).eachPair(
        (one, other) => visited.push(`${Math.min(one, other)} ${Math.max(one, other)}`) > 0,
        () => {},
      );
      expect(visited.sort()).toEqual(expected.sort());
    }),
  );
});

test("it stops where the visitor has enough", () => {
  const corners = Float64Array.from({ length: 90 }, (_, i) => i % 3);
  const mesh = { corners, index: Uint32Array.from({ length: 30 }, (_, corner) => corner) };
  let visited = 0;
  new BoxTree(mesh, all(mesh)).eachPair(
    () => {
      visited += 1;
      return visited < 4;
    },
    () => {},
  );
  expect(visited).toBe(4);
});

test("a ray visits every triangle whose box it meets", () => {
  const along = fc.tuple(
    fc.double({ min: 0.1, max: 1, noNaN: true }),
    fc.double({ min: -1, max: -0.1, noNaN: true }),
    fc.double({ min: 0.1, max: 1, noNaN: true }),
  );
  const from = fc.tuple(...([0, 1, 2] as const).map(() => fc.double({ min: -1, max: 5, noNaN: true })));
  fc.assert(
    fc.property(soups, from, along, (mesh, origin, direction) => {
      const visited = new Set<number>();
      new BoxTree(mesh, all(mesh)).eachAlong(origin, direction, (triangle) => visited.add(triangle));
      for (const triangle of all(mesh)) {
        // The ray meets the box where the latest entry into a slab comes before the first exit.
        const crossings = boxOf(mesh, triangle).map((sides, axis) =>
          sides.map((side) => (side - (origin[axis] ?? 0)) / (direction[axis] ?? 1)).sort((a, b) => a - b),
        );
        const enter = Math.max(0, ...crossings.map(([first = 0]) => first));
        const leave = Math.min(...crossings.map(([, last = 0]) => last));
        if (enter <= leave) expect(visited).toContain(triangle);
      }
    }),
  );
});

import { expect, test } from "vitest";
import { surfacesOf } from "../../../src/mesh/surface";

/** Corners that do not matter: only which triangles share them. */
const meshOf = (...triangles: readonly (readonly [number, number, number])[]) => {
  const index = Uint32Array.from(triangles.flat());
  const corners = Float64Array.from({ length: 3 * (Math.max(...index) + 1) }, (_, i) => Math.sin(i * i + 1));
  return { corners, index };
};
const TETRAHEDRON = [
  [0, 2, 1],
  [0, 1, 3],
  [1, 2, 3],
  [2, 0, 3],
] as const;
const faultsOf = (...triangles: readonly (readonly [number, number, number])[]) =>
  surfacesOf(meshOf(...triangles))
    .faulty.map(({ fault }) => fault)
    .sort();

test("four triangles over four corners close to one surface", () => {
  const { count, faulty, surfaceOf } = surfacesOf(meshOf(...TETRAHEDRON));
  expect([count, faulty, [...surfaceOf]]).toEqual([1, [], [0, 0, 0, 0]]);
});

test("two closed ones that share one corner are two", () => {
  const second = TETRAHEDRON.map(([a, b, c]) => [a + 3, b + 3, c + 3] as const);
  expect(surfacesOf(meshOf(...TETRAHEDRON, ...second)).count).toBe(2);
});

test("one triangle has three open edges; two over one edge four", () => {
  expect(faultsOf([0, 1, 2])).toEqual(["open", "open", "open"]);
  expect(faultsOf([0, 1, 2], [1, 0, 3])).toEqual(["open", "open", "open", "open"]);
});

test("an edge run twice in one direction is turned, one of three triangles crowded", () => {
  expect(faultsOf([0, 1, 2], [0, 1, 3])).toEqual(["open", "open", "open", "open", "turned"]);
  expect(faultsOf([0, 1, 2], [1, 0, 3], [0, 1, 4]).filter((fault) => fault === "crowded")).toHaveLength(1);
});

test("a triangle folded to a line belongs to nothing and opens nothing", () => {
  const { count, faulty, surfaceOf } = surfacesOf(meshOf(...TETRAHEDRON, [0, 1, 0]));
  expect([count, faulty, surfaceOf[4]]).toEqual([1, [], -1]);
});

test("a corner of a thousand triangles is sorted out too", () => {
  const rim = 1000;
  const cone = Array.from({ length: rim }, (_, i) => [rim, i, (i + 1) % rim] as const);
  const base = Array.from({ length: rim }, (_, i) => [rim + 1, (i + 1) % rim, i] as const);
  expect(surfacesOf(meshOf(...cone, ...base))).toMatchObject({ count: 1, faulty: [] });
  expect(surfacesOf(meshOf(...cone, ...base.slice(1))).faulty).toHaveLength(3);
});

import type { BufferGeometry } from "three";
import { expect, test } from "vitest";
import { BoxTree } from "../../../src/mesh/boxtree";
import { nestsOf, spread } from "../../../src/mesh/nesting";
import { Rays } from "../../../src/mesh/ray";
import { shellsOf } from "../../../src/mesh/shell";
import { readStl } from "../../../src/mesh/stl";
import { surfacesOf } from "../../../src/mesh/surface";
import { binaryStl, boxAt, turned } from "../modelfile";

function nests(...geometries: readonly BufferGeometry[]) {
  const mesh = readStl(binaryStl(...geometries)).mesh;
  const surfaces = surfacesOf(mesh);
  const shells = shellsOf(mesh, surfaces);
  const all = Uint32Array.from(surfaces.surfaceOf, (_, triangle) => triangle);
  const some = shells.map((_, shell) => [...all].filter((triangle) => surfaces.surfaceOf[triangle] === shell));
  return nestsOf(
    shells.map((_, shell) => shell),
    shells,
    some,
    mesh,
    new Rays(mesh, new BoxTree(mesh, all), surfaces.surfaceOf),
  );
}

const cube = (side: number) => boxAt([side, side, side], [0, 0, 0]);

test("side by side: two solids", () => {
  expect(nests(cube(1), boxAt([1, 1, 1], [3, 0, 0]))).toEqual([
    { outer: 0, voids: [] },
    { outer: 1, voids: [] },
  ]);
});

test("one within another: a hollow where it looks the other way, a solid where it does not", () => {
  expect(nests(cube(4), turned(cube(2)))).toEqual([{ outer: 0, voids: [1] }]);
  expect(nests(turned(cube(2)), cube(4))).toEqual([{ outer: 1, voids: [0] }]);
  expect(nests(turned(cube(4)), cube(2))).toEqual([{ outer: 0, voids: [1] }]);
  expect(nests(cube(4), cube(2))).toHaveLength(2);
});

test("shell in shell in shell in shell: a hollow solid within the hollow of a solid", () => {
  expect(nests(cube(8), turned(cube(6)), cube(4), turned(cube(2)))).toEqual([
    { outer: 0, voids: [1] },
    { outer: 2, voids: [3] },
  ]);
});

test("a few of a list, spread over it", () => {
  expect(spread([1, 2, 3], 5)).toEqual([1, 2, 3]);
  expect(spread([0, 1, 2, 3, 4, 5, 6, 7, 8, 9], 5)).toEqual([0, 2, 4, 6, 8]);
});

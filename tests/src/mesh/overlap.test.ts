import { BoxGeometry, type BufferGeometry } from "three";
import { expect, test } from "vitest";
import { examineModel } from "../../../src/mesh/examine";
import { readStl } from "../../../src/mesh/stl";
import { binaryStl, boxAt, placing, turned } from "../modelfile";

const overlaps = (...geometries: readonly BufferGeometry[]) =>
  examineModel(readStl(binaryStl(...geometries)).mesh).overlaps;

test("a rod through a hollow's wall is found, one within the hollow is not", () => {
  const hollow = [boxAt([8, 8, 8], [0, 0, 0]), turned(boxAt([6, 6, 6], [0, 0, 0]))];
  expect(overlaps(...hollow, boxAt([1, 1, 5], [0, 0, 0]))).toEqual([]);
  expect(overlaps(...hollow, boxAt([1, 1, 7], [0, 0, 0]))).toHaveLength(1);
});

test("boxes turned askew overlap by a tenth and part by a tenth", () => {
  const beside = (gap: number) =>
    [0, 1 + gap].map((x) =>
      new BoxGeometry(1, 1, 1).translate(x, 0, 0).applyMatrix4(placing([0.4, 0.7, 1.1], [20, 30, -40])),
    );
  expect(overlaps(...beside(0.1))).toEqual([]);
  // Face to face they touch, as far as single precision lets them.
  expect(overlaps(...beside(0))).toEqual([]);
  expect(overlaps(...beside(-0.1))).toHaveLength(1);
});

test("three in a row: each pair that shares room, once", () => {
  const row = [0, 0.75, 1.5].map((x) => boxAt([1, 1, 1], [x, x / 8, x / 4]));
  expect(
    overlaps(...row)
      .map(({ between }) => between)
      .toSorted(),
  ).toEqual([
    [0, 1],
    [1, 2],
  ]);
});

import { expect, test } from "vitest";
import { pairsAround } from "../../../src/mesh/edgering";

/** Triangles on the edge from 0,0,0 to 0,0,1, each by its angle in degrees and whether it runs up the edge. */
function ring(...triangles: readonly (readonly [angle: number, up: boolean])[]) {
  const corners = [0, 0, 0, 0, 0, 1];
  const index: number[] = [];
  triangles.forEach(([angle, up], i) => {
    const turn = (angle * Math.PI) / 180;
    corners.push(Math.cos(turn), Math.sin(turn), 0.5);
    index.push(...(up ? [0, 1] : [1, 0]), 2 + i);
  });
  const pairs = pairsAround(
    triangles.map((_, i) => 3 * i),
    { corners: Float64Array.from(corners), index: Uint32Array.from(index) },
  );
  return pairs.map(([begins, ends]) => [triangles[begins / 3]?.[0], triangles[ends / 3]?.[0]]);
}

// Material lies clockwise of a triangle that runs up: it ends there. So it begins at one that runs down.
test("two wedges that meet at an edge stay two", () => {
  expect(ring([0, false], [90, true], [180, false], [270, true])).toEqual([
    [0, 90],
    [180, 270],
  ]);
});

test("wherever the ring begins", () => {
  expect(ring([90, true], [180, false], [270, true], [0, false]).toSorted()).toEqual([
    [0, 90],
    [180, 270],
  ]);
});

test("face to face: where one ends at the angle at which the other begins", () => {
  expect(ring([0, false], [90, true], [90, false], [180, true])).toEqual([
    [0, 90],
    [90, 180],
  ]);
});

test("the same wedge twice: in the order of the file", () => {
  const corners = Float64Array.of(0, 0, 0, 0, 0, 1, 1, 0, 0, 0, 1, 0);
  // Begins, ends, begins, ends: each wedge with itself.
  const index = Uint32Array.of(1, 0, 2, 0, 1, 3, 1, 0, 2, 0, 1, 3);
  expect(pairsAround([0, 3, 6, 9], { corners, index })).toEqual([
    [0, 3],
    [6, 9],
  ]);
});

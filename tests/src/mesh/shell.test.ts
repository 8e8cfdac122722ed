import { expect, test } from "vitest";
import { shellsOf } from "../../../src/mesh/shell";
import { readStl } from "../../../src/mesh/stl";
import { surfacesOf } from "../../../src/mesh/surface";
import { binaryStl, boxAt, turned } from "../modelfile";

const shells = (stl: Uint8Array) => {
  const mesh = readStl(stl).mesh;
  return shellsOf(mesh, surfacesOf(mesh));
};

test("each shell has its triangles, its box and its signed volume", () => {
  const [first, second] = shells(binaryStl(boxAt([2, 3, 4], [1, 0, 0]), turned(boxAt([1, 1, 1], [512, 0, 0]))));
  expect(first).toEqual({
    triangles: 12,
    box: { least: [0, -1.5, -2], most: [2, 1.5, 2] },
    volume: 24,
    faults: new Map(),
  });
  expect(second?.volume).toBe(-1);
});

test("faults of edges are counted by kind, with the middle of the first", () => {
  const stl = binaryStl(boxAt([2, 2, 2], [0, 0, 0]));
  const [shell] = shells(withCount(stl, 11));
  expect(shell?.faults.get("open")?.count).toBe(3);
  expect(shell?.faults.get("open")?.place.some((value) => Math.abs(value) === 1)).toBe(true);
});

function withCount(stl: Uint8Array, count: number): Uint8Array {
  const cut = stl.slice(0, 84 + 50 * count);
  new DataView(cut.buffer).setUint32(80, count, true);
  return cut;
}

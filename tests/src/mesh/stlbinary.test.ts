import { describe, expect, test } from "vitest";
import { countedTriangles, readBinary, soundCount } from "../../../src/mesh/stlbinary";
import { binaryStl, boxAt } from "../modelfile";
import { expectFault } from "../reference";

const box = binaryStl(boxAt([2, 3, 4], [0, 0, 0]));
const counting = (stl: Uint8Array, count: number) => {
  const made = stl.slice();
  new DataView(made.buffer).setUint32(80, count, true);
  return made;
};
const longer = (stl: Uint8Array, by: number, byte = 7) => {
  const made = new Uint8Array(stl.length + by).fill(byte);
  made.set(stl);
  return made;
};

test("a box has twelve triangles and its corners", () => {
  expect(countedTriangles(box)).toBe(12);
  const { corners, index } = readBinary(box, () => {});
  expect([index.length, corners.length]).toEqual([36, 24]);
  expect(new Set(corners)).toEqual(new Set([1, -1, 1.5, -1.5, 2, -2]));
});

test("also from the middle of a larger buffer", () => {
  const within = longer(box, 0);
  const buffer = new Uint8Array(box.length + 3);
  buffer.set(box, 3);
  expect(readBinary(buffer.subarray(3), () => {})).toEqual(readBinary(within, () => {}));
});

test("minus zero counts as zero", () => {
  const stl = box.slice();
  new DataView(stl.buffer).setFloat32(84 + 12, -0, true);
  expect(Object.is(readBinary(stl, () => {}).corners[0], 0)).toBe(true);
});

describe("counts that do not fit the file", () => {
  test("cut off: how many there are of how many", () => {
    expectFault(
      () => soundCount(box.subarray(0, box.length - 120)),
      "wrongShape",
      "STL file",
      "9 of the 12",
      "cut off",
    );
    expectFault(() => soundCount(counting(box, 0xffffffff)), "wrongShape", "12 of the 4,294,967,295");
  });

  test("more triangles than counted", () => {
    expectFault(() => soundCount(counting(box, 11)), "wrongShape", "room for 12", "counts 11");
    expectFault(() => soundCount(counting(box, 0)), "wrongShape", "room for 12", "counts 0");
  });

  test("zeros and ends of lines behind the last triangle are let pass, nothing else", () => {
    expect(soundCount(longer(box, 2, 10))).toBe(12);
    expect(soundCount(longer(box, 4000, 0))).toBe(12);
    expectFault(() => soundCount(longer(box, 49)), "wrongShape", "49 bytes after the last triangle", "counts 12");
    expectFault(() => soundCount(longer(box, 50)), "wrongShape", "room for 13");
  });

  test("none at all", () => {
    expectFault(() => soundCount(new Uint8Array(84)), "blank", "no triangles");
  });
});

test("a coordinate that is none names its corner and triangle", () => {
  const stl = box.slice();
  new DataView(stl.buffer).setFloat32(84 + 50 * 4 + 12 + 12 + 4, Number.NaN, true);
  expectFault(() => readBinary(stl, () => {}), "notANumber", "STL file", "NaN", "corner 2 of triangle 5");
  new DataView(stl.buffer).setFloat32(84 + 50 * 4 + 12 + 12 + 4, -3e6, true);
  expectFault(() => readBinary(stl, () => {}), "outOfRange", "-3000000 at corner 2 of triangle 5");
});

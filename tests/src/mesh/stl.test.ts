import { TorusGeometry } from "three";
import { describe, expect, test } from "vitest";
import { CostingError } from "../../../src/exact/errors";
import { examineModel } from "../../../src/mesh/examine";
import { formatOf, LARGEST_STL, readStl } from "../../../src/mesh/stl";
import { binaryStl, boxAt, bytesOf, stlText, TETRAHEDRON, textStl, turned } from "../modelfile";
import { expectFault } from "../reference";

const box = boxAt([2, 3, 4], [0, 0, 0]);
const headed = (stl: Uint8Array, header: string) => {
  const made = stl.slice();
  made.fill(32, 0, 80);
  made.set(bytesOf(header));
  return made;
};

describe("which form a file has", () => {
  test("binary and text are told apart", () => {
    expect(readStl(binaryStl(box)).format).toBe("binary");
    expect(readStl(textStl(box)).format).toBe("text");
  });

  test('a binary file whose header begins with "solid" is binary', () => {
    const stl = headed(binaryStl(box), "solid facet normal of a link");
    expect(readStl(stl)).toEqual(readStl(binaryStl(box)));
  });

  test("a text as long as a binary file of some count is not taken for one by its header's bytes", () => {
    expect(formatOf(bytesOf(stlText(TETRAHEDRON, "l".repeat(60))))).toBe("text");
  });
});

describe("what is no STL is named", () => {
  test.each([
    ["nothing", new Uint8Array(0), "blank", "empty"],
    ["a few bytes", Uint8Array.of(1, 2, 200), "wrongShape", "3 bytes, too few"],
    ["a ZIP archive", bytesOf(`PK\x03\x04${"\0".repeat(200)}`), "wrongShape", "ZIP"],
    ["a packed file", Uint8Array.of(0x1f, 0x8b, 8, 0, 0, 0), "wrongShape", "gzip"],
    ["another kind of text", bytesOf("# OBJ\nv 0 0 0\nv 1 0 0\n".repeat(9)), "wrongShape", '"# OBJ'],
    [
      "a text in UTF-16",
      Uint8Array.from([0xff, 0xfe, ...[..."solid a"].flatMap((letter) => [letter.charCodeAt(0), 0])]),
      "wrongShape",
      "UTF-16",
    ],
    ["a picture", Uint8Array.from({ length: 300 }, (_, i) => (i * 89) % 256), "wrongShape", "cut off or no STL"],
  ] as const)("%s", (_, bytes, code, said) => {
    expectFault(() => readStl(bytes), code, "STL file", said);
  });

  test("a file over the limit is refused by its size, which the sentence states", () => {
    const large = { length: LARGEST_STL + 1 } as Uint8Array;
    expectFault(() => formatOf(large), "tooLarge", "STL file", "at most 256 MB");
  });
});

/** A repeatable source of chance. Source: the linear congruence of Numerical Recipes, from memory. */
function chance(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

/** The same file with some of it changed, cut off, doubled or left out. */
function mutated(file: Uint8Array, random: (below: number) => number): Uint8Array {
  const made = file.slice();
  const kind = random(6);
  if (kind === 0) return made.subarray(0, random(made.length));
  if (kind === 1) {
    const from = random(made.length);
    return Uint8Array.from([...made.subarray(0, from), ...made.subarray(from + 1 + random(60))]);
  }
  if (kind === 2) {
    const from = random(made.length);
    return Uint8Array.from([
      ...made.subarray(0, from),
      ...made.subarray(from, from + 1 + random(120)),
      ...made.subarray(from),
    ]);
  }
  const changes = 1 + random(kind === 3 ? 1 : 5);
  for (let i = 0; i < changes; i += 1) {
    // The head and the count of a binary file are a small part of it; they are struck as often as all the rest.
    const at = random(2) === 0 ? random(Math.min(96, made.length)) : random(made.length);
    made[at] = kind === 4 ? (made[at] ?? 0) ^ (1 << random(8)) : random(256);
  }
  return made;
}

describe("10,000 mutated and cut files end in a sentence or in the right volume", () => {
  const hollow = [boxAt([4, 4, 4], [0, 0, 0]), turned(boxAt([3, 3, 3], [0, 0, 0]))];
  // Their volumes: 24; 64 - 27; 24 and 1.
  const FILES: readonly (readonly [string, Uint8Array, readonly number[]])[] = [
    ["binary box", binaryStl(box), [24]],
    ["text box", textStl(box), [24]],
    ["binary hollow", binaryStl(...hollow), [37]],
    ["text of two", textStl(box, boxAt([1, 1, 1], [9, 0, 0])), [24, 1]],
  ];
  test.each(FILES)("2,500 of a %s", (name, file, volumes) => {
    const random = chance(name.length * 7919);
    let sentences = 0;
    let measured = 0;
    for (let run = 0; run < 2500; run += 1) {
      const bytes = mutated(file, random);
      try {
        const { solids, overlaps, folded } = examineModel(readStl(bytes).mesh);
        // What the pane says a sentence about: faulty solids, overlaps, triangles left out.
        const isTold = overlaps.length > 0 || folded > 0 || solids.some(({ faults }) => faults.length > 0);
        if (isTold) sentences += 1;
        else {
          measured += 1;
          const found = solids.map(({ volume = Number.NaN }) => volume);
          const isRight =
            found.length === volumes.length &&
            found.every((volume, i) => Math.abs(volume / (volumes[i] ?? 0) - 1) < 1e-5);
          if (!isRight) throw new Error(`run ${run} of ${name} gave ${found.join()} without a word`);
        }
      } catch (error) {
        if (!(error instanceof CostingError)) throw error;
        sentences += 1;
      }
    }
    expect(sentences + measured).toBe(2500);
    expect(sentences).toBeGreaterThan(500);
    expect(measured).toBeGreaterThan(50);
  });

  test("of a larger file, whole runs stay small in memory", () => {
    const file = binaryStl(new TorusGeometry(7, 3, 24, 60));
    const random = chance(1);
    for (let run = 0; run < 60; run += 1) {
      try {
        examineModel(readStl(mutated(file, random)).mesh);
      } catch (error) {
        expect(error).toBeInstanceOf(CostingError);
      }
    }
    expect(process.memoryUsage().arrayBuffers).toBeLessThan(512 * 2 ** 20);
  });
});

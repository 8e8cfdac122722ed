import { expect, test } from "vitest";
import { lineOf } from "../../../src/columns/lines";
import { MarkWords, readColumnMark, readColumnMarks } from "../../../src/columns/markcells";

const words = new MarkWords();

function read(cell: unknown): readonly [taken: boolean, value: number, parts: number] {
  const [values, parts] = [lineOf(), lineOf()];
  const taken = readColumnMark(cell, 0, values, parts, words);
  return [taken, values[0] ?? 0, parts[0] ?? 0];
}

test.each([
  [585, 1000],
  [24.5, 1000],
  [1000, 1000],
  [24, 24],
  [14, 24],
  [0.585, 1],
])("a number of %d is so many parts of %d", (cell, parts) => {
  expect(read(cell)).toEqual([true, cell, parts]);
});

test("a mark in words is kept, with its share as a pair: 14 / 24 and a third of u", () => {
  const [taken, at, parts] = read("14K");
  expect([taken, parts]).toEqual([true, 0]);
  expect(read("14K")[1]).toBe(at);
  const word = words.at(at);
  expect(word?.high).toBe(14 / 24);
  expect(word?.grain).toEqual({ power: 0, count: 24 });
  // 7/12 x 2^53 = 7 x 2^51 / 3 leaves 2/3, since 2^51 leaves 2 by 3: the nearest double is a third of a unit above.
  expect(word?.low).toBe(-(2 ** -53) / 3);
});

test("a fineness with the digits of n/24 is read as that mark, in any writing of the cell", () => {
  const word = words.at(read("14K")[1]);
  for (const cell of [583.333333333333, 1000 * (14 / 24), 14 / 24]) {
    const [taken, at, parts] = read(cell);
    expect([taken, parts, words.at(at)?.high]).toEqual([true, 0, word?.high]);
  }
  // 18K is 750, which ends; 583.3333333333 has other digits; 14.0000001 is so many karats.
  expect([read(750), read(583.3333333333), read(14.0000001)]).toEqual([
    [true, 750, 1000],
    [true, 583.3333333333, 1000],
    [true, 14.0000001, 24],
  ]);
});

test("of a column of fineness every number is parts per thousand, never karats", () => {
  const [values, parts] = [lineOf(), lineOf()];
  const taken = (cell: unknown) => readColumnMark(cell, 0, values, parts, words, "fineness");
  expect([taken(14), values[0], parts[0]]).toEqual([true, 14, 1000]);
  expect([taken("585"), parts[0], words.at(values[0] ?? 0)?.high]).toEqual([true, 0, 0.585]);
  // 0.5K.
  expect([taken(20.8333333333333), words.at(values[0] ?? 0)?.high]).toEqual([true, 1 / 48]);
  expect(["14K", "585/1000", 0, 1001, null].map(taken)).toEqual([false, false, false, false, false]);
});

test.each([1, 1 + 2 ** -52, 0, -5, 1001, 24 * (1 + 2 ** -52), "25K", "x", null, true, {}, Number.NaN])(
  "%j is left to the exact reading",
  (cell) => {
    expect(read(cell)[0]).toBe(false);
  },
);

test("a range's marks are read row by row, and those that cannot be are odd", () => {
  const [values, parts] = [lineOf(), lineOf()];
  const odd = new Uint8Array(values.length);
  readColumnMarks(
    [["18K"], [585], ["gold"], [750]],
    { row: 0, column: 0, width: 1, count: 4 },
    values,
    parts,
    words,
    odd,
  );
  expect([...odd.slice(0, 4)]).toEqual([0, 0, 1, 0]);
  expect([values[1], values[3]]).toEqual([585, 750]);
});

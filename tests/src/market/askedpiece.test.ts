import { expect, test } from "vitest";
import { parseAskedPiece } from "../../../src/market/askedpiece";
import { read } from "../orders";

const length = (record: Readonly<Record<string, string>>) => {
  const { length: taken, isLengthSaid } = read(parseAskedPiece({ lengthUnit: "cm", ...record }));
  return [taken.millimetres.value().toString(), isLengthSaid];
};

test("a length that is not said is the usual one of its kind of piece: 55 cm and 20 cm, 22 in and 8 in (common practice)", () => {
  expect(length({})).toEqual(["550", false]);
  expect(length({ piece: "bracelet" })).toEqual(["200", false]);
  // 22 x 25.4 mm.
  expect(length({ lengthUnit: "in" })).toEqual(["558.8", false]);
  expect(length({ length: "48.5" })).toEqual(["485", true]);
});

test("what is wrong is told by its field", () => {
  const parsed = parseAskedPiece({ length: "0", lengthUnit: "ell", colour: "blue" });
  expect(parsed.ok ? [] : parsed.faults.map(({ field }) => field)).toEqual(["colour", "length", "lengthUnit"]);
});

import fc from "fast-check";
import { expect, test } from "vitest";
import { NumberText } from "../../../src/mesh/numbertext";
import { bytesOf } from "../modelfile";

const read = (text: string) => new NumberText(bytesOf(text)).read(0, text.length);

test("any double, as JavaScript writes it and with an exponent, is read as that double", () => {
  fc.assert(
    fc.property(
      fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e20, max: 1e20 }),
      fc.integer({ min: 0, max: 20 }),
      (value, digits) => {
        for (const text of [
          String(value),
          value.toExponential(),
          value.toExponential(digits),
          value.toFixed(digits).slice(0, 100),
        ]) {
          expect(read(text)).toBe(Number(text));
        }
      },
    ),
  );
});

test.each([
  "1",
  "-1.5",
  "+2.",
  ".5",
  "00012.50",
  "1e3",
  "1.E-3",
  "-.5E+2",
  "123456789012345678901234567890e-20",
  "0.1000000000000000055511151231257827",
])("%s is a number", (text) => {
  expect(read(text)).toBe(Number(text));
});

test.each([
  "",
  "-",
  ".",
  "1,5",
  "1e",
  "1e+",
  "e5",
  "0x10",
  "NaN",
  "nan",
  "inf",
  "Infinity",
  "1.2.3",
  "1-2",
  "1e5.5",
  "--1",
  "1 2",
])('"%s" is none', (text) => {
  expect(read(text)).toBeUndefined();
});

test("a number of thousands of digits is none, and told at once", () => {
  expect(read("1".repeat(100_000))).toBeUndefined();
});

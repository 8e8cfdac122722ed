import { expect, test } from "vitest";
import { readWord } from "../../../src/reading/words";
import { expectFault } from "../reference";

const FIT = ["nearest", "up", "down"] as const;

test.each(["up", "UP", " Up "])("%j is the word whatever its case", (value) => {
  expect(readWord(value, "fit", FIT)).toBe("up");
});

test.each(["upwards", "u", 1, true, {}])("%j is refused with every word that would be right", (value) => {
  expectFault(() => readWord(value, "fit", FIT), "unknownWord", "fit: found", '"nearest"', '"up"', '"down"');
});

test.each([null, undefined, "", " "])("%j is blank", (value) => {
  expectFault(() => readWord(value, "fit", FIT), "blank", "fit: found nothing", '"nearest"');
});

test("the words of an object's own parts are not words", () => {
  expectFault(() => readWord("constructor", "fit", FIT), "unknownWord");
});

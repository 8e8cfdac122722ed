import { expect, test } from "vitest";
import { BLANK, GIVEN, LineChoices } from "../../../src/designs/rowkinds";

test("rows of the same keys are alike, whatever came between; others are not", () => {
  const choices = new LineChoices(10);
  const first = choices.keyOf(["14K", GIVEN, BLANK]);
  expect(first).toBe(0);
  expect(choices.keyOf(["14K", GIVEN, GIVEN])).toBe(1);
  expect(choices.keyOf(["18K", GIVEN, BLANK])).toBe(2);
  expect(choices.keyOf(["14K", GIVEN, BLANK])).toBe(first);
});

test("a number is not the text of its digits", () => {
  const choices = new LineChoices(10);
  expect(choices.keyOf([585])).not.toBe(choices.keyOf(["585"]));
});

test("beyond so many kinds of rows new ones are not told apart, known ones are", () => {
  const choices = new LineChoices(2);
  const [first, second] = [choices.keyOf(["9K"]), choices.keyOf(["14K"])];
  expect(choices.keyOf(["18K"])).toBeUndefined();
  expect([choices.keyOf(["9K"]), choices.keyOf(["14K"])]).toEqual([first, second]);
});

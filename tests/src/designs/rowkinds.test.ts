import { expect, test } from "vitest";
import { BLANK, GIVEN, LineChoices } from "../../../src/designs/rowkinds";

test("rows of the same keys are alike, whatever came between; others are not", () => {
  const choices = new LineChoices(10);
  const first = choices.of(["14K", GIVEN, BLANK]);
  expect(first).toEqual({ place: 0, given: [true, true, false] });
  expect(choices.of(["14K", GIVEN, GIVEN])).toEqual({ place: 1, given: [true, true, true] });
  expect(choices.of(["18K", GIVEN, BLANK])?.place).toBe(2);
  expect(choices.of(["14K", GIVEN, BLANK])).toBe(first);
});

test("a number is not the text of its digits", () => {
  const choices = new LineChoices(10);
  expect(choices.of([585])?.place).not.toBe(choices.of(["585"])?.place);
});

test("beyond so many kinds of rows new ones are not told apart, known ones are", () => {
  const choices = new LineChoices(2);
  const [first, second] = [choices.of(["9K"]), choices.of(["14K"])];
  expect(choices.of(["18K"])).toBeUndefined();
  expect([choices.of(["9K"]), choices.of(["14K"])]).toEqual([first, second]);
});

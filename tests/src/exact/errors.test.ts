import { expect, test } from "vitest";
import { CostingError, found, numberToGive, UnreadableCell } from "../../../src/exact/errors";

test("an error carries its code, its field and a sentence that names the field", () => {
  const error = new CostingError("outOfRange", "loss", "found 1; give less");
  expect(error).toBeInstanceOf(Error);
  expect(error.name).toBe("CostingError");
  expect(error).toMatchObject({ code: "outOfRange", field: "loss", message: "loss: found 1; give less" });
});

test.each([
  [null, "found nothing"],
  [undefined, "found nothing"],
  ["", "found nothing"],
  [0, "found 0"],
  [-2.5, "found -2.5"],
  ["25K", 'found "25K"'],
  [true, "found TRUE"],
  [false, "found FALSE"],
  [{ type: "error" }, "found an error value"],
  [new UnreadableCell("error", "#N/A"), "found the error #N/A"],
  [new UnreadableCell("data type", "Gold"), "found a data type"],
])("%j is told as %s", (value, said) => {
  expect(found(value)).toBe(said);
});

test("a long text is cut so that a person reads the sentence", () => {
  expect(found("a".repeat(500))).toBe(`found "${"a".repeat(40)}…"`);
  expect(found("a".repeat(40))).toBe(`found "${"a".repeat(40)}"`);
});

test("a data type is not the number wanted, but has one to give", () => {
  expect(numberToGive(new UnreadableCell("data type", "Gold"), "grams above 0")).toBe("its number, such as A1.Price");
  for (const other of ["Gold", null, new UnreadableCell("error", "#N/A")])
    expect(numberToGive(other, "grams above 0")).toBe("grams above 0");
});

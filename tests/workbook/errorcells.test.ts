import { describe, expect, test } from "vitest";
import { cellAt } from "./desk";
import { typeIn } from "./person.mjs";
import { deskForEach } from "./workshop";

const desk = deskForEach();

describe.each(["", "&errors=class"])("an error cell in a range (?book=blank%s)", (query) => {
  test("is a fault in its own row, with its sentence, and the other rows have their answers", async () => {
    await desk.sit((workshop) => workshop.sitDown(`book=blank${query}`));
    await typeIn(desk.page, "Sheet1", "A1", "10");
    await typeIn(desk.page, "Sheet1", "A2", "=1/0");
    await typeIn(desk.page, "Sheet1", "A3", "20");
    await typeIn(desk.page, "Sheet1", "B1", '=CURB.FINEGOLD(A1:A3,"18K")');
    expect((await cellAt(desk, "Sheet1", "B1"))?.value).toBe(7.5);
    expect((await cellAt(desk, "Sheet1", "B3"))?.value).toBe(15);
    const fault = {
      code: "#VALUE!",
      sentence: "weight: found the error #DIV/0!, which is not a plain number; give grams above 0",
    };
    expect((await cellAt(desk, "Sheet1", "B2"))?.error).toEqual(fault);
    await typeIn(desk.page, "Sheet1", "C1", '=CURB.FINEGOLD(A2,"18K")');
    expect((await cellAt(desk, "Sheet1", "C1"))?.error).toEqual(fault);
  });
});

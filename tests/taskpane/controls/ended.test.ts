import { describe, expect, it, vi } from "vitest";
import { countsOf, WHOLE, wayTo, wrote } from "../../../taskpane/controls/ended";
import type { Looked } from "../../../taskpane/excel/looked";

const seen = (rows: number, faulty: readonly number[] = [], waiting = 0): Looked => ({
  kind: "seen",
  rows,
  faulty,
  waiting,
});
const SAID = "Price list is in the workbook.";

describe("how a step ended that wrote something", () => {
  it("is done where all rows that were looked at are without a fault, with the way to them", () => {
    const goTo = vi.fn();
    const ended = wrote(SAID, countsOf(seen(30)), { ways: [wayTo("Price list", goTo)] });
    expect(ended).toMatchObject({ kind: "done", sentence: SAID, remarks: [] });
    expect(ended.ways?.map(({ words }) => words)).toEqual(["Show Price list"]);
    ended.ways?.[0]?.press();
    expect(goTo).toHaveBeenCalledWith("Price list");
    expect(wrote("Taken out.", WHOLE).kind).toBe("done");
  });

  it("is worth a look where rows show errors, which are counted and named", () => {
    const ended = wrote(SAID, countsOf(seen(30, [4, 9])));
    expect([ended.kind, ended.remarks]).toEqual(["noted", ["2 of 30 rows show an error: rows 4 and 9."]]);
    const many = wrote(SAID, countsOf(seen(225, [5, 6, 7, 8, 9, 10, 11, 12, 13, 14])));
    expect(many.remarks?.[0]).toBe("10 of 225 rows show an error: rows 5, 6, 7, 8, 9, 10, 11, 12, and 2 more.");
  });

  it("has failed where every row shows an error", () => {
    expect(wrote(SAID, countsOf(seen(2, [5, 6]))).kind).toBe("failed");
  });

  it("is not done where rows were left out, where values have not come, or where it could not be looked at", () => {
    const left = countsOf(seen(28), { rows: 2, sentences: ["2 rows have no price."] });
    expect([wrote(SAID, left).kind, wrote(SAID, left).remarks]).toEqual(["noted", ["2 rows have no price."]]);
    expect(wrote(SAID, countsOf(seen(28, [], 3))).kind).toBe("noted");
    const unseen = wrote(SAID, countsOf({ kind: "unseen", sentence: "A cell is being edited." }));
    expect([unseen.kind, unseen.remarks]).toEqual([
      "noted",
      ["It was written, and could not be looked at afterwards. A cell is being edited."],
    ]);
  });
});

it("a way may have words of its own", () => {
  expect(wayTo("Quote 1001", () => undefined, "Show the quote").words).toBe("Show the quote");
});

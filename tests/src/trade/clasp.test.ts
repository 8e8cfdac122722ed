import { describe, expect, test } from "vitest";
import { CLASP_PARTS, CLASPS, isCast, parseClasp } from "../../../src/trade/clasp";
import { type Record_, read } from "../orders";

const faults = (record: Record_) => {
  const parsed = parseClasp(record);
  return parsed.ok ? [] : parsed.faults.map(({ field, sentence }) => [field, sentence]);
};

describe("a clasp", () => {
  test("is a bought one of no length, weight and cost where nothing is said", () => {
    const clasp = read(parseClasp({}));
    expect([clasp.clasp, clasp.claspLength.isZero(), clasp.claspWeight.isZero(), clasp.claspCost.isZero()]).toEqual([
      "bought lobster clasp",
      true,
      true,
      true,
    ]);
  });

  test("box and tongue, and the two halves of a hidden one, are cast; a bought one and none are not (common practice)", () => {
    expect(CLASPS.map((clasp) => [clasp, isCast(clasp), CLASP_PARTS[clasp]])).toEqual([
      ["bought lobster clasp", false, 0],
      ["cast box clasp", true, 2],
      ["cast hidden clasp", true, 2],
      ["none", false, 0],
    ]);
  });

  test("none may have zeros, and no figures", () => {
    expect(faults({ clasp: "none", claspLength: "0", claspWeight: 0, claspCost: "" })).toEqual([]);
    expect(
      faults({ clasp: "none", claspLength: "1", claspWeight: "2", claspCost: "3" }).map(([field]) => field),
    ).toEqual(["claspLength", "claspWeight", "claspCost"]);
  });

  test("that is cast needs a weight", () => {
    expect(faults({ clasp: "cast hidden clasp" })).toEqual([
      ["claspWeight", "Clasp weight: found no weight for a cast clasp; give its finished grams, such as 3.4"],
    ]);
    expect(faults({ clasp: "cast hidden clasp", claspWeight: "3.4" })).toEqual([]);
  });
});

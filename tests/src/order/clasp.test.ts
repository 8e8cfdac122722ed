import { describe, expect, test } from "vitest";
import { checkClasp, readClasp } from "../../../src/order/clasp";
import { moneyOf } from "../../../src/trade/boughtpart";
import { type Record_, read } from "../orders";

const parsedOf = (record: Record_) => {
  const parts = readClasp(record, "USD");
  return parts.ok ? checkClasp(parts.value) : parts;
};
const faults = (record: Record_) => {
  const parsed = parsedOf(record);
  return parsed.ok ? [] : parsed.faults.map(({ field, sentence }) => [field, sentence]);
};

describe("a clasp", () => {
  test("is a bought one of no length, weight and cost where nothing is said", () => {
    const { kind, length, weight, cost } = read(parsedOf({}));
    expect([kind, length.isZero(), weight.grams.isZero(), moneyOf(cost)?.isZero()]).toEqual([
      "bought lobster clasp",
      true,
      true,
      true,
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

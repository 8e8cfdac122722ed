import { describe, expect, test } from "vitest";
import { parseSeenAsking, seenKey } from "../../../src/market/seenasking";
import { type Record_, read } from "../orders";

const ROW = {
  date: "2026-04-03",
  source: "A fair",
  kind: "curb",
  mark: "14K",
  weight: "20",
  price: "668",
  spot: "2650",
};
const TODAY = "2026-05-01";
const parsed = (changes: Record_ = {}) => parseSeenAsking({ ...ROW, ...changes }, "USD", TODAY);
const faults = (changes: Record_) => {
  const result = parsed(changes);
  return result.ok ? [] : result.faults.map(({ sentence }) => sentence);
};
const key = (changes: Record_ = {}) => seenKey(read(parsed(changes)));

describe("a price that was seen", () => {
  test("has a date, a place and the spot of its day, each only where it is said", () => {
    const { date, source, spot } = read(parsed());
    expect([date, source, spot?.amount.value().toString()]).toEqual(["2026-04-03", "A fair", "2650"]);
    const bare = read(parsed({ date: "", source: "", spot: "" }));
    expect([bare.date, bare.source, bare.spot]).toEqual(["", "", undefined]);
    // A date cell.
    expect(read(parsed({ date: 46115 })).date).toBe("2026-04-03");
  });

  test("is refused with every fault of its row, each naming its field", () => {
    expect(faults({ date: "03/04/2026" })).toEqual([
      expect.stringContaining('Date: found "03/04/2026", which may be two days'),
    ]);
    expect(faults({ date: "soon" })).toEqual([expect.stringContaining("which is no date")]);
    expect(faults({ date: "2026-05-02" })).toEqual([expect.stringContaining("after today, 2026-05-01")]);
    expect(faults({ date: TODAY })).toEqual([]);
    expect(faults({ spot: "EUR 2400" })).toEqual([expect.stringContaining("give the spot of that day in USD")]);
    expect(faults({ spot: "0", mark: "25K", weight: "0" })).toHaveLength(3);
  });
});

describe("two rows are one offer", () => {
  test("where they say the same, whatever its letters' case, spaces and manner of writing", () => {
    expect(key({ source: " a  FAIR ", weight: "20.00 g", price: "USD 668", mark: "14 kt", spot: "" })).toBe(key());
  });

  test("and not where any of date, place, kind, mark, hollowness, weight, price or what it is for differs", () => {
    const others = [
      { date: "2026-04-04" },
      { source: "Another fair" },
      { kind: "rope" },
      { mark: "585" },
      { solidity: "solid" },
      { weight: "20.1" },
      { price: "669" },
      { per: "g" },
      { currency: "CHF", exchange: "1" },
    ];
    expect(new Set([key(), ...others.map(key)]).size).toBe(others.length + 1);
  });
});

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dateEvidence, readListDate } from "../../../src/reading/listdate";

describe("a date of a list", () => {
  test.each([
    ["2026-04-03", "2026-04-03"],
    ["2026/4/3", "2026-04-03"],
    ["2026-04-03T09:30:00", "2026-04-03"],
    ["3 Apr 2026", "2026-04-03"],
    ["3. April 2026", "2026-04-03"],
    ["April 3, 2026", "2026-04-03"],
    ["3-Sept-26", "2026-09-03"],
    ["25/04/2026", "2026-04-25"],
    ["04/25/26", "2026-04-25"],
    ["5.5.2026", "2026-05-05"],
    ["25/04/2026 18:05", "2026-04-25"],
    // ECMA-376, the 1900 date system: 2026-04-03 is day 46115 (2026-01-01 is 46023, by hand 46023 + 31 + 28 + 31 + 2).
    [46115, "2026-04-03"],
    [46115.75, "2026-04-03"],
  ])("%s is %s, whatever the order of the others", (value, expected) => {
    expect(readListDate(value, undefined)).toBe(expected);
  });

  test("of two readings needs the order, and is not read without it", () => {
    expect(readListDate("03/04/2026", undefined)).toBeUndefined();
    expect(readListDate("03/04/2026", "day first")).toBe("2026-04-03");
    expect(readListDate("03/04/2026", "month first")).toBe("2026-03-04");
  });

  test.each([
    "31/04/2026",
    "2026-02-29",
    "30 Feb 2026",
    "soon",
    "12",
    "3 Foo 2026",
    "",
    0,
    60,
    3_000_000,
    Number.NaN,
    null,
  ])("%s is none", (value) => {
    expect(readListDate(value, "day first")).toBeUndefined();
  });

  test("reads back what Intl writes, in the order of the place", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 20_000 }), (day) => {
        const date = new Date(Date.UTC(2000, 0, 1) + day * 86_400_000);
        const iso = date.toISOString().slice(0, 10);
        for (const [language, order] of [
          ["de-DE", "day first"],
          ["en-US", "month first"],
          ["en-GB", "day first"],
          ["sv-SE", undefined],
        ] as const) {
          expect(readListDate(new Intl.DateTimeFormat(language, { timeZone: "UTC" }).format(date), order)).toBe(iso);
        }
      }),
    );
  });
});

describe("the order of a list's dates", () => {
  test("is what one date of one reading shows for all", () => {
    expect(dateEvidence(["03/04/2026", "25/04/2026"])).toEqual({ order: "day first", doubtful: undefined });
    expect(dateEvidence(["03/04/2026", "04/25/2026"])).toEqual({ order: "month first", doubtful: undefined });
  });

  test("is asked about where dates do not tell, or contradict each other", () => {
    expect(dateEvidence(["05/05/2026", "03/04/2026"])).toEqual({ order: undefined, doubtful: "03/04/2026" });
    expect(dateEvidence(["25/04/2026", "04/25/2026", "03/04/2026"])).toEqual({
      order: undefined,
      doubtful: "03/04/2026",
    });
    expect(dateEvidence(["2026-04-03", "05/05/2026"])).toEqual({ order: undefined, doubtful: undefined });
  });
});

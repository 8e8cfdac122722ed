import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { RatesReading, RateValues } from "../../../../taskpane/excel/rates/rates";
import { noteOf, type SpotNote, type SpotValues, spotReadingOf } from "../../../../taskpane/excel/rates/spotnote";
import { noteAfter } from "../../../../taskpane/excel/rates/spotread";

const NINE = 46_173.375;
const TEN = 46_173.417;
const AT_NINE: SpotValues = { spot: 4200, spotTime: NINE, spotSource: "noon fixing" };

/** Rates as the pane reads them, over the note in the workbook. */
function reading(cells: SpotValues, note: SpotNote | undefined, isTimeFormula = false): RatesReading {
  const spotRead = spotReadingOf(cells, isTimeFormula, note);
  const values = cells as RateValues;
  return { found: true, sheet: "Rates", sheetIds: [], values, spotRead, isTimeFormula, spotNote: note, missing: [] };
}

/** What is known at the end, where a person writes into one cell after the other while the pane looks on. */
function known(steps: readonly Partial<SpotValues>[], first = AT_NINE, noted: SpotNote | undefined = noteOf(first)) {
  let [cells, note] = [first, noted];
  for (const step of steps) {
    const before = reading(cells, note);
    cells = { ...cells, ...step };
    note = noteAfter(before, reading(cells, note)) ?? note;
  }
  return spotReadingOf(cells, false, note);
}

describe("the time beside a spot is the one that was written for it", () => {
  test("a spot that is typed leaves the old time and source behind", () => {
    expect(known([{ spot: 4250 }])).toEqual({
      time: undefined,
      timeWords: "",
      source: "",
      ofAnother: { spot: "4200", time: String(NINE), source: "noon fixing" },
    });
  });

  test("also in a workbook that noted nothing before, as long as the pane looks on", () => {
    expect(known([{ spot: 4250 }], AT_NINE, undefined).ofAnother?.spot).toBe("4200");
    expect(known([{ spot: 4250 }, { spot: 4260 }], AT_NINE, undefined).ofAnother?.spot).toBe("4200");
  });

  test("a time that is typed after it is its own, and the source with it", () => {
    const told = known([{ spot: 4250 }, { spotTime: TEN }]);
    expect(told).toEqual({ time: TEN, timeWords: "", source: "noon fixing", ofAnother: undefined });
    // The next spot alone leaves that time behind in its turn.
    expect(known([{ spot: 4250 }, { spotTime: TEN }, { spot: 4260 }]).ofAnother?.spot).toBe("4250");
  });

  test("a source that is typed after it is its own, whatever the time is", () => {
    expect(known([{ spot: 4250 }, { spotSource: "by telephone" }])).toMatchObject({
      time: undefined,
      source: "by telephone",
    });
  });

  test("a spot that comes back to the one the time was written for has its time again", () => {
    expect(known([{ spot: 4250 }, { spot: 4200 }]).time).toBe(NINE);
  });

  test("a time that a formula gives is the person's own arrangement, and nothing is noted of it", () => {
    const cells = { ...AT_NINE, spot: 4250 };
    expect(spotReadingOf(cells, true, noteOf(AT_NINE)).time).toBe(NINE);
    const before = reading(AT_NINE, noteOf(AT_NINE), true);
    expect(noteAfter(before, reading(cells, noteOf(AT_NINE), true))).toBeUndefined();
  });

  test("where nothing stands beside the spot, nothing is asked about", () => {
    expect(known([{ spot: 4250 }], { spot: 4200, spotTime: "", spotSource: "" })).toEqual({
      time: undefined,
      timeWords: "",
      source: "",
      ofAnother: undefined,
    });
  });

  test("whatever a person writes, no time is shown that stood there before the last spot was written (fast-check)", () => {
    const step = fc.oneof(
      fc.record({ spot: fc.integer({ min: 1, max: 3 }) }),
      fc.record({ spotTime: fc.integer({ min: 1, max: 1000 }) }),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), fc.boolean(), (steps, isNoted) => {
        // Each time is another than all before it, as the clock's are; a spot may come back.
        let clock = 0;
        const clocked = steps.map((each) => ("spotTime" in each ? { spotTime: 50_000 + ++clock } : each));
        const first = { spot: 1, spotTime: 50_000, spotSource: "" };
        const told = known(clocked, first, isNoted ? noteOf(first) : undefined);
        let [spot, writtenFor] = [1, 1];
        for (const each of clocked) {
          if ("spot" in each) spot = each.spot;
          else writtenFor = spot;
        }
        expect(told.time === undefined).toBe(spot !== writtenFor);
      }),
    );
  });
});

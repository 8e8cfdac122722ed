import { describe, expect, test } from "vitest";
import type { CostingErrorCode, Fault } from "../../../src/exact/errors";
import { RATE_KEYS, RATE_ROWS, type RateKey } from "../../../src/rates/raterows";
import { parseRates } from "../../../src/rates/rates";
import { RATES, type Record_, ratesOf } from "../orders";

function faultsOf(changes: Record_): readonly Fault[] {
  const parsed = parseRates({ ...RATES, ...changes });
  return parsed.ok ? [] : parsed.faults;
}

const REQUIRED = [
  "currency",
  "spot",
  "castingFee",
  "loss",
  "lossBasis",
  "costBasis",
  "surcharge",
  "priceBy",
  "markup",
  "validity",
  "nextNumber",
] as const;
const FREE = ["workshop", "workshopContact", "taxName", "spotTime", "spotSource"] as const;
const ZERO_IF_BLANK = [
  "castingMinimum",
  "labourFlat",
  "labourPerLink",
  "labourPerGram",
  "labourMinimum",
  "settingFee",
  "leastMargin",
  "priceStep",
  "tax",
  "deposit",
] as const;
const AMOUNTS = [
  "castingFee",
  "castingMinimum",
  "labourFlat",
  "labourPerLink",
  "labourPerGram",
  "labourMinimum",
  "surcharge",
  "settingFee",
  "plating",
  "priceStep",
] as const;
const SHARES = ["leastMargin", "tax"] as const;

describe("the Rates sheet as it is laid out first", () => {
  const START: Record_ = Object.fromEntries(RATE_KEYS.map((key) => [key, RATE_ROWS[key].start]));

  test("misses nothing but the spot, which only the user can read", () => {
    const parsed = parseRates(START);
    expect(parsed).toMatchObject({ ok: false, faults: [{ field: "spot", code: "blank" }] });
    expect(parsed.ok ? 0 : parsed.faults.length).toBe(1);
    expect(parseRates({ ...START, spot: "2650" }).ok).toBe(true);
  });

  test("starts from the common practice: casting fee 1.50, labour 50, setting 1, surcharge between 3.00 and 3.50", () => {
    expect(RATE_ROWS.castingFee.start).toBe("1.50");
    expect(RATE_ROWS.labourFlat.start).toBe("50");
    expect(RATE_ROWS.settingFee.start).toBe("1");
    expect(Number(RATE_ROWS.surcharge.start)).toBeGreaterThanOrEqual(3);
    expect(Number(RATE_ROWS.surcharge.start)).toBeLessThanOrEqual(3.5);
  });

  test("has every row named once, and a word's start is one of its words", () => {
    const labels = RATE_KEYS.map((key) => RATE_ROWS[key].label);
    expect(new Set(labels).size).toBe(labels.length);
    for (const key of ["lossBasis", "costBasis", "priceBy"] as const)
      expect(RATE_ROWS[key].words).toContain(RATE_ROWS[key].start);
  });
});

describe("a blank row", () => {
  test.each(REQUIRED)("%s is asked for by the name of its row", (key) => {
    const label = RATE_ROWS[key].label;
    for (const blank of ["", "  ", null, undefined]) {
      const faults = faultsOf({ lossBasis: "cast", loss: "0.02", [key]: blank });
      expect(faults).toHaveLength(1);
      expect(faults[0]).toMatchObject({ field: key, code: "blank" });
      expect(faults[0]?.sentence).toMatch(new RegExp(`^${label}: found nothing; give `));
    }
  });

  test.each(ZERO_IF_BLANK)("%s is zero", (key) => {
    const blank = ratesOf({ [key]: "" })[key];
    expect(
      "isZero" in blank ? blank.isZero() : "amount" in blank ? blank.amount.isZero() : blank.perGram.isZero(),
    ).toBe(true);
  });

  test.each(FREE)("%s is left empty", (key) => {
    expect(faultsOf({ [key]: "" })).toEqual([]);
  });

  test("plating stays unsaid, which is not the same as free", () => {
    expect(ratesOf({ plating: "" }).plating).toBeUndefined();
    expect(ratesOf({ plating: "0" }).plating?.amount.isZero()).toBe(true);
  });
});

describe("bad input: one sentence that names the row, what was found and what would be right", () => {
  const rows: readonly (readonly [RateKey, unknown, CostingErrorCode, RegExp])[] = [
    ["spot", "0", "outOfRange", /^Spot: found "0"; give the money for one troy ounce/],
    ["spot", -2650, "outOfRange", /^Spot: found -2650; give/],
    ["spot", "2,650.00", "notANumber", /^Spot: found "2,650.00", which has separators in it; give/],
    ["spot", "2650 USD", "notANumber", /^Spot: found "2650 USD", which is not a plain number/],
    ["spot", 1e308, "tooLarge", /^Spot: found 1e\+308, which is too large/],
    ["spot", "1e308", "notANumber", /^Spot: found "1e308"/],
    ["loss", "1", "outOfRange", /^Polish loss: found "1"; give a share from 0 to below 1/],
    ["loss", "100%", "outOfRange", /^Polish loss: found "100%"/],
    ["loss", "-0.02", "outOfRange", /^Polish loss: found "-0.02"/],
    ["lossBasis", "cats", "unknownWord", /^Loss counted from: found "cats"; give one of "cast", "finished", "grams"/],
    ["costBasis", "slow", "unknownWord", /^Cost basis: found "slow"; give one of "finished", "quick"/],
    ["priceBy", "feeling", "unknownWord", /^Price by: found "feeling"; give one of "markup", "margin", "premium"/],
    ["currency", "XAU", "unknownWord", /^Currency: found "XAU", which is no currency; give the three letters/],
    ["markup", "-0.1", "outOfRange", /^Markup: found "-0.1"/],
    ["markup", "1000001", "outOfRange", /^Markup: found "1000001"/],
    ["deposit", "1.5", "outOfRange", /^Deposit: found "1.5"; give a share from 0 to 1/],
    ["validity", "0", "outOfRange", /^Quote valid for: found "0"; give a whole number of days/],
    ["validity", "7.5", "outOfRange", /^Quote valid for: found "7.5"/],
    ["nextNumber", "0", "outOfRange", /^Next quote number: found "0"/],
    ["workshop", "x".repeat(201), "tooLarge", /^Workshop: found "x+…" of 201 characters; give at most 200/],
  ];
  test.each(rows)("%s %j", (key, value, code, sentence) => {
    const faults = faultsOf({ lossBasis: "cast", loss: "0.02", [key]: value });
    // Words that choose how other rows are read may bring those rows' faults with them.
    const own = faults.filter((fault) => fault.field === key);
    expect(own).toEqual([{ field: key, code, sentence: expect.stringMatching(sentence) }]);
    expect(faults).toEqual(own);
  });

  test.each(AMOUNTS)("%s below zero, or of words", (key) => {
    expect(faultsOf({ [key]: "-0.01" })).toMatchObject([{ field: key, code: "outOfRange" }]);
    expect(faultsOf({ [key]: "some" })).toMatchObject([{ field: key, code: "notANumber" }]);
    expect(faultsOf({ [key]: true })).toMatchObject([{ field: key, code: "notANumber" }]);
  });

  test.each(SHARES)("%s of 100 %% or more, or below zero", (key) => {
    expect(faultsOf({ [key]: "1" })).toMatchObject([{ field: key, code: "outOfRange" }]);
    expect(faultsOf({ [key]: "-0.1" })).toMatchObject([{ field: key, code: "outOfRange" }]);
    expect(faultsOf({ [key]: "0.999" })).toEqual([]);
  });

  test("a deposit of exactly everything is right, a hair more is not", () => {
    expect(faultsOf({ deposit: "1" })).toEqual([]);
    expect(faultsOf({ deposit: "1.00000001" })).toMatchObject([{ field: "deposit", code: "outOfRange" }]);
  });
});

test("every fault is gathered at once", () => {
  const parsed = parseRates({});
  expect(parsed.ok ? [] : parsed.faults.map((fault) => fault.field)).toEqual(
    REQUIRED.filter((key) => key !== "markup"),
  );
});

describe("the way to price", () => {
  test.each(["markup", "margin", "premium"] as const)("by %s needs that row and no other", (by) => {
    const none = { markup: "", margin: "", premium: "" };
    expect(faultsOf({ ...none, priceBy: by })).toMatchObject([{ field: by, code: "blank" }]);
    expect(faultsOf({ ...none, priceBy: by.toUpperCase(), [by]: "0.25" })).toEqual([]);
    expect(ratesOf({ ...none, priceBy: by, [by]: "0.25" }).pricing).toMatchObject({ by });
  });

  test("a margin of all the price is refused: no price is high enough", () => {
    expect(faultsOf({ priceBy: "margin", margin: "1" })).toMatchObject([{ field: "margin", code: "outOfRange" }]);
  });
});

test("a loss in grams may be above 1, a share may not", () => {
  expect(ratesOf({ lossBasis: "grams", loss: "2.5" }).loss).toMatchObject({ basis: "grams" });
  expect(faultsOf({ lossBasis: "finished", loss: "2.5" })).toMatchObject([{ field: "loss", code: "outOfRange" }]);
  expect(faultsOf({ lossBasis: " Grams ", loss: "2.5" })).toEqual([]);
});

test("number cells and texts are read alike", () => {
  const typed = ratesOf({ spot: "2650.5", markup: "0.3", validity: "14" });
  const cells = ratesOf({ spot: 2650.5, markup: 0.1 + 0.2, validity: 14 });
  expect(cells.spot.amount.equals(typed.spot.amount)).toBe(true);
  expect(cells.pricing).toMatchObject({ by: "markup" });
  if (cells.pricing.by === "markup" && typed.pricing.by === "markup")
    expect(cells.pricing.share.equals(typed.pricing.share)).toBe(true);
  expect([cells.validity, cells.nextNumber]).toEqual([14, 1001]);
});

test("every amount is in the currency of the sheet", () => {
  const rates = ratesOf({ currency: "jpy", plating: "35" });
  expect(
    [rates.spot, rates.castingFee, rates.labourFlat, rates.surcharge, rates.settingFee, rates.plating].map(
      (amount) => amount?.currency,
    ),
  ).toEqual(Array(6).fill("JPY"));
});

test("what was given is not touched, and what is read is frozen", () => {
  const record = Object.freeze({ ...RATES });
  const parsed = parseRates(record);
  expect(record).toEqual(RATES);
  expect(Object.isFrozen(parsed)).toBe(true);
  expect(Object.isFrozen(parsed.ok && parsed.value)).toBe(true);
  expect(Object.isFrozen(parsed.ok && parsed.value.loss)).toBe(true);
  expect(Object.isFrozen(parsed.ok && parsed.value.pricing)).toBe(true);
  const refused = parseRates({});
  expect(Object.isFrozen(refused)).toBe(true);
  expect(Object.isFrozen(!refused.ok && refused.faults)).toBe(true);
});

describe("when spot is old", () => {
  test("is said in hours, and never where nothing is said", () => {
    expect(ratesOf().spotAge).toBeUndefined();
    expect(ratesOf({ spotAge: 36.5 }).spotAge?.value().toString()).toBe("36.5");
  });

  test("is not at once, nor after more than a year", () => {
    for (const spotAge of ["0", "-1", "9000", "soon"]) {
      expect(faultsOf({ spotAge }).map(({ field }) => field)).toEqual(["spotAge"]);
    }
  });
});

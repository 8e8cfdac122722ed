import { describe, expect, test } from "vitest";
import { readHeaders, recordOf, standAsTheyAre } from "../../../src/designs/headers";
import { keyOfHeader, ROW_KEYS, ROW_LABELS } from "../../../src/designs/headerwords";
import { expectFault } from "../reference";

const read = (headers: readonly string[], cells: readonly unknown[]) => recordOf(readHeaders(headers), cells, "USD");

describe("a header names its field", () => {
  test.each(ROW_KEYS)("by the form's words: %s", (key) => {
    const label = ROW_LABELS[key];
    for (const header of [label, label.toUpperCase(), ` ${label} : `, `${label} (in)`, key]) {
      expect(keyOfHeader(header)).toBe(key);
    }
  });

  test.each([
    ["Color", "colour"],
    ["Karat", "mark"],
    ["Qty", "quantity"],
    ["Stones", "stoneCount"],
    ["Link weight (g)", "linkWeight"],
    ["Links per inch", "linksPer"],
    ["Length, in", "length"],
  ])("%s is %s (common practice)", (header, key) => {
    expect(keyOfHeader(header)).toBe(key);
  });

  test("anything else is no field", () => {
    for (const other of ["", "  ", "(in)", "Shelf", "Price", 7, null, undefined, {}])
      expect(keyOfHeader(other)).toBeUndefined();
  });

  test("of two headers for one field the first counts", () => {
    expect(readHeaders(["Design", "Name", "Mark"]).map(({ key, place }) => [key, place])).toEqual([
      ["design", 0],
      ["mark", 2],
    ]);
  });
});

describe("units in headers", () => {
  test("a unit of the length and of its links", () => {
    expect(read(["Length (cm)", "Links per in"], [61, 4])).toEqual({
      length: 61,
      lengthUnit: "cm",
      linksPer: 4,
      linksPerUnit: "in",
    });
    expect(read(["Length, in", "Links per length (cm)"], [24, 1.5])).toMatchObject({
      lengthUnit: "in",
      linksPerUnit: "cm",
    });
  });

  test("weights are changed to grams: 2 dwt are 3.11034768 g, 0.1 ozt 3.11034768 g (UCUM)", () => {
    expect(read(["Weight of one link (dwt)", "Clasp weight [ozt]"], [2, "0.1"])).toMatchObject({
      linkWeight: "3.11034768",
      claspWeight: "3.11034768",
    });
    expect(read(["Weight of one link (g)"], [2.05])).toEqual({ linkWeight: 2.05 });
  });

  test("lengths are changed to the unit of the row's length: a clasp of 25.4 mm on inches is 1 in", () => {
    expect(read(["Length (in)", "Clasp length (mm)"], [24, 25.4])).toMatchObject({
      length: 24,
      claspLength: "1",
      lengthUnit: "in",
    });
    expect(read(["Length (in)", "Length unit"], [24, "cm"])).toMatchObject({ length: "60.96", lengthUnit: "cm" });
  });

  test("a stone's size in inches is changed to millimetres", () => {
    expect(read(["Stone diameter (in)"], [0.1])).toEqual({ stoneDiameter: "2.54" });
  });

  test("money of Rates' currency stays; a remark in brackets is no unit", () => {
    expect(read(["Clasp cost (USD)", "Design (ours)", "Setting fee (a stone)"], [12, "Curb", 1])).toEqual({
      claspCost: 12,
      design: "Curb",
      settingFee: 1,
    });
  });

  test("a blank stays blank, whatever the unit", () => {
    expect(read(["Weight of one link (dwt)"], [""])).toEqual({ linkWeight: "" });
  });
});

describe("bad input: one sentence that names the column, what was found and what would be right", () => {
  test.each([
    ["Weight of one link (oz)", 'Weight of one link (oz): found "oz" as its unit; give g, dwt, ozt (a troy ounce)'],
    ["Weight of one link (lb)", 'found "lb" as its unit'],
    ["Length (yd)", 'found "yd" as its unit; give in, cm, mm'],
    ["Links per length (mm)", 'found "mm" as its unit; give in or cm'],
  ])("%s", (header, sentence) => {
    expectFault(() => read([header], [3]), "unknownWord", sentence);
  });

  test("an amount that is to be changed must be one", () => {
    expectFault(() => read(["Clasp weight (dwt)"], ["two"]), "notANumber", 'Clasp weight (dwt): found "two"');
  });

  test("money of another currency", () => {
    expectFault(
      () => read(["Clasp cost (EUR)"], [12]),
      "currencyMismatch",
      "Clasp cost (EUR): found EUR, and Rates are in USD",
    );
  });

  test("a spot per gram, and money with another currency's sign", () => {
    expectFault(() => read(["Spot (per g)"], [128]), "unknownWord", "give money for one troy ounce");
    expectFault(() => read(["Clasp cost (€)"], [12]), "currencyMismatch", "Rates are in USD");
    expect(read(["Clasp cost ($)", "Spot (per ounce)"], [12, 4000])).toEqual({ claspCost: 12, spot: 4000 });
  });
});

test("cells stand as they are unless a header counts them in another unit, or each row says its own", () => {
  const stand = (...headers: string[]) => standAsTheyAre(readHeaders(headers), "USD");
  expect(stand("Design", "Length (in)", "Weight of one link (g)", "Clasp length (in)", "Clasp cost (USD)")).toBe(true);
  expect(stand("Length (cm)", "Length unit")).toBe(false);
  expect(stand("Length", "Length unit")).toBe(true);
  expect(stand("Length (in)", "Clasp length (mm)")).toBe(false);
  expect(stand("Weight of one link (dwt)")).toBe(false);
  expect(stand("Clasp cost (EUR)")).toBe(false);
});

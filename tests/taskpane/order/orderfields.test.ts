import { afterAll, beforeEach, describe, expect, it } from "vitest";
import {
  LINE_KEYS,
  LINE_LABELS,
  type LineKey,
  ORDER_KEYS,
  parseOrder,
  parseRates,
  RATE_KEYS,
  RATE_ROWS,
} from "../../../src/index";
import { EXTRA_KEYS } from "../../../src/order/extrafields";
import {
  countedTexts,
  type Entries,
  filledWith,
  freshEntries,
  isUntouched,
  misread,
  typedIn,
} from "../../../taskpane/controls/entries";
import { keysOf } from "../../../taskpane/controls/formplan";
import { lineGroups } from "../../../taskpane/order/linefields";
import { lineTitle } from "../../../taskpane/order/linetitle";
import { EXTRA_GROUP, ORDER_GROUPS } from "../../../taskpane/order/orderfields";
import { writeAs } from "../../../taskpane/wording/language";

afterAll(() => writeAs(() => "en-US"));

beforeEach(() => {
  writeAs(() => "en-US");
});

const LINE = { design: "Curb 8 mm", mark: "14K", length: "24.5", linksPer: "4", linkWeight: "2" };

function lineOf(texts: Partial<Record<LineKey, string>>) {
  const groups = lineGroups();
  const entries = filledWith(groups, freshEntries(groups), { ...LINE, ...texts });
  return {
    groups,
    entries,
    refilled: (given: Partial<Record<LineKey, string>>) => filledWith(groups, entries, given),
    counted: (of: Entries<LineKey> = entries) => countedTexts(groups, of),
  };
}

describe("the form's fields", () => {
  it("are those of the library, each once", () => {
    expect([...keysOf(lineGroups())].sort()).toEqual([...LINE_KEYS].sort());
    expect([...keysOf(ORDER_GROUPS)].sort()).toEqual([...ORDER_KEYS].sort());
    expect([...keysOf([EXTRA_GROUP])].sort()).toEqual([...EXTRA_KEYS].sort());
  });

  it("begin as an order that the library reads, but for what every order must say", () => {
    const start = Object.fromEntries(RATE_KEYS.map((key) => [key, RATE_ROWS[key].start]));
    const rates = parseRates({ ...start, spot: "2650" });
    if (!rates.ok) throw new Error("The start rates cannot be read");
    const form = {
      order: countedTexts(ORDER_GROUPS, freshEntries(ORDER_GROUPS)),
      lines: [countedTexts(lineGroups(), freshEntries(lineGroups()))],
      extras: [],
    };
    const read = parseOrder(form, rates.value);
    expect(read.ok ? [] : read.faults.map(({ field, code }) => `${field} ${code}`)).toEqual(
      ["customer", "design", "mark", "length", "linksPer", "linkWeight"].map((key) => `${key} blank`),
    );
  });

  it("measure in inches where the workbook is American, else in centimetres", () => {
    const units = () => freshEntries(lineGroups()).texts;
    expect([units().lengthUnit, units().linksPerUnit]).toEqual(["in", "in"]);
    writeAs(() => "en-GB");
    expect([units().lengthUnit, units().linksPerUnit]).toEqual(["cm", "cm"]);
  });
});

describe("a hidden field", () => {
  it.each<[why: string, shown: Partial<Record<LineKey, string>>, hidden: Partial<Record<LineKey, string>>, LineKey]>([
    ["the ease of a finished length", { lengthGiven: "neck" }, { lengthGiven: "finished length" }, "ease"],
    ["the size of no clasp", { clasp: "cast box clasp" }, { clasp: "none" }, "claspWeight"],
    ["the stones on no clasp", { clasp: "cast box clasp" }, { clasp: "none" }, "claspStoneCount"],
    ["a composition of yellow gold", { colour: "own" }, { colour: "yellow" }, "composition"],
    ["a rose link without rose", { pattern: "YR" }, { pattern: "YW" }, "linkWeightRose"],
    ["how many of all links", { stonesOn: "a number of links" }, { stonesOn: "all links" }, "stoneCount"],
    ["the diameter of a baguette", { stonesOn: "all links" }, { stoneShape: "rectangular" }, "stoneDiameter"],
    ["the figure of no pricing", { linePriceBy: "margin" }, { linePriceBy: "as the quote" }, "linePriceFigure"],
  ])("does not count, but is kept: %s", (_, shown, hidden, key) => {
    const { groups, refilled, counted } = lineOf({ ...shown, [key]: "3" });
    expect(counted()[key]).toBe("3");
    const without = refilled(hidden);
    expect(counted(without)[key]).toBe("");
    expect(without.texts[key]).toBe("3");
    expect(counted(filledWith(groups, without, { stoneShape: "round", ...shown }))[key]).toBe("3");
  });

  it("asks for the weight of every other colour of a pattern, and for no more", () => {
    const { counted } = lineOf({
      colour: "rose",
      pattern: "yyw-r",
      linkWeightYellow: "1",
      linkWeightRose: "2",
      linkWeightWhite: "3",
      linkWeightGreen: "4",
    });
    const { linkWeightYellow, linkWeightRose, linkWeightWhite, linkWeightGreen } = counted();
    expect([linkWeightYellow, linkWeightRose, linkWeightWhite, linkWeightGreen]).toEqual(["1", "", "3", ""]);
  });
});

describe("what is filled in", () => {
  it("counts as left, except where it empties a field", () => {
    const { entries } = lineOf({ design: " " });
    expect(entries.blurred.has("mark")).toBe(true);
    expect(entries.blurred.has("design")).toBe(false);
  });

  it("chooses a word whatever its case, goes back to the start without one, and keeps a strange one", () => {
    const { entries, refilled } = lineOf({ colour: "ROSE", plated: "plated", solidity: "woven" });
    expect([entries.texts.colour, entries.texts.plated, entries.texts.solidity]).toEqual(["rose", "plated", "woven"]);
    expect(refilled({ plated: "" }).texts.plated).toBe("as usual");
  });

  it("is written with a comma where that is the way, counted with a point, and the same again after", () => {
    writeAs(() => "de-DE");
    const { entries, counted } = lineOf({ composition: "Au 58.5 Ag 41.5", colour: "own", design: "Curb 2.5" });
    expect([entries.texts.length, entries.texts.composition]).toEqual(["24,5", "Au 58,5 Ag 41,5"]);
    expect(counted()).toMatchObject({ length: "24.5", composition: "Au 58.5 Ag 41.5", design: "Curb 2.5" });
  });

  it("names a figure that two people read as two", () => {
    writeAs(() => "de-DE");
    const { groups, entries: before } = lineOf({});
    const entries = typedIn(before, "linkWeight", "1.500");
    expect(misread(groups, LINE_LABELS, entries)).toEqual([
      {
        field: "linkWeight",
        code: "notANumber",
        sentence: 'Weight of one link: found "1.500", which may be 1,5 or 1500; give 1,5 or 1500, without separators',
      },
    ]);
    const hidden = typedIn(entries, "ease", "1.500");
    expect(misread(groups, LINE_LABELS, hidden).map(({ field }) => field)).toEqual(["linkWeight"]);
    writeAs(() => "en-US");
    expect(misread(groups, LINE_LABELS, entries)).toEqual([]);
  });

  it("makes a line that somebody has touched", () => {
    const { groups, entries } = lineOf({});
    expect(isUntouched(groups, entries)).toBe(false);
    expect(isUntouched(groups, freshEntries(groups))).toBe(true);
  });
});

it("a folded group says what it holds", () => {
  const says = (id: string, texts: Partial<Record<LineKey, string>>) => {
    const { groups, entries } = lineOf(texts);
    return groups.find((group) => group.id === id)?.holds?.((key) => entries.texts[key]);
  };
  expect(says("stones", {})).toBe("none");
  expect(says("stones", { stonesOn: "a number of links", stoneCount: "6", stonesPerLink: "2" })).toBe("12 stones");
  expect(says("stones", { stonesOn: "every n-th link", stoneEvery: "3" })).toBe("every 3 links");
  expect(says("clasp", { clasp: "none" })).toBe("None");
  expect(says("clasp-stones", { claspStoneCount: "1" })).toBe("1 stone");
  expect(says("alloy", { solidity: "hollow", pattern: "yyw" })).toBe("hollow, pattern YYW");
  expect(says("findings", {})).toBe("none");
  expect(says("findings", { findings: "Jump rings", engraving: "M" })).toBe("Jump rings, engraved");
  expect(says("price", { linePriceBy: "margin", linePriceFigure: "35 %" })).toBe("margin 35 %");
});

it("a line is named by its number, design, alloy and length", () => {
  expect(lineTitle(1, lineOf({}).counted())).toBe("1 Curb 8 mm, 14K yellow, 24.5 in");
  expect(lineTitle(2, lineOf({ design: "", colour: "own", colourName: "champagne" }).counted())).toBe(
    "2 No design yet, 14K champagne, 24.5 in",
  );
  expect(lineTitle(3, lineOf({ solidity: "hollow", pattern: "yyw" }).counted())).toBe(
    "3 Curb 8 mm, 14K YYW, hollow, 24.5 in",
  );
});

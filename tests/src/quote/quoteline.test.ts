import { describe, expect, test } from "vitest";
import type { Quotient } from "../../../src/exact/quotient";
import { costOrder } from "../../../src/quote/costsheet";
import { quoteLine } from "../../../src/quote/quoteline";
import { orderOf, type Record_, ratesOf } from "../orders";

const text = (value: Quotient | undefined) => value?.value().toString();
const RATES = ratesOf({ plating: "40", platingMetal: "rhodium", tolerance: "0.05" });

function lineOf(changes: Record_) {
  const order = orderOf(changes, RATES);
  const [sheet] = costOrder(order, RATES);
  if (!sheet) throw new Error("no line");
  return quoteLine(sheet, order, RATES);
}

describe("what a customer reads of a line", () => {
  test.each([
    ["14", "14K"],
    ["14k", "14K"],
    ["14/24", "14K"],
    ["0.585", "585"],
    ["58.5%", "585"],
    ["585/1000", "585"],
    ["999.9", "999.9"],
    ["583.37", "583.3"], // never above the fineness
  ])("a mark given as %s is %s", (mark, shown) => {
    expect(lineOf({ mark }).mark).toBe(shown);
  });

  test("its colours in words, an alloy of one's own by its name", () => {
    expect(lineOf({ pattern: "YW", linkWeightWhite: "1.9" }).colours).toEqual(["yellow", "white"]);
    expect(lineOf({ colour: "own", colourName: "champagne", composition: "Au 750 Ag 250" }).colours).toEqual([
      "champagne",
    ]);
  });

  test("the finished length, where a measure was given", () => {
    expect(lineOf({ lengthGiven: "wrist", length: "17", ease: "1.5", lengthUnit: "cm" })).toMatchObject({
      length: "18.5",
      unit: "cm",
    });
  });

  test.each([
    // 20 in less 1.1 of clasp at 4.3 an inch: 81.27, so 81 links: 18.837 + 1.1 = 19.937 in.
    [{ length: "20", linksPer: "4.3", claspLength: "1.1" }, "19.9"],
    [{ length: "20.25", linksPer: "4.3", claspLength: "1.1" }, "20.17"], // 82 links: 19.0698 + 1.1
    [{ length: "55", lengthUnit: "cm", linksPer: "1.7", linksPerUnit: "cm" }, "55.3"], // 93.5, so 94 links: 55.294
    [{ length: "550", lengthUnit: "mm", linksPer: "1.7", linksPerUnit: "cm" }, "553"],
    [{ length: "24" }, undefined],
    // 82 links are 20.01 in: it reads as asked.
    [{ length: "20", linksPer: "4.098" }, undefined],
  ])(
    "the length that whole links reach, where it reads otherwise than the one asked for: %j (hand arithmetic)",
    (line, reached) => {
      expect(text(lineOf(line).reached)).toBe(reached);
    },
  );

  test("solid or hollow, plated or not, clasp, findings and engraving", () => {
    expect(
      lineOf({ solidity: "hollow", colour: "white", clasp: "none", findings: "safety chain", engraving: "A. & B." }),
    ).toMatchObject({
      hollow: true,
      plating: { metal: "rhodium", part: "piece" },
      clasp: "none",
      findings: "safety chain",
      engraving: "A. & B.",
    });
  });

  test("stones and carats in all: 12 of 0.03 ct in the links and one of 0.5 ct on the clasp are 0.86 ct", () => {
    const line = lineOf({
      stoneCount: "12",
      stoneKind: "diamond",
      stoneCarat: "0.03",
      claspStoneCount: "1",
      claspStoneKind: "ruby",
      claspStoneCarat: "0.5",
      stoneDiameter: "2",
    });
    expect([text(line.stones), text(line.carats), line.stoneSizes]).toEqual(["13", "0.86", "2 mm round"]);
    const known = { stoneCount: "12", stoneKind: "diamond", stoneCarat: "0.03", claspStoneKind: "ruby" };
    expect(lineOf({ ...known, claspStoneCount: "1" }).carats).toBeUndefined();
    // A carat of a stone that nobody has named would be read as a diamond's.
    expect(lineOf({ stoneCount: "12", stoneCarat: "0.03" }).carats).toBeUndefined();
  });

  test("what stones, how many of each, and carats about where a size says any of them", () => {
    const stones = {
      stoneCount: "12",
      stoneKind: "sapphire",
      stoneCarat: "0.03",
      stoneDiameter: "2",
      claspStoneCount: "1",
      claspStoneKind: "diamond",
      claspStoneDiameter: "4",
    };
    // 12 x 0.03, and 4 x 4 x 2.4 x 0.0061 = 0.23424.
    const line = lineOf(stones);
    expect([line.stoneSets, text(line.carats), line.caratsAbout]).toEqual([
      "12 sapphire (2 mm round), 1 diamond (4 mm round)",
      "0.59",
      true,
    ]);
    expect(lineOf({ ...stones, claspStoneCarat: "0.25" }).caratsAbout).toBe(false);
    expect(lineOf({ stoneCount: "12" }).stoneSets).toBe("12");
  });

  test("no carats that only a diamond of that size would have", () => {
    const sapphires = { stoneCount: "12", stoneKind: "sapphire", stoneDiameter: "2" };
    expect(lineOf(sapphires).carats).toBeUndefined();
    // 12 x 2 x 2 x 1.2 x 0.0018 x 4 = 0.41472, by the coloured stones' own factor.
    expect(text(lineOf({ ...sapphires, stoneGravity: "4" }).carats)).toBe("0.41");
  });
});

describe("a price settled by final weight", () => {
  test("moves by the metal rate at the quote's spot: 750 at 100 a gram of fine gold is 75.00 (hand arithmetic)", () => {
    expect(text(lineOf({ settled: "by final weight" }).perGram?.amount)).toBe("75");
  });

  test("and by the premium where the price goes by one: 75 + 12.50", () => {
    const line = lineOf({ settled: "by final weight", priceBy: "premium", priceFigure: "12.5" });
    expect(text(line.perGram?.amount)).toBe("87.5");
  });

  test("a fixed price moves by nothing", () => {
    expect(lineOf({}).perGram).toBeUndefined();
  });
});

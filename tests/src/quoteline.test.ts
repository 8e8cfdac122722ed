import { describe, expect, test } from "vitest";
import { costOrder } from "../../src/costsheet";
import { quoteLine } from "../../src/quoteline";
import type { Quotient } from "../../src/quotient";
import { orderOf, type Record_, ratesOf } from "./orders";

const text = (value: Quotient | undefined) => value?.value().toString();
const RATES = ratesOf({ plating: "40" });

function lineOf(changes: Record_) {
  const order = orderOf(changes, RATES);
  const [sheet] = costOrder(order, RATES);
  if (!sheet) throw new Error("no line");
  return quoteLine(sheet, order);
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

  test("solid or hollow, plated or not, clasp, findings and engraving", () => {
    expect(
      lineOf({ solidity: "hollow", colour: "white", clasp: "none", findings: "safety chain", engraving: "A. & B." }),
    ).toMatchObject({
      hollow: true,
      plated: true,
      clasp: "none",
      findings: "safety chain",
      engraving: "A. & B.",
    });
  });

  test("stones and carats in all: 12 of 0.03 ct in the links and one of 0.5 ct on the clasp are 0.86 ct", () => {
    const line = lineOf({
      stoneCount: "12",
      stoneCarat: "0.03",
      claspStoneCount: "1",
      claspStoneCarat: "0.5",
      stoneDiameter: "2",
    });
    expect([text(line.stones), text(line.carats), line.stoneSizes]).toEqual(["13", "0.86", "2 mm round"]);
    expect(lineOf({ stoneCount: "12", stoneCarat: "0.03", claspStoneCount: "1" }).carats).toBeUndefined();
  });
});

describe("a price settled by final weight", () => {
  // 192 g at 75 a gram and 2 g lost, quick: 14,400 + 150 + 288 casting + 50 labour = 14,888, x 1.3 = 19,354.40, up to 19,355.
  test("moves by what a gram brings at this price: 19,355 x 14,838 / 14,888 / 192 = 100.47 (hand arithmetic)", () => {
    const line = lineOf({ settled: "by final weight" });
    expect(text(line.price.amount)).toBe("19355");
    expect(line.perGram?.amount.toNumber()).toBe(Number(((19355 * 14838) / 14888 / 192).toFixed(2)));
  });

  test("a fixed price moves by nothing", () => {
    expect(lineOf({}).perGram).toBeUndefined();
  });
});

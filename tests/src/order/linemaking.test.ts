import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Fault } from "../../../src/exact/errors";
import { Quotient } from "../../../src/exact/quotient";
import { parseComposition } from "../../../src/gold/composition";
import { perGram } from "../../../src/gold/goldrate";
import { parseMark } from "../../../src/gold/mark";
import { makeLine } from "../../../src/order/linemaking";
import { parseLine } from "../../../src/order/linereading";
import type { LineParts, OrderLine } from "../../../src/order/orderline";
import type { StoneParts } from "../../../src/order/stones";
import type { Parsed } from "../../../src/reading/parse";
import { moneyEach } from "../../../src/trade/boughtpart";
import { money } from "../../../src/units/money";
import { grams } from "../../../src/units/weight";
import { type Record_, ratesOf, read } from "../orders";

const RATES = ratesOf({ plating: "40", breakage: "0.1" });
const q = (text: string) => Quotient.of(text);
const usd = (text: string) => money(q(text), "USD");

const STONE: StoneParts = {
  kind: "",
  shape: "round",
  diameter: q("2"),
  length: undefined,
  width: undefined,
  depth: undefined,
  gravity: undefined,
  carat: undefined,
  price: usd("3"),
  priced: "a stone",
  settingFee: undefined,
};

/** One and the same line, as figures and as a person types it. */
const PARTS: LineParts = {
  design: "Curb 8 mm",
  kind: "chain",
  mark: parseMark("14K"),
  colour: "yellow",
  colourName: "",
  platingMetal: "",
  composition: undefined,
  pattern: ["yellow", "yellow", "white"],
  hollow: false,
  plated: "as usual",
  quantity: q("2"),
  lengthGiven: "neck",
  measured: q("40"),
  ease: q("5"),
  lengthUnit: "cm",
  linksPer: q("1.6"),
  linksPerUnit: "cm",
  linkWeight: grams(q("1.5")),
  otherLinkWeights: { white: grams(q("2")) },
  linkCasting: "closed and open in turn",
  clasp: {
    kind: "cast box clasp",
    length: q("1.2"),
    weight: grams(q("3.4")),
    mark: undefined,
    cost: moneyEach(usd("20")),
  },
  stones: {
    counts: {
      stonesOn: "every n-th link",
      stoneEvery: q("5"),
      stoneCount: Quotient.zero,
      stonesPerLink: q("2"),
      claspStoneCount: q("3"),
    },
    breakage: undefined,
    inLinks: STONE,
    onClasp: { ...STONE, priced: "a carat", carat: q("0.03"), settingFee: usd("2") },
  },
  findings: {
    what: "Jump rings",
    weight: grams(q("0.4")),
    mark: parseMark("18K"),
    cost: { by: "premium", premium: perGram(q("5"), "USD") },
  },
  engraving: "A & B",
  engravingCost: usd("15"),
  setup: usd("12.5"),
  pricing: { by: "margin", share: q("0.35") },
};
const TEXTS: Record_ = {
  design: "Curb 8 mm",
  mark: "14K",
  colour: "yellow",
  pattern: "YYW",
  quantity: "2",
  lengthGiven: "neck",
  length: "40",
  ease: "5",
  lengthUnit: "cm",
  linksPer: "1.6",
  linksPerUnit: "cm",
  linkWeight: "1.5",
  linkWeightWhite: "2",
  clasp: "cast box clasp",
  claspLength: "1.2",
  claspWeight: "3.4",
  claspCost: "20",
  stonesOn: "every n-th link",
  stoneEvery: "5",
  stonesPerLink: "2",
  claspStoneCount: "3",
  stoneDiameter: "2",
  claspStoneDiameter: "2",
  stonePrice: "3",
  claspStonePrice: "3",
  claspStonePriced: "a carat",
  claspStoneCarat: "0.03",
  claspSettingFee: "2",
  findings: "Jump rings",
  findingsWeight: "0.4",
  findingsPremium: "5",
  findingsMark: "18K",
  engraving: "A & B",
  engravingCost: "15",
  setup: "12.5",
  linePriceBy: "margin",
  linePriceFigure: "0.35",
};

/** A line as a text, its values as fractions. */
const shown = (line: OrderLine) =>
  JSON.stringify(line, (_, value: unknown) => (value instanceof Quotient ? `${value.over}/${value.under}` : value), 1);
const inOrder = (text: string) => text.split("\n").sort();
const faultsIn = (parsed: Parsed<OrderLine>): readonly Fault[] => (parsed.ok ? [] : parsed.faults);

describe("a line made of its parts", () => {
  test("is the line read from their texts, with all that follows from them", () => {
    const made = shown(read(makeLine(PARTS, RATES)));
    const typed = shown(read(parseLine(TEXTS, RATES)));
    expect(inOrder(made)).toEqual(inOrder(typed));
  });

  test("is that line for any length, weight and number of pieces", () => {
    const hundredths = (most: number) => fc.integer({ min: 1, max: most }).map((each) => (each / 100).toFixed(2));
    fc.assert(
      fc.property(hundredths(20000), hundredths(3000), fc.integer({ min: 1, max: 1000 }), (length, weight, pieces) => {
        const made = makeLine(
          { ...PARTS, measured: q(length), linkWeight: grams(q(weight)), quantity: q(String(pieces)) },
          RATES,
        );
        const typed = parseLine({ ...TEXTS, length, linkWeight: weight, quantity: String(pieces) }, RATES);
        expect(made.ok && inOrder(shown(made.value))).toEqual(typed.ok && inOrder(shown(typed.value)));
        expect(faultsIn(made)).toEqual(faultsIn(typed));
      }),
    );
  });

  test.each<[why: string, Partial<LineParts>, Record_]>([
    ["a pattern without the line's colour", { pattern: ["white"] }, { pattern: "W" }],
    ["no weight of the white links", { otherLinkWeights: {} }, { linkWeightWhite: "" }],
    ["a length no longer than its clasp", { measured: q("1"), ease: Quotient.zero }, { length: "1", ease: "0" }],
    ["no ease of a neck", { ease: undefined }, { ease: "" }],
    ["ease of a finished length", { lengthGiven: "finished length" }, { lengthGiven: "" }],
    ["more links than a bench makes", { linksPer: q("900") }, { linksPer: "900" }],
    ["figures of no clasp", { clasp: { ...PARTS.clasp, kind: "none" } }, { clasp: "none" }],
    ["a cast clasp of no weight", { clasp: { ...PARTS.clasp, weight: grams(q("0")) } }, { claspWeight: "0" }],
    [
      "an alloy of one's own without a name and a composition",
      { colour: "own", pattern: [] },
      { colour: "own", pattern: "" },
    ],
    [
      "a composition below the mark",
      { colour: "own", pattern: [], colourName: "sand", composition: parseComposition("Au 400 Ag 600", "Composition") },
      { colour: "own", pattern: "", colourName: "sand", composition: "Au 400 Ag 600" },
    ],
    [
      "a composition of yellow",
      { composition: parseComposition("Au 600 Ag 400", "Composition") },
      { composition: "Au 600 Ag 400" },
    ],
    [
      "more links with stones than links",
      {
        stones: {
          ...PARTS.stones,
          counts: { ...PARTS.stones.counts, stonesOn: "a number of links", stoneCount: q("90") },
        },
      },
      { stonesOn: "a number of links", stoneCount: "90" },
    ],
    [
      "stones by the carat that nobody weighed",
      { stones: { ...PARTS.stones, inLinks: { ...STONE, diameter: undefined, priced: "a carat" } } },
      { stoneDiameter: "", stonePriced: "a carat" },
    ],
    ["half a piece", { quantity: q("0.5") }, { quantity: "0.5" }],
    ["a link of nothing", { linkWeight: grams(q("0")) }, { linkWeight: "0" }],
    ["a cost below zero", { setup: usd("-1") }, { setup: "-1" }],
    ["a margin of all", { pricing: { by: "margin", share: q("1") } }, { linePriceFigure: "1" }],
  ])("is refused in the words of the field that would be typed: %s", (_, parts, texts) => {
    const typed = faultsIn(parseLine({ ...TEXTS, ...texts }, RATES)).map(unquoted);
    expect(typed.length).toBeGreaterThan(0);
    expect(faultsIn(makeLine({ ...PARTS, ...parts }, RATES))).toEqual(typed);
  });

  test("is refused where plating has no cost on Rates, in the same words too", () => {
    const faults = faultsIn(makeLine(PARTS, ratesOf()));
    expect(faults.map(({ field }) => field)).toEqual(["plated"]);
    expect(faults).toEqual(faultsIn(parseLine(TEXTS, ratesOf())));
  });
});

/** What a person typed is quoted, what was computed is not. */
function unquoted(fault: Fault): Fault {
  return { ...fault, sentence: fault.sentence.replace(/found "([-\d.]+)"/, "found $1") };
}

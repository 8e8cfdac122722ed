import { describe, expect, test } from "vitest";
import type { Fault } from "../../../src/exact/errors";
import type { Quotient } from "../../../src/exact/quotient";
import { parseOrder } from "../../../src/order/order";
import { ORDER, orderOf, type Record_, ratesOf } from "../orders";
import { orderOfRow } from "../typedorders";

const RATES = ratesOf({ plating: "40" });
const text = (value: Quotient | undefined) => value?.value().toString();

function lineOf(changes: Record_) {
  const line = orderOf(changes, RATES).lines[0];
  if (!line) throw new Error("an order without a line");
  return line;
}

function faultsOf(changes: Record_): readonly Fault[] {
  const parsed = parseOrder(orderOfRow({ ...ORDER, ...changes }), RATES);
  return parsed.ok ? [] : parsed.faults;
}

describe("length by a measure", () => {
  test("a wrist of 17 cm and 1.5 cm of ease make 18.5 cm, at 2 links a centimetre 37 links (hand arithmetic)", () => {
    const line = lineOf({
      kind: "bracelet",
      lengthGiven: "wrist",
      length: "17",
      ease: "1.5",
      lengthUnit: "cm",
      linksPer: "2",
      linksPerUnit: "cm",
    });
    expect(text(line.length.millimetres)).toBe("185");
    expect(text(line.links)).toBe("37");
    expect([line.kind, text(line.measured), text(line.ease)]).toEqual(["bracelet", "17", "1.5"]);
  });

  test("an ease of 0 is an ease", () => {
    expect(text(lineOf({ lengthGiven: "neck", length: "20", ease: "0" }).links)).toBe("80");
  });
});

describe("colours", () => {
  test("YYW of 96 links: 64 yellow of 2 g and 32 white of 1.9 g, plated as usual (hand arithmetic)", () => {
    const line = lineOf({ pattern: "YYW", linkWeightWhite: "1.9" });
    expect(
      line.linkGroups.map(({ colour, links, linkWeight }) => [colour, text(links), text(linkWeight.grams)]),
    ).toEqual([
      ["yellow", "64", "2"],
      ["white", "32", "1.9"],
    ]);
    expect(line.plated).toBe(true);
  });

  test("an alloy of one's own has a name and a composition that bears the mark", () => {
    const line = lineOf({ colour: "own", colourName: "champagne", composition: "Au 750 Ag 100 Cu 100 Pd 50" });
    expect(line).toMatchObject({ colour: "own", colourName: "champagne", plated: false });
    expect(text(line.composition?.fineness)).toBe("750");
  });

  test("is costed by the gold it holds, not by a lower mark: 750 parts marked 585", () => {
    const line = lineOf({ mark: "585", colour: "own", colourName: "deep", composition: "Au 750 Ag 125 Cu 125" });
    expect([text(line.mark.share), text(line.gold.share)]).toEqual(["0.585", "0.75"]);
    expect(text(lineOf({ mark: "585" }).gold.share)).toBe("0.585");
  });
});

test("stones: in every third of 96 links two, and one on the clasp (hand arithmetic)", () => {
  const line = lineOf({ stonesOn: "every n-th link", stoneEvery: "3", stonesPerLink: "2", claspStoneCount: "1" });
  expect(line.stones.map(({ where, count }) => [where, text(count)])).toEqual([
    ["links", "64"],
    ["clasp", "1"],
  ]);
  expect(lineOf({ stonesOn: "all links" }).stones.map(({ count }) => text(count))).toEqual(["96"]);
  expect(lineOf({ stonesOn: "no links" }).stones).toEqual([]);
  expect(lineOf({ stoneCount: "12" }).stones.map(({ count }) => text(count))).toEqual(["12"]);
});

describe("bad input: one sentence that names the field, what was found and what would be right", () => {
  test.each<[Record_, string, string]>([
    [{ kind: "ring" }, "kind", 'Kind of piece: found "ring"; give one of "chain", "bracelet"'],
    [{ solidity: "light" }, "solidity", 'Solid or hollow: found "light"; give one of "solid", "hollow"'],
    [
      { lengthGiven: "ankle" },
      "lengthGiven",
      'Length given as: found "ankle"; give one of "finished length", "neck", "wrist"',
    ],
    [
      { lengthGiven: "wrist" },
      "ease",
      "Ease: found nothing; give how much longer than the wrist the piece is, such as 1.5, or 0",
    ],
    [{ ease: "1" }, "ease", "Ease: found 1 beside a finished length; empty it, or give the neck or the wrist"],
    [{ pattern: "YW" }, "linkWeightWhite", "Weight of one white link: found nothing; give grams above 0, such as 2.05"],
    [
      { pattern: "RW", linkWeightRose: "2", linkWeightWhite: "2" },
      "pattern",
      "Colour pattern: found a pattern without yellow",
    ],
    [{ pattern: "YO" }, "pattern", "Colour pattern: found O, an alloy of your own, beside another colour"],
    [
      { colour: "own", colourName: "pale", composition: "Au 750 Ag 250", pattern: "OY", linkWeightYellow: "2" },
      "pattern",
      "Colour pattern: found another colour beside an alloy of your own; make each a line of its own",
    ],
    [{ pattern: "YZ" }, "pattern", 'Colour pattern: found "YZ"'],
    [
      { colour: "own", composition: "Au 750 Ag 250" },
      "colourName",
      "Name of the colour: found nothing; give what the customer reads",
    ],
    [{ colour: "own", colourName: "pale" }, "composition", "Composition: found nothing; give metals with their parts"],
    [
      { colour: "own", colourName: "pale", composition: "Au 700 Ag 300" },
      "composition",
      "Composition: found 700 parts of gold in a thousand, less than the mark 750",
    ],
    [{ composition: "Au 750 Ag 250" }, "composition", "Composition: found a composition beside the colour yellow"],
    [{ linkCasting: "half" }, "linkCasting", 'Links are cast: found "half"'],
    [
      { clasp: "magnet" },
      "clasp",
      'Clasp: found "magnet"; give one of "bought lobster clasp", "cast box clasp", "cast hidden clasp", "none"',
    ],
    [
      { clasp: "cast box clasp" },
      "claspWeight",
      "Clasp weight: found no weight for a cast clasp; give its finished grams",
    ],
    [
      { clasp: "none", claspCost: "12" },
      "claspCost",
      "Clasp cost: found 12 where there is no clasp; empty it, or choose a clasp",
    ],
    [{ stonesOn: "some" }, "stonesOn", 'Links with stones: found "some"'],
    [{ stonesOn: "every n-th link" }, "stoneEvery", "Every how many links: found nothing; give a whole number from 1"],
    [{ stonesOn: "a number of links" }, "stoneCount", "How many links: found none; give how many, such as 12"],
    [{ stonesOn: "no links", stoneCount: "3" }, "stoneCount", "How many links: found 3 where no links have stones"],
    [{ stoneCount: "97" }, "stoneCount", "How many links: found 97 on a piece of 96 links"],
    [{ stonesPerLink: "0" }, "stonesPerLink", 'Stones per link: found "0"'],
    [{ claspStoneCount: "-1" }, "claspStoneCount", 'Stones on the clasp: found "-1"'],
    [{ findingsWeight: "-1" }, "findingsWeight", 'Weight of other findings: found "-1"; give grams from 0'],
    [{ findingsCost: "x" }, "findingsCost", 'Cost of other findings: found "x"'],
    [{ engraving: "x".repeat(201) }, "engraving", "Engraving: found"],
    [{ engravingCost: "-5" }, "engravingCost", 'Engraving cost: found "-5"'],
    [{ setup: "-5" }, "setup", 'Model and mould share: found "-5"'],
    [{ linePriceBy: "weight" }, "linePriceBy", `This line's price by: found "weight"`],
    [
      { linePriceBy: "margin", linePriceFigure: "1" },
      "linePriceFigure",
      `This line's figure: found "1"; give a share from 0 to below 1`,
    ],
    [{ linePriceBy: "own price" }, "linePriceFigure", "This line's figure: found nothing; give an amount of money"],
  ])("%j", (changes, field, sentence) => {
    const faults = faultsOf(changes);
    expect(faults.map((fault) => [fault.field, fault.line])).toEqual([[field, 0]]);
    expect(faults[0]?.sentence.startsWith(sentence), faults[0]?.sentence).toBe(true);
  });

  test.each<[Record_, string, string]>([
    [{ priceBy: "gut" }, "priceBy", 'Price by: found "gut"; give one of "as Rates", "markup", "margin", "premium"'],
    [{ priceBy: "premium" }, "priceFigure", "Markup, margin or premium: found nothing; give an amount of money"],
    [{ shipping: "-1" }, "shipping", 'Shipping: found "-1"'],
    [{ deposit: "2" }, "deposit", 'Deposit: found "2"; give a share from 0 to 1, such as 0.5 or 50 %'],
    [{ settled: "later" }, "settled", 'Price settled: found "later"; give one of "fixed", "by final weight"'],
    [{ tolerance: "1" }, "tolerance", 'Weight tolerance: found "1"; give a share from 0 to below 1'],
    [
      { settled: "by final weight", tolerance: "0" },
      "tolerance",
      "Weight tolerance: found none for a price settled by final weight",
    ],
    [{ spotShown: "maybe" }, "spotShown", 'Spot on the quote: found "maybe"; give one of "no", "yes"'],
  ])("%j", (changes, field, sentence) => {
    const faults = faultsOf(changes);
    expect(faults.map((fault) => [fault.field, fault.line])).toEqual([[field, undefined]]);
    expect(faults[0]?.sentence.startsWith(sentence), faults[0]?.sentence).toBe(true);
  });

  test("each line's faults are told by its place, and so are those of free lines", () => {
    const { order, lines } = orderOfRow(ORDER);
    const [line = {}] = lines;
    const parsed = parseOrder(
      {
        order,
        lines: [line, { ...line, length: "x" }],
        extras: [
          { text: "Box", amount: "5" },
          { text: "", amount: "y", cost: "-1" },
        ],
      },
      RATES,
    );
    expect(parsed.ok ? [] : parsed.faults.map(({ field, line, extra }) => [field, line, extra])).toEqual([
      ["length", 1, undefined],
      ["text", undefined, 1],
      ["amount", undefined, 1],
      ["cost", undefined, 1],
    ]);
  });
});

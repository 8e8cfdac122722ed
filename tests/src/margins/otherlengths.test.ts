import Fraction from "fraction.js";
import { expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { lineOfWeight } from "../../../src/makeorbuy/chainchoice";
import { chainWeightOf } from "../../../src/makeorbuy/crossover";
import { otherLengths } from "../../../src/margins/otherlengths";
import { costPiece } from "../../../src/quote/piececosts";
import { grams } from "../../../src/units/weight";
import { orderOf, type Record_, ratesOf } from "../orders";
import { expectExact } from "../reference";

function lineOf(record: Record_) {
  const rates = ratesOf({ plating: "40" });
  const order = orderOf(record, rates);
  const line = order.lines[0];
  if (!line) throw new Error("no line");
  return { line, rates, spot: order.spot, lengths: otherLengths(line) };
}

/** 1.5 g yellow, 2 g white, in the pattern YYW: 5 g for three links. */
const PATTERN = { pattern: "YYW", linkWeight: "1.5", linkWeightWhite: "2" };

test("heavier links keep their number: 96 links of 2 g made 288 g weigh 3 g each (hand arithmetic)", () => {
  const { line } = lineOf({});
  const heavier = lineOfWeight(line, grams(Quotient.of(288)), "heavier links");
  expect(heavier.links.equals(line.links)).toBe(true);
  expectExact(heavier.linkGroups[0]?.linkWeight.grams ?? Quotient.zero, new Fraction(3));
  expectExact(chainWeightOf(heavier).grams, new Fraction(288));
});

test("links of several colours grow alike: 96 of YYW, 160 g, made 320 g are 3 g and 4 g each (hand arithmetic)", () => {
  const { line } = lineOf(PATTERN);
  const weights = lineOfWeight(line, grams(Quotient.of(320)), "heavier links").linkGroups.map(
    ({ colour, linkWeight }) => [colour, linkWeight.grams.value().toString()],
  );
  expect(weights).toEqual([
    ["yellow", "3"],
    ["white", "4"],
  ]);
});

test("seven links of the pattern YYW are 5 yellow and 2 white: 11.5 g (hand arithmetic)", () => {
  const { lengths } = lineOf(PATTERN);
  const seven = lengths.at(7);
  expect(lengths.period).toBe(3);
  expect(seven?.linkGroups.map(({ links }) => links.toNumber())).toEqual([5, 2]);
  expectExact(seven ? chainWeightOf(seven).grams : Quotient.zero, new Fraction("11.5"));
});

test("a piece too short to show every colour still knows their weights", () => {
  // Half an inch at 4 links an inch: two yellow links; the third of a longer piece is white.
  const { line, lengths } = lineOf({ ...PATTERN, length: "0.5" });
  expect(line.linkGroups.map(({ colour }) => colour)).toEqual(["yellow"]);
  expect(lengths.at(3)?.linkGroups.map(({ linkWeight }) => linkWeight.grams.toNumber())).toEqual([1.5, 2]);
});

test("stones in every fifth link, two each, follow the links; those on the clasp do not", () => {
  const stones = {
    stonesOn: "every n-th link",
    stoneEvery: "5",
    stonesPerLink: "2",
    stonePrice: "3",
    claspStoneCount: "6",
  };
  const { lengths } = lineOf({ ...PATTERN, ...stones });
  const counts = (links: number) => lengths.at(links)?.stones.map(({ count }) => count.toNumber());
  // Colours repeat after 3 links and stones after 5: both together after 15.
  expect(lengths.period).toBe(15);
  expect(counts(4)).toEqual([0, 6]);
  expect(counts(14)).toEqual([4, 6]);
  expect(counts(15)).toEqual([6, 6]);
});

test("twelve links with stones need twelve links", () => {
  const { lengths } = lineOf({ stonesOn: "a number of links", stoneCount: "12", stonePrice: "3" });
  expect(lengths.at(11)).toBeUndefined();
  expect(lengths.at(12)?.stones[0]?.count.toNumber()).toBe(12);
});

test("at its own number of links it is the line itself, to every cost", () => {
  const record = { ...PATTERN, stonesOn: "all links", stonePrice: "3", claspWeight: "2", claspCost: "80" };
  const { line, rates, spot, lengths } = lineOf(record);
  const same = lengths.at(line.links.toNumber());
  const costs = (each: typeof line) =>
    Object.values(costPiece(each, spot, rates).costs).map(({ amount }) => amount.value().toString());
  expect(same && costs(same)).toEqual(costs(line));
});

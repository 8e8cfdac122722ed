import { describe, expect, test } from "vitest";
import { Quotient, sum } from "../../../src/exact/quotient";
import { costPiece, stonesToBuy } from "../../../src/quote/piececosts";
import { orderOf, type Record_, ratesOf } from "../orders";

const text = (value: Quotient | undefined) => value?.value().toString();
/** Fine gold at exactly 100 a gram, so that a mark of 250 costs 25.00. */
const AT_25 = { spot: "3110.34768", costBasis: "finished", loss: "0.02", lossBasis: "finished" };

function piece(order: Record_, rates: Record_ = {}) {
  const workshop = ratesOf({ ...AT_25, ...rates });
  const made = orderOf({ mark: "250", length: "25", linkWeight: "1", ...order }, workshop);
  const [line] = made.lines;
  if (!line) throw new Error("an order without a line");
  return { line, ...costPiece(line, made.spot, workshop) };
}

describe("100 links of 1 g at 25.00 a gram, casting fee 1.50, labour 50, loss 2 % of the finished weight (hand arithmetic)", () => {
  test("a cast clasp of 5 g is cast, lost and paid for with the links", () => {
    const { costs, castWeight, castPartsWeight, finishedWeight } = piece({
      clasp: "cast box clasp",
      claspWeight: "5",
      claspCost: "8",
    });
    expect([text(castPartsWeight.grams), text(castWeight.grams), text(finishedWeight.grams)]).toEqual([
      "105",
      "107.1",
      "105",
    ]);
    // 105 x 25, 2.1 x 25, 107.1 x 1.5.
    expect([
      text(costs.metal.amount),
      text(costs.lost.amount),
      text(costs.casting.amount),
      text(costs.clasp.amount),
    ]).toEqual(["2625", "52.5", "160.65", "8"]);
  });

  test("a bought clasp of 5 g is weighed, not cast; its gold is in its cost", () => {
    const { costs, castWeight, finishedWeight } = piece({ claspWeight: "5", claspCost: "200" });
    expect([
      text(castWeight.grams),
      text(finishedWeight.grams),
      text(costs.metal.amount),
      text(costs.clasp.amount),
    ]).toEqual(["102", "105", "2500", "200"]);
  });

  test("findings, engraving, model share, and 10 % overhead on all of it", () => {
    const { costs, landed } = piece(
      { findingsWeight: "1", findingsCost: "40", engraving: "A.", engravingCost: "15", setup: "25" },
      { overhead: "0.1" },
    );
    expect([text(costs.findings.amount), text(costs.engraving.amount), text(costs.setup.amount)]).toEqual([
      "40",
      "15",
      "25",
    ]);
    // 2500 + 50 + 153 + 50 + 40 + 15 + 25 = 2,833.
    expect([text(costs.overhead.amount), text(landed.amount)]).toEqual(["283.3", "3116.3"]);
  });

  test("stones break: 12 at 10 with 10 % breakage cost 132, and setting 12", () => {
    const { costs } = piece({ stoneCount: "12", stonePrice: "10", settingFee: "1", breakage: "10 %" });
    expect([text(costs.stones.amount), text(costs.setting.amount)]).toEqual(["132", "12"]);
  });

  test("two alloys: each is weighed, cast and its links counted; the clasp is cast in the line's own", () => {
    const { alloys } = piece({
      pattern: "YYW",
      linkWeightWhite: "0.9",
      clasp: "cast box clasp",
      claspWeight: "5",
      plated: "not plated",
    });
    // 67 yellow and 33 white: 67 + 5 g and 29.7 g.
    expect(
      alloys.map(({ colour, links, claspParts, finished }) => [
        colour,
        text(links),
        text(claspParts),
        text(finished.grams),
      ]),
    ).toEqual([
      ["yellow", "67", "2", "72"],
      ["white", "33", "0", "29.7"],
    ]);
    expect(alloys.map(({ cast }) => cast.grams.rounded(6).toString())).toEqual(["73.44", "30.294"]);
  });

  test("grams of loss are shared by the alloys' weights, and add up to the whole", () => {
    const { alloys, castWeight } = piece(
      { pattern: "YW", linkWeightWhite: "3", plated: "not plated" },
      { lossBasis: "grams", loss: "4" },
    );
    // 50 g yellow and 150 g white share 4 g as 1 and 3.
    expect(alloys.map(({ cast }) => cast.grams.rounded(6).toString())).toEqual(["51", "153"]);
    expect(sum(alloys.map(({ cast }) => cast.grams)).equals(castWeight.grams)).toBe(true);
  });
});

test("stones to buy are whole ones: 12 on each of 3 pieces with 5 % breakage are 37.8, so 38", () => {
  const { line } = piece({ stoneCount: "12", breakage: "0.05" });
  const [set] = line.stones;
  if (!set) throw new Error("no stones");
  expect(stonesToBuy(set, Quotient.of(3)).toNumber()).toBe(38);
});

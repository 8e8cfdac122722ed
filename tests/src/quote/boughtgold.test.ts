import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { priceDesign, readDesigns } from "../../../src/designs/pricelist";
import { rateFiguresOf } from "../../../src/designs/rateinputs";
import { reprice } from "../../../src/designs/repricing";
import { priceInColumns } from "../../../src/designs/tableformulas";
import { Quotient } from "../../../src/exact/quotient";
import { floorSpot } from "../../../src/makeorbuy/curve";
import { spotRisk } from "../../../src/openquotes/spotrisk";
import { parseOrder } from "../../../src/order/order";
import { orderQuestions } from "../../../src/order/questions";
import { costOrder } from "../../../src/quote/costsheet";
import { NOT_KNOWN, termsOf } from "../../../src/rates/quotedterms";
import { money } from "../../../src/units/money";
import { ORDER, type Record_, ratesOf, read } from "../orders";
import { expectExact } from "../reference";
import { orderOfRow } from "../typedorders";

/** Fine gold is 100.00 a gram. 100 g of 250 gold in 100 links, 2 g lost, 1.50 a gram cast on the quick basis, 50 labour: 2,750. */
const SPOT = "3110.34768";
const TWICE = "6220.69536";
const PIECE = { mark: "250", length: "25", linkWeight: "1", linksPer: "4" };
/** 3 g of 500 gold at 50.00 a gram and 10 over it. */
const BY_WEIGHT = { claspWeight: "3", claspMark: "500", claspPremium: "10" };
const FINDINGS = { findingsWeight: "0.5", findingsMark: "750", findingsPremium: "4" };

const formOf = (line: Record_) =>
  orderOfRow({ ...ORDER, ...PIECE, clasp: "bought lobster clasp", claspLength: "0", ...line });
const parsedOf = (line: Record_, spot = SPOT) => parseOrder(formOf(line), ratesOf({ spot }));
const sheetOf = (line: Record_, spot = SPOT) => {
  const [sheet] = costOrder(read(parsedOf(line, spot)), ratesOf({ spot }));
  if (!sheet) throw new Error("No line was costed");
  return sheet;
};
const costs = (line: Record_, spot?: string) => {
  const { clasp, findings } = sheetOf(line, spot).costs;
  return [clasp, findings].map(({ amount }) => amount.value().toString());
};
const faults = (line: Record_) => {
  const parsed = parsedOf(line);
  return parsed.ok ? [] : parsed.faults.map(({ sentence }) => sentence);
};
const spotAt = (aGram: Fraction) => aGram.mul("31.1034768");

describe("a part that is bought by its weight", () => {
  test("costs its weight at the metal rate of its own mark and its premium, which follows spot (hand arithmetic)", () => {
    // 3 x (50 + 10), 0.5 x (75 + 4); at twice the spot 3 x (100 + 10), 0.5 x (150 + 4).
    expect(costs({ ...BY_WEIGHT, ...FINDINGS })).toEqual(["180", "39.5"]);
    expect(costs({ ...BY_WEIGHT, ...FINDINGS }, TWICE)).toEqual(["330", "77"]);
  });

  test("without a mark is of the mark of the piece", () => {
    // 3 x (25 + 10).
    expect(costs({ ...BY_WEIGHT, claspMark: "" })).toEqual(["105", "0"]);
  });

  test("holds the fine gold of its own mark", () => {
    // 100 x 0.25 + 3 x 0.5 + 0.5 x 0.75.
    expect(
      sheetOf({ ...BY_WEIGHT, ...FINDINGS })
        .fineGold.grams.value()
        .toString(),
    ).toBe("26.875");
  });
});

test("a part that is paid for by money each costs that at any spot", () => {
  const each = { claspWeight: "1", claspCost: "180", findingsWeight: "0.1", findingsCost: "39.5" };
  expect(costs(each)).toEqual(["180", "39.5"]);
  expect(costs(each, TWICE)).toEqual(["180", "39.5"]);
});

describe("what a kept price leaves at other spots counts bought gold", () => {
  // 25.5 g of fine gold are cast, 1.5 bought: 27 a + 200 + 30 at a a gram.
  const limit = (kept: string) => spotAt(new Fraction(kept).sub(230).div(27));

  test("for an open quote (hand arithmetic)", () => {
    const rates = ratesOf({ spot: SPOT });
    const order = read(parsedOf(BY_WEIGHT));
    const { floor, zero } = spotRisk(order, money(Quotient.of("3575"), "USD"), rates, termsOf(rates, NOT_KNOWN));
    const spots = [floor, zero].map((each) => ("spot" in each ? each.spot.amount : Quotient.zero));
    // At a least margin of a tenth 3,217.50 may be spent.
    expectExact(spots[0] ?? Quotient.zero, limit("3217.5"));
    expectExact(spots[1] ?? Quotient.zero, limit("3575"));
  });

  test("for the price in the form (hand arithmetic)", () => {
    const found = floorSpot(sheetOf(BY_WEIGHT), money(Quotient.of("3575"), "USD"), ratesOf({ spot: SPOT }));
    expectExact(found?.amount ?? Quotient.zero, limit("3217.5"));
  });
});

describe("a catalogue", () => {
  const HEADERS = [
    "Design",
    "Mark",
    "Colour",
    "Length (in)",
    "Links per in",
    "Weight of one link",
    "Clasp",
    "Clasp weight",
    "Mark of the clasp",
    "Clasp premium (USD/g)",
  ];
  const ROWS = ["500", "", "18K"].map((mark, at) => [
    "Curb",
    "250",
    "yellow",
    25,
    4,
    1,
    "bought lobster clasp",
    3 + at,
    mark,
    10 + at,
  ]);
  const rates = (spot: string) => rateFiguresOf(() => ratesOf({ spot }));

  test.each([
    // 2,750 and 3 x 60, 4 x (25 + 11), 5 x (75 + 12).
    [SPOT, [2930, 2894, 3185]],
    // 102 x 50 + 200 and 3 x 110, 4 x (50 + 11), 5 x (150 + 12).
    [TWICE, [5630, 5544, 6110]],
  ])("counts it in columns as row by row, at a spot of %s (hand arithmetic)", (spot, landed) => {
    const seen: unknown[] = [];
    priceInColumns(HEADERS, ROWS, rates(spot), ["landed"], {
      take: (first, { at, count }, open, [output]) => {
        for (let k = 0; k < count; k += 1)
          if (open[k] === 0) seen[first + (at?.[k] ?? k)] = typeof output === "object" ? output[k] : output;
      },
      exact: (row, answer) => {
        seen[row] = answer instanceof Error ? answer.message : (answer[0] as Quotient).toNumber();
      },
    });
    expect(seen).toEqual(landed);
    const workshop = ratesOf({ spot });
    const exactly = readDesigns([HEADERS, ...ROWS], workshop).map((design) => priceDesign(design, workshop));
    expect(exactly.map((line) => line.kind === "priced" && line.sheet.landed.amount.toNumber())).toEqual(landed);
  });

  test("at a new spot has prices that hold it", () => {
    const { lines } = reprice([HEADERS, ...ROWS], rates(SPOT), money(Quotient.of(TWICE), "USD"));
    // 5,630 x 1.3 = 7,319, up to the step of 5; 5,544 x 1.3 = 7,207.2; 6,110 x 1.3 = 7,943.
    expect(lines.map(({ after }) => after.amount.toNumber())).toEqual([7320, 7210, 7945]);
  });

  test("refuses a premium in another weight than a gram", () => {
    const header = HEADERS.with(9, "Clasp premium (USD/dwt)");
    const [first] = readDesigns([header, ...ROWS], ratesOf({ spot: SPOT }));
    expect(first?.kind === "refused" && first.error.message).toContain("give money for one gram");
  });
});

describe("what cannot be is told at its field", () => {
  test.each([
    ["both", { ...BY_WEIGHT, claspCost: "200" }, "Clasp premium: found 10 beside clasp cost; give one of the two"],
    [
      "a premium of no weight",
      { ...BY_WEIGHT, claspWeight: "" },
      "Clasp weight: found no weight beside clasp premium; give its grams, such as 2.1",
    ],
    [
      "findings of no weight",
      { ...FINDINGS, findingsWeight: "0", claspCost: "0" },
      "Weight of other findings: found no weight beside premium of other findings; give its grams, such as 2.1",
    ],
    [
      "a premium of a cast clasp",
      { ...BY_WEIGHT, clasp: "cast box clasp" },
      "Clasp premium: found 10 beside a cast clasp, whose gold is cast with the links; empty it",
    ],
    [
      "a premium of no clasp",
      { claspPremium: "10", clasp: "none" },
      "Clasp premium: found 10 where there is no clasp; empty it, or choose a clasp",
    ],
    ["a mark that is none", { ...BY_WEIGHT, claspMark: "25K" }, 'Mark of the clasp: found "25K"'],
  ])("%s", (_what, line, sentence) => {
    expect(faults(line).join("\n")).toContain(sentence);
  });
});

test("what is paid for by its weight is asked neither for a cost nor about its melt value", () => {
  const form = formOf({ ...BY_WEIGHT, ...FINDINGS, findingsPremium: "0" });
  const order = read(parsedOf({ ...BY_WEIGHT, ...FINDINGS, findingsPremium: "0" }));
  expect(orderQuestions(order, form, ratesOf({ spot: SPOT }))).toEqual([]);
});

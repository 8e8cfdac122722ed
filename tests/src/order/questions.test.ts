import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { parseOrder } from "../../../src/order/order";
import { orderQuestions } from "../../../src/order/questions";
import { money } from "../../../src/units/money";
import { ORDER, type Record_, ratesOf } from "../orders";

const { customer: _customer, spot: _spot, discount: _discount, ...LINE } = ORDER;
const RATES = ratesOf({ plating: "40" });

const asked = (...lines: readonly Record_[]) => {
  const form = {
    order: { customer: "A. Customer" },
    lines: lines.map((line) => ({ ...LINE, clasp: "none", ...line })),
    extras: [],
  };
  const read = parseOrder(form, RATES);
  if (!read.ok) throw new Error(read.faults.map(({ sentence }) => sentence).join("\n"));
  return orderQuestions(read.value, form, RATES);
};
const keyOf = (line: Record_) => asked(line).map(({ key }) => key);

/** A lobster clasp of 750 gold: 3 g of it at 100.00 a gram of fine gold are worth 225.00. */
const LOBSTER = { clasp: "bought lobster clasp", claspLength: "0.5", claspWeight: "3", claspCost: "300" };

/** Each of them doubtful in one figure, and the same figure otherwise doubtful. */
const DOUBTFUL: readonly (readonly [what: string, line: Record_, otherwise: Record_])[] = [
  ["a piece plated with a metal nobody has named", { colour: "white" }, { colour: "white", design: "Another" }],
  [
    "a clasp of which nothing is said",
    { clasp: "bought lobster clasp" },
    { clasp: "bought lobster clasp", claspLength: "0.5" },
  ],
  ["a clasp without a cost", { ...LOBSTER, claspCost: "" }, { ...LOBSTER, claspCost: "", claspWeight: "" }],
  ["a clasp without a weight", { ...LOBSTER, claspWeight: " " }, { ...LOBSTER, claspLength: "" }],
  ["a clasp below its melt value", { ...LOBSTER, claspCost: "224" }, { ...LOBSTER, claspCost: "223" }],
  ["findings without a cost", { findings: "Jump rings", findingsWeight: "0.4" }, { ...LOBSTER, claspCost: "" }],
  [
    "findings below their melt value",
    { findingsWeight: "1", findingsCost: "74" },
    { findingsWeight: "2", findingsCost: "74" },
  ],
  ["stones without a price", { stoneCount: "12" }, { stoneCount: "13" }],
  ["stones of the clasp without a price", { ...LOBSTER, claspStoneCount: "1" }, { ...LOBSTER, claspStoneCount: "2" }],
  ["an engraving without a cost", { engraving: "A & B" }, { findings: "Chain" }],
  ["a piece that is too long", { length: "41" }, { length: "42" }],
  ["links that are too many", { linksPer: "41", length: "10" }, { linksPer: "16.2", linksPerUnit: "cm", length: "10" }],
  ["links that are too few", { linksPer: "0.9" }, { linksPer: "0.3", linksPerUnit: "cm" }],
  [
    "a markup that is too high",
    { linePriceBy: "markup", linePriceFigure: "30" },
    { linePriceBy: "markup", linePriceFigure: "350 %" },
  ],
  ["a link that is too heavy", { linkWeight: "75" }, { linkWeight: "76" }],
  ["a link that is too light", { linkWeight: "0.02" }, { linkWeight: "0.021" }],
];

describe.each(DOUBTFUL)("%s", (_what, line, otherwise) => {
  test("is one question, not a fault, with its answers in words", () => {
    const [first, ...more] = asked(line);
    expect(more).toEqual([]);
    expect(first?.sentence).toMatch(/\?( |$)/);
    expect(first?.answers.map(({ words }) => words).every((words) => words !== "")).toBe(true);
    // Whoever is sure can say so.
    expect(first?.answers.some(({ does }) => does !== "go")).toBe(true);
    expect(first?.sentence.split(/(?<=[.?]) /).every((one) => one.split(" ").length <= 20)).toBe(true);
  });

  test("is not asked any more once an answer is typed", () => {
    const typed = asked(line).flatMap(({ answers }) =>
      answers.flatMap((each) => (each.does === "put" ? [each.texts] : [])),
    );
    for (const texts of typed) expect(asked({ ...line, ...texts })).toEqual([]);
  });

  test("is the same question for the same figure, and another for another", () => {
    expect(keyOf(line)).toEqual(keyOf(line));
    expect(keyOf(otherwise)).not.toEqual(keyOf(line));
    expect(asked(line, {}, line).map(({ lines }) => lines)).toEqual([[0, 2]]);
  });
});

test("a usual line is asked nothing, and what is typed as free neither", () => {
  expect(asked({}, LOBSTER)).toEqual([]);
  expect(
    asked(
      { ...LOBSTER, claspCost: "0" },
      { findings: "Jump rings", findingsWeight: "0.4", findingsCost: "0" },
      { stoneCount: "12", stonePrice: "0" },
      { engraving: "A & B", engravingCost: "0" },
      // Its gold is worth no more: 3 g x 75.00 a gram.
      { ...LOBSTER, claspCost: "225" },
    ),
  ).toEqual([]);
});

test("bought gold is asked where it costs less than its melt value, and there always", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 900 }), fc.integer({ min: 1, max: 90_000 }), (centigrams, cents) => {
      // 75.00 a gram of 750 gold: a hundredth of a gram is worth 75 cents.
      const part = { findingsWeight: String(centigrams / 100), findingsCost: (cents / 100).toFixed(2) };
      expect(asked(part).length).toBe(cents < 75 * centigrams ? 1 : 0);
    }),
  );
});

test("of the weight of a link it is asked outside 0.05 to 60 g, and there always", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1_000_000 }), (thousandths) => {
      const linkWeight = (thousandths / 1000).toFixed(3);
      expect(asked({ linkWeight }).length).toBe(thousandths < 50 || thousandths > 60_000 ? 1 : 0);
    }),
  );
});

const onceAsked = (rates: Record_, order: Record_ = {}, lastSpot?: string) => {
  const workshop = ratesOf(rates);
  const form = { order: { customer: "A. Customer", ...order }, lines: [{ ...LINE, clasp: "none" }], extras: [] };
  const read = parseOrder(form, workshop);
  if (!read.ok) throw new Error(read.faults.map(({ sentence }) => sentence).join("\n"));
  return orderQuestions(read.value, form, workshop, {
    lastSpot: lastSpot === undefined ? undefined : money(Quotient.of(lastSpot), "USD"),
  });
};
const placesOf = (questions: ReturnType<typeof onceAsked>) =>
  questions.flatMap(({ answers }) =>
    answers.flatMap((each) => (each.does === "go" ? [`${each.to.on} ${each.to.field}`] : [])),
  );

describe("of the whole order", () => {
  test.each([
    ["a markup on Rates above 300 %", { markup: "3.01" }, {}, "Rates markup", "A markup of 301% is more than 300%."],
    [
      "a markup of the order",
      {},
      { priceBy: "markup", priceFigure: "150" },
      "order priceFigure",
      "A markup of 15000% is",
    ],
    [
      "a loss above 20 %",
      { loss: "0.25", lossBasis: "cast" },
      {},
      "Rates loss",
      "A polishing loss of 25% is more than 20%.",
    ],
  ])("%s is asked, and where it is typed can be gone to", (_what, rates, order, place, said) => {
    const asked = onceAsked(rates, order);
    expect(asked.map(({ sentence }) => sentence).join()).toContain(said);
    expect(placesOf(asked)).toEqual([place]);
  });

  test("300 %, 20 % and grams of loss are not", () => {
    expect(onceAsked({ markup: "3", loss: "0.2", lossBasis: "cast" })).toEqual([]);
    expect(onceAsked({ loss: "25", lossBasis: "grams" })).toEqual([]);
  });
});

describe("a spot", () => {
  // 3,110.34768 / 31.1034768 is 100.00 a gram.
  const LAST = "3110.34768";
  test.each([
    ["that moved by 15 %", "3576.899832", LAST, undefined],
    ["that moved by more, up", "3600", LAST, "Spot is USD 3600.00, 16% above that of your last quote."],
    ["that moved by more, down", "2600", LAST, "Spot is USD 2600.00, 16% below that of your last quote."],
    ["that is a price per gram", "86", LAST, "Spot is USD 86.00 per troy ounce, which looks like a price per gram."],
    ["with no quote before", "2600", undefined, undefined],
    ["below 1,000 with no quote before", "999.99", undefined, "which looks like a price per gram."],
    ["of 1,000 with no quote before", "1000", undefined, undefined],
  ])("%s", (_what, spot, last, said) => {
    const asked = onceAsked({ spot }, {}, last);
    if (said === undefined) expect(asked).toEqual([]);
    else expect(asked[0]?.sentence).toContain(said);
  });

  test("typed for one order is corrected there, and in a currency of smaller units is not held to 1,000", () => {
    expect(placesOf(onceAsked({}, { spot: "900" }))).toEqual(["order spot"]);
    expect(onceAsked({ currency: "KWD", spot: "900" })).toEqual([]);
  });
});

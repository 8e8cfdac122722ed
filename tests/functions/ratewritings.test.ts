import { describe, expect, test } from "vitest";
import { RATE_KEYS, RATE_ROWS, type RateKey } from "../../src/rates/raterows";
import { FIGURE_KEYS, FIGURES, figureWritings, OPTIONAL_KEYS, WORD_KEYS, wordsOf, wordWritings } from "../ratewritings";
import { type CellError, cell } from "./built";

const HEADERS = [
  "Design",
  "Mark",
  "Colour",
  "Length (in)",
  "Links per in",
  "Weight of one link",
  "How many links",
  "Price of one stone",
];
const LINE = ["White", "18K", "white", 18, 4, 0.6, 12, 4.5];

type Written = Readonly<Partial<Record<RateKey, unknown>>>;

const USUAL: Written = {
  ...Object.fromEntries(FIGURE_KEYS.map((key) => [key, Number(FIGURES[key])])),
  currency: "USD",
  lossBasis: "cast",
  costBasis: "finished",
  priceBy: "markup",
  taxIs: "in the price",
  shippingTaxed: "yes",
  taxDue: "with the deposit",
};
const priced = (written: Written) => {
  const rates = Object.entries({ ...USUAL, ...written }).map(([key, value]) => [
    RATE_ROWS[key as RateKey].label,
    value,
  ]);
  return ["Landed cost", "Price", "Margin"].map((column) => cell("PRICELINE", [HEADERS], [LINE], rates, column));
};
const said = (key: RateKey, value: unknown) => cell("RATEVALUE", RATE_ROWS[key].label, value);

/** The functions that formulas of the add-in give a cell of Rates as it stands. */
const TAKEN: Readonly<Partial<Record<RateKey, (value: unknown) => readonly unknown[]>>> = {
  spot: (value) => [cell("METALRATE", value, "18K"), cell("MELTVALUE", 10, "18K", value)],
  castingFee: (value) => [cell("CASTINGCOST", 10, value, 5, 3), cell("MAKEORBUY", 10, 40, value, 20, 0.02, 3)],
  castingMinimum: (value) => [cell("CASTINGCOST", 10, 1.5, value, 3)],
  loss: (value) => ["CASTWEIGHT", "FINISHEDWEIGHT", "LOSTWEIGHT", "CHARGEDWEIGHT"].map((id) => cell(id, 10, value)),
  lossBasis: (value) => ["CASTWEIGHT", "FINISHEDWEIGHT", "LOSTWEIGHT"].map((id) => cell(id, 10, 0.025, value)),
  costBasis: (value) => ["LOSTWEIGHT", "CHARGEDWEIGHT"].map((id) => cell(id, 10, 0.025, "cast", value)),
  labourFlat: (value) => [cell("LABOURCOST", 40, 30, value, 0.3, 0.2, 5)],
  labourPerLink: (value) => [cell("LABOURCOST", 40, 30, 20, value, 0.2, 5)],
  labourPerGram: (value) => [cell("LABOURCOST", 40, 30, 20, 0.3, value, 5)],
  labourMinimum: (value) => [cell("LABOURCOST", 40, 30, 20, 0.3, 0.2, value)],
  surcharge: (value) => [cell("MAKEORBUY", 10, 40, 1.5, 20, 0.02, value)],
  priceBy: (value) => [cell("SELLINGPRICE", 100, 5, value, 0.3, 10, 40, 0.08, "in the price", 5, 2)],
  markup: (value) => [cell("SELLINGPRICE", 100, 5, "markup", value, 10, 40, 0.08, "", 0, 2)],
  margin: (value) => [cell("SELLINGPRICE", 100, 5, "margin", value, 10, 40, 0.08, "", 0, 2)],
  premium: (value) => [
    cell("SELLINGPRICE", 100, 5, "premium", value, 10, 40, 0.08, "", 0, 2),
    cell("PARTATPREMIUM", 2, 40, value, 5),
  ],
  priceStep: (value) => [cell("SELLINGPRICE", 100, 5, "markup", 0.3, 10, 40, 0.08, "", value, 2)],
  leastMargin: (value) => [cell("PRICEATMARGIN", 100, value)],
  tax: (value) => [cell("NETPRICE", 108, value, "in the price"), cell("SALESTAX", 108, value, "", 2)],
  taxDue: (value) => [cell("DEPOSITCOVERS", 100, 8, value)],
  taxIs: (value) => [cell("NETPRICE", 108, 0.08, value), cell("SALESTAX", 108, 0.08, value, 2)],
};
/** A minimum and a figure of another way of pricing show only where they are asked for. */
const SHOWN: Written = { castingMinimum: 0, labourMinimum: 0 };
const FOR: Readonly<Partial<Record<RateKey, Written>>> = {
  ...Object.fromEntries(["castingFee", "labourFlat", "labourPerLink", "labourPerGram"].map((key) => [key, SHOWN])),
  margin: { priceBy: "margin" },
  premium: { priceBy: "premium" },
};

const isFault = (value: unknown) => typeof value === "object" && value !== null && !Array.isArray(value);

test("every row of Rates that holds a figure or a word is looked at", () => {
  const others = RATE_KEYS.filter((key) => ["text", "date"].includes(RATE_ROWS[key].shown));
  expect([...FIGURE_KEYS, ...WORD_KEYS, ...others].toSorted()).toEqual([...RATE_KEYS].toSorted());
});

describe("a word of Rates says the same in other capitals and with spaces about it", () => {
  test.each(WORD_KEYS.flatMap((key) => wordsOf(key).map((word) => [RATE_ROWS[key].label, word, key] as const)))(
    "%s: %s",
    (_, word, key) => {
      const [price, taken] = [priced({ [key]: word }), TAKEN[key]?.(word)];
      expect([said(key, word), ...price, ...(taken ?? [])].filter(isFault)).toEqual([]);
      for (const writing of wordWritings(word)) {
        expect(said(key, writing), writing).toBe(word);
        expect(priced({ [key]: writing }), writing).toEqual(price);
        expect(TAKEN[key]?.(writing), writing).toEqual(taken);
      }
    },
  );
});

describe("a figure of Rates says the same as a text, with spaces about it and in per cent", () => {
  test.each(FIGURE_KEYS.map((key) => [RATE_ROWS[key].label, key] as const))("%s", (_, key) => {
    const figure = FIGURES[key] ?? "";
    const others = FOR[key] ?? {};
    const [price, taken] = [priced({ ...others, [key]: Number(figure) }), TAKEN[key]?.(Number(figure))];
    expect([...price, ...(taken ?? [])].filter(isFault)).toEqual([]);
    for (const writing of figureWritings(key, figure)) {
      if (key !== "loss") expect(said(key, writing), writing).toBe(Number(figure));
      expect(priced({ ...others, [key]: writing }), writing).toEqual(price);
      expect(TAKEN[key]?.(writing), writing).toEqual(taken);
    }
  });

  test.each(OPTIONAL_KEYS.map((key) => [RATE_ROWS[key].label, key] as const))("%s: spaces are a blank", (_, key) => {
    const nothing = [null, "", " ", "\u00a0 "];
    const [plain] = nothing.map((each) => [said(key, each), ...priced({ [key]: each }), ...(TAKEN[key]?.(each) ?? [])]);
    // The least margin is read before PRICEATMARGIN takes it, which takes no blank.
    if (key !== "leastMargin") expect(plain?.filter(isFault)).toEqual([]);
    for (const each of nothing) {
      const told = [said(key, each), ...priced({ [key]: each })];
      expect(told, JSON.stringify(each)).toEqual(plain?.slice(0, told.length));
      if (key !== "leastMargin") expect(TAKEN[key]?.(each) ?? []).toEqual(plain?.slice(told.length));
    }
  });
});

describe("what cannot be read is told with a sentence, by the function that takes the cell", () => {
  test.each([...FIGURE_KEYS, ...WORD_KEYS].map((key) => [RATE_ROWS[key].label, key] as const))("%s", (label, key) => {
    const others = FOR[key] ?? {};
    const alone = key === "loss" ? [] : [said(key, "abc")];
    for (const told of [...alone, ...priced({ ...others, [key]: "abc" })] as CellError[])
      expect(told).toEqual({ code: "#VALUE!", message: expect.stringContaining(`${label}: found "abc"`) });
    for (const told of (TAKEN[key]?.("abc") ?? []) as CellError[])
      expect(told).toEqual({ code: "#VALUE!", message: expect.stringMatching(/^\w+: found "abc"/) });
  });
});

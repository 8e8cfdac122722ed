import { describe, expect, it } from "vitest";
import { ORDER_KEYS, parseRates, RATE_KEYS, RATE_ROWS, type Rates } from "../../src/index";
import { type Costed, missing, type Reckoning, reckon, type Typed, wrong } from "../../taskpane/reckoning";

const DATE = "2026-03-02";
const EMPTY = Object.fromEntries(ORDER_KEYS.map((key) => [key, ""])) as Typed;
const FRESH: Typed = {
  ...EMPTY,
  colour: "yellow",
  plated: "as usual",
  lengthUnit: "in",
  linksPerUnit: "in",
  quantity: "1",
};
const FILLED: Typed = {
  ...FRESH,
  customer: "Ana Wilder",
  design: "Harbour curb",
  mark: "14K",
  length: "24",
  linksPer: "4",
  linkWeight: "2",
};

const fields = (faults: readonly { readonly field: string }[]) => faults.map(({ field }) => field);

describe("what a form amounts to", () => {
  it("is blank while nothing is wrong and a price needs more", () => {
    const reckoning = reckon(FRESH, rates(), DATE);
    expect(reckoning.kind).toBe("blank");
    expect(fields(reckoning.faults)).toEqual(["customer", "design", "mark", "length", "linksPer", "linkWeight"]);
    expect(wrong(reckoning, FRESH)).toEqual([]);
  });

  it("is faulty as soon as one thing typed is wrong, whatever else is still to fill", () => {
    const typed = { ...FRESH, mark: "25K" };
    const reckoning = reckon(typed, rates(), DATE);
    expect(reckoning.kind).toBe("faulty");
    expect(fields(wrong(reckoning, typed))).toEqual(["mark"]);
    expect(fields(missing(reckoning, typed))).toEqual(["customer", "design", "length", "linksPer", "linkWeight"]);
  });

  it("names faults from the top of the form to its end", () => {
    const typed = { ...FILLED, discount: "2", mark: "14.5.2", length: "-24" };
    expect(fields(reckon(typed, rates(), DATE).faults)).toEqual(["mark", "length", "discount"]);
  });

  // Common practice: 4 links per inch, 24 inches, 2 g a link make 96 links of 192 g.
  it("is costed once the order can be read", () => {
    const { quote, sheets } = costed(reckon(FILLED, rates(), DATE));
    expect(quote.customer).toBe("Ana Wilder");
    expect(sheets.map(({ line }) => line.links.toNumber())).toEqual([96]);
    expect(sheets.map(({ finishedWeight }) => finishedWeight.grams.toNumber())).toEqual([192]);
  });

  it("shows the same price before the quote's names are given, and asks for them", () => {
    const unnamed = reckon({ ...FILLED, customer: " ", design: "" }, rates(), DATE);
    expect(fields(unnamed.faults)).toEqual(["customer", "design"]);
    const price = (reckoning: Reckoning) => costed(reckoning).quote.total.amount;
    expect(price(unnamed).equals(price(reckon(FILLED, rates(), DATE)))).toBe(true);
  });

  it("gives no price without names for a chain that could not be made with them", () => {
    const typed = { ...FILLED, customer: "", claspLength: "30" };
    const reckoning = reckon(typed, rates(), DATE);
    expect(reckoning.kind).toBe("faulty");
    expect(fields(wrong(reckoning, typed))).toEqual(["length"]);
    expect(fields(missing(reckoning, typed))).toEqual(["customer"]);
  });

  it("asks for a look at plating when Rates say no cost for it", () => {
    const typed = { ...FILLED, colour: "white" };
    const reckoning = reckon(typed, rates(), DATE);
    expect(reckoning.kind).toBe("faulty");
    expect(fields(wrong(reckoning, typed))).toEqual(["plated"]);
    expect(reckon(typed, rates({ plating: "30" }), DATE).kind).toBe("costed");
  });
});

function rates(own: Readonly<Record<string, string>> = {}): Rates {
  const start = Object.fromEntries(RATE_KEYS.map((key) => [key, RATE_ROWS[key].start]));
  const parsed = parseRates({ ...start, spot: "2650", ...own });
  if (!parsed.ok) throw new Error(parsed.faults.map(({ sentence }) => sentence).join("\n"));
  return parsed.value;
}

function costed(reckoning: Reckoning): Costed {
  if (reckoning.kind !== "costed") throw new Error(`found ${reckoning.kind}: ${fields(reckoning.faults).join(", ")}`);
  return reckoning.costed;
}

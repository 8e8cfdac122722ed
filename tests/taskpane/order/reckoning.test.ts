import { describe, expect, it } from "vitest";
import { type LineKey, type OrderKey, parseRates, RATE_KEYS, RATE_ROWS, type Rates } from "../../../src/index";
import { labelsOf } from "../../../taskpane/order/faultplace";
import { type Costed, missing, type Reckoning, reckon, type Typed, wrong } from "../../../taskpane/order/reckoning";
import { blankOrder } from "../../src/typedorders";

const DATE = "2026-03-02";
const UNITS = { colour: "yellow", plated: "as usual", lengthUnit: "in", linksPerUnit: "in", quantity: "1" };
const FRESH = withLine(blankOrder(), UNITS);
const CURB = { design: "Harbour curb", mark: "14K", length: "24", linksPer: "4", linkWeight: "2" };
const FILLED = withOrder(withLine(FRESH, CURB), { customer: "Ana Wilder" });

const fields = (faults: readonly { readonly field: string }[]) => faults.map(({ field }) => field);

describe("what a form amounts to", () => {
  it("is blank while nothing is wrong and a price needs more", () => {
    const reckoning = reckon(FRESH, rates(), DATE);
    expect(reckoning.kind).toBe("blank");
    expect(fields(reckoning.faults)).toEqual(["customer", "design", "mark", "length", "linksPer", "linkWeight"]);
    expect(wrong(reckoning, FRESH)).toEqual([]);
  });

  it("is faulty as soon as one thing typed is wrong, whatever else is still to fill", () => {
    const typed = withLine(FRESH, { mark: "25K" });
    const reckoning = reckon(typed, rates(), DATE);
    expect(reckoning.kind).toBe("faulty");
    expect(fields(wrong(reckoning, typed))).toEqual(["mark"]);
    expect(fields(missing(reckoning, typed))).toEqual(["customer", "design", "length", "linksPer", "linkWeight"]);
  });

  it("names faults from the top of the form to its end", () => {
    const typed = withOrder(withLine(FILLED, { mark: "14.5.2", length: "-24" }), { discount: "2" });
    const labels = labelsOf(reckon(typed, rates(), DATE).faults, typed);
    expect(labels).toEqual(["Mark", "Length", "Discount"]);
  });

  // Common practice: 4 links per inch, 24 inches, 2 g a link make 96 links of 192 g.
  it("is costed once the order can be read", () => {
    const { quote, sheets } = costed(reckon(FILLED, rates(), DATE));
    expect(quote.customer).toBe("Ana Wilder");
    expect(sheets.map(({ line }) => line.links.toNumber())).toEqual([96]);
    expect(sheets.map(({ finishedWeight }) => finishedWeight.grams.toNumber())).toEqual([192]);
  });

  it("shows the same price before the quote's names are given, and asks for them", () => {
    const unnamed = reckon(withOrder(withLine(FILLED, { design: "" }), { customer: " " }), rates(), DATE);
    expect(fields(unnamed.faults)).toEqual(["customer", "design"]);
    const price = (reckoning: Reckoning) => costed(reckoning).quote.total.amount;
    expect(price(unnamed).equals(price(reckon(FILLED, rates(), DATE)))).toBe(true);
  });

  it("gives no price without names for a chain that could not be made with them", () => {
    const typed = withOrder(withLine(FILLED, { claspLength: "30" }), { customer: "" });
    const reckoning = reckon(typed, rates(), DATE);
    expect(reckoning.kind).toBe("faulty");
    expect(fields(wrong(reckoning, typed))).toEqual(["length"]);
    expect(fields(missing(reckoning, typed))).toEqual(["customer"]);
  });

  it("asks for a look at plating when Rates say no cost for it", () => {
    const typed = withLine(FILLED, { colour: "white" });
    const reckoning = reckon(typed, rates(), DATE);
    expect(reckoning.kind).toBe("faulty");
    expect(fields(wrong(reckoning, typed))).toEqual(["plated"]);
    expect(reckon(typed, rates({ plating: "30" }), DATE).kind).toBe("costed");
  });
});

describe("an order of several lines", () => {
  const three: Typed = {
    ...FILLED,
    lines: [...FILLED.lines, ...withLine(FILLED, { mark: "25K" }).lines, ...withLine(FILLED, { length: "" }).lines],
  };

  it("names the line of each fault, from the top of the form to its end", () => {
    const reckoning = reckon({ ...three, extras: [{ text: "Box", amount: "x", cost: "" }] }, rates(), DATE);
    expect(reckoning.kind).toBe("faulty");
    expect(labelsOf(wrong(reckoning, three), three)).toEqual(["Line 2: Mark", "Amount"]);
    expect(labelsOf(missing(reckoning, three), three)).toEqual(["Line 3: Length"]);
  });

  it("has no price while a free line takes off more than the rest comes to, and says so there", () => {
    const off = (amount: string) => reckon({ ...FILLED, extras: [{ text: "Gift", amount, cost: "" }] }, rates(), DATE);
    const total = costed(off("0")).quote.total.amount.toNumber();
    expect(off(`-${total}`).kind).toBe("costed");
    const below = off(`-${total + 1}`);
    expect(below.kind).toBe("faulty");
    expect(below.faults).toMatchObject([{ field: "amount", extra: 0 }]);
    expect(below.faults[0]?.sentence).toMatch(/^Amount: found "-\d+", which takes off more than the rest comes to/);
  });

  it("has no price while a figure can be read in two ways, though the library would read it", () => {
    const misread = { field: "linkWeight", code: "notANumber", sentence: "Weight of one link: …", line: 0 } as const;
    const reckoning = reckon(FILLED, rates(), DATE, [misread]);
    expect(reckoning).toEqual({ kind: "faulty", faults: [misread] });
    expect(wrong(reckoning, FILLED)).toEqual([misread]);
  });
});

function withLine(typed: Typed, own: Partial<Record<LineKey, string>>): Typed {
  return { ...typed, lines: typed.lines.map((line) => ({ ...line, ...own })) };
}

function withOrder(typed: Typed, own: Partial<Record<OrderKey, string>>): Typed {
  return { ...typed, order: { ...typed.order, ...own } };
}

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

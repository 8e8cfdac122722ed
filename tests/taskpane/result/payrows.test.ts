import { expect, it } from "vitest";
import { type LineKey, type OrderKey, parseRates, RATE_KEYS, RATE_ROWS, type TypedExtra } from "../../../src/index";
import { type Costed, reckon } from "../../../taskpane/order/reckoning";
import { castRows, goldRows, stoneRows } from "../../../taskpane/result/castrows";
import { isPlain, lineRows, payRows } from "../../../taskpane/result/payrows";
import { costLineRows, type Row } from "../../../taskpane/result/resultrows";
import { blankOrder } from "../../src/typedorders";

/** 100 g of fine gold at 25.00 a gram, 2 lost, 1.50 cast, 50 labour: 2,753; x 1.3, up to the step of 1: 3,579. */
const LINE = {
  design: "Plain curb",
  mark: "1000",
  colour: "yellow",
  quantity: "1",
  length: "12.5",
  lengthUnit: "in",
  linksPer: "4",
  linksPerUnit: "in",
  linkWeight: "2",
};
const RATES = {
  ...Object.fromEntries(RATE_KEYS.map((key) => [key, RATE_ROWS[key].start])),
  spot: "777.58692",
  loss: "2",
  lossBasis: "grams",
};

interface Asked {
  readonly order?: Partial<Record<OrderKey, string>>;
  readonly lines?: readonly Partial<Record<LineKey, string>>[];
  readonly extras?: readonly TypedExtra[];
  readonly rates?: Readonly<Record<string, string>>;
}

function costed({ order = {}, lines = [{}], extras = [], rates = {} }: Asked): Costed {
  const blank = blankOrder(lines.length);
  const read = parseRates({ ...RATES, ...rates });
  if (!read.ok) throw new Error("The rates cannot be read");
  const typed = {
    order: { ...blank.order, customer: "Ada Quillfeather", ...order },
    lines: blank.lines.map((line, index) => ({ ...line, ...LINE, ...lines[index] })),
    extras,
  };
  const reckoning = reckon(typed, read.value, "2026-03-02");
  if (reckoning.kind !== "costed") throw new Error(reckoning.faults.map(({ sentence }) => sentence).join("\n"));
  return reckoning.costed;
}

const said = (rows: readonly Row[]) =>
  rows.map(({ term, value, remark }) => [term, value, remark].filter(Boolean).join(" | ").replace(/\s/g, " "));

it("one piece needs no more than its deposit and balance", () => {
  const one = costed({});
  expect(isPlain(one)).toBe(true);
  // Half would be 1,789.50; 2,753 go out first, the labour of 50 among them, 76.9 % of 3,579: 80 % are 2,863.20, up to 2,864.
  expect(said(payRows(one))).toEqual([
    "Deposit | USD 2,864.00 | raised from 50% to 80%, to cover the USD 2,753.00 that you pay out first",
    "Balance | USD 715.00",
  ]);
  expect(castRows(one)).toEqual([]);
  expect(goldRows(one)).toEqual([]);
  expect(stoneRows(one)).toEqual([]);
});

it("tax in the price is said after the total that holds it", () => {
  // 2,753 x 1.3 x 1.25 = 4,473.625, up to 4,474; 4,474 / 5 = 894.80. Cash out 2,703 is 60.4 %: 65 % are 2,908.10, up to 2,909.
  const one = costed({ rates: { tax: "0.25", taxIs: "in the price", taxName: "VAT" }, order: { shipping: "26" } });
  expect(said(payRows(one)).slice(0, 3)).toEqual([
    "Shipping | USD 26.00",
    "Total | USD 4,500.00",
    "of which VAT | USD 894.80",
  ]);
});

it("several lines and a free line are summed and named one by one", () => {
  const two = costed({
    lines: [{ quantity: "2" }, { solidity: "hollow", design: "River curb" }],
    extras: [{ text: "Old chain repaired", amount: "-15", cost: "" }],
  });
  expect(isPlain(two)).toBe(false);
  expect(said(lineRows(two))).toEqual([
    "1 Plain curb | USD 7,158.00 | 2 × USD 3,579.00; 50 links, about 100.0 g a piece",
    "2 River curb | USD 3,579.00 | 1 × USD 3,579.00; 50 links, about 100.0 g a piece, hollow",
  ]);
  expect(said(payRows(two)).slice(0, 3)).toEqual([
    "All pieces | USD 10,737.00",
    "Old chain repaired | -USD 15.00",
    "Total | USD 10,722.00",
  ]);
  // One alloy, whatever the line: three pieces of 102 g.
  expect(said(castRows(two))).toEqual([
    "Cast, 1000 yellow | 306.00 g | 150 links: 75 closed, 75 open",
    "Fine gold to buy | 306.00 g",
  ]);
});

it("a customer's gold worth more than the work is paid out", () => {
  // 160 g of fine gold at 25: 4,000 against 3,579.
  const one = costed({ order: { ownGoldWeight: "160", ownGoldMark: "1000", ownGoldShare: "1" } });
  expect(said(payRows(one))).toEqual([
    "Customer's gold | -USD 4,000.00 | 160.00 g 1000",
    "To pay to the customer | USD 421.00",
  ]);
  expect(said(goldRows(one))).toEqual(["Brought | 160.00 g", "In what is cast | 102.00 g", "Credit | USD 4,000.00"]);
});

it("a customer's gold that is used goes back where it is not needed", () => {
  const one = costed({
    order: { ownGoldWeight: "160", ownGoldMark: "1000", ownGoldUse: "used", ownGoldShare: "1" },
  });
  expect(said(goldRows(one)).slice(2)).toEqual([
    "Used in this work | 102.00 g",
    "Goes back | 58.00 g",
    "Credit | USD 2,550.00",
  ]);
  expect(said(castRows(one)).at(-1)).toBe("Fine gold to buy | 0.00 g");
});

it("stones to buy hold those that setting breaks, in whole stones, by link and by clasp", () => {
  const stones = { stonesOn: "all links", stonesPerLink: "2", stoneShape: "rectangular", breakage: "0.03" };
  const sizes = { stoneLength: "3", stoneWidth: "1.5", claspStoneCount: "1", claspStoneCarat: "0.5" };
  const one = costed({ lines: [{ ...stones, ...sizes, quantity: "3" }] });
  // 300 x 1.03 = 309; 3 x 1.5 x 0.975 x 0.00915 = 0.0401… ct. Clasp: 3 x 1.03 = 3.09, so 4.
  expect(said(stoneRows(one))).toEqual([
    "For the links | 309 of 3 x 1.5 mm | about 0.04 ct each by the size",
    "For the clasp | 4 | 0.5 ct each",
  ]);
  const named = { ...stones, ...sizes, stoneKind: "sapphire" };
  // 0.0401… x 4 / 3.52 = 0.0456…
  expect(said(stoneRows(costed({ lines: [{ ...named, stoneGravity: "4" }] })))[0]).toBe(
    "For the links | 103 sapphire, 3 x 1.5 mm | about 0.046 ct each by the size",
  );
  expect(said(stoneRows(costed({ lines: [named] })))[0]).toContain(
    "about 0.04 ct each, were it a diamond (specific gravity 3.52): weigh one",
  );
});

it("cost lines that come to nothing are not listed", () => {
  const one = costed({ lines: [{ clasp: "none", engraving: "For Ada" }] });
  const [sheet] = one.sheets;
  const [nothing] = blankOrder(1).lines;
  // 100 x 25, 2 x 25, 102 x 1.5 and 50.
  const listed = (texts: Partial<Record<LineKey, string>>) =>
    sheet && nothing && said(costLineRows(sheet, { ...nothing, ...texts }));
  expect(listed({ claspCost: "0", stonePrice: "0" })).toEqual(
    expect.arrayContaining(["Clasp | free | you typed 0", "Stones | free | you typed 0"]),
  );
  expect(listed({})).toEqual([
    "Metal in the cast parts | USD 2,500.00",
    "Metal lost in polishing | USD 50.00",
    "Casting | USD 153.00",
    "Labour | USD 50.00",
    "Landed cost | USD 2,753.00",
  ]);
});

import { expect, test } from "vitest";
import { type MustBringKey, parseMustBring, usualMargin } from "../../../src/margins/targetprice";
import { ratesOf } from "../orders";
import { published } from "../published";

const TYPED: Record<MustBringKey, string> = { premium: "8", margin: "30 %", heavierBy: "" };
const faults = (changes: Partial<typeof TYPED>) => {
  const read = parseMustBring({ ...TYPED, ...changes }, ratesOf());
  return read.ok ? [] : read.faults.map(({ sentence }) => sentence);
};

test("8 and 30 % are money a gram and a share; heavier links where nothing is said", () => {
  const read = parseMustBring(TYPED, ratesOf({ currency: "EUR" }));
  expect(read.ok && [read.value.premium?.perGram.toNumber(), read.value.premium?.currency]).toEqual([8, "EUR"]);
  expect(read.ok && read.value.margin.toNumber()).toBe(0.3);
  expect(read.ok && read.value.heavierBy).toBe("heavier links");
});

test("without a market premium there is still a margin to be wanted", () => {
  const read = parseMustBring({ ...TYPED, premium: " " }, ratesOf());
  expect(read.ok && [read.value.premium, read.value.margin.toNumber()]).toEqual([undefined, 0.3]);
});

test("each field's fault names it, what was found and what would be right", () => {
  expect(faults({ premium: "much" })).toEqual([
    'Market premium: found "much", which is not a plain number; give what the market pays a gram over the metal rate, such as 8',
  ]);
  expect(faults({ premium: "-2" })[0]).toContain('Market premium: found "-2"');
  expect(faults({ margin: "30" })).toEqual([
    'Wanted margin: found "30"; give a share of the price from 0 to below 1, such as 0.30 or 30 %',
  ]);
  expect(faults({ margin: "100 %" })[0]).toContain("Wanted margin");
  expect(faults({ heavierBy: "width" })[0]).toContain('Heavier by: found "width"; give one of');
  expect(faults({ premium: "x", margin: "" })).toHaveLength(2);
});

test("the usual margin of a markup is the published one: 25 % of cost is 20 % of price", () => {
  const [row] = published<{ rows: readonly { readonly markup: string; readonly margin: string }[] }>(
    "markup-margin.json",
  ).rows;
  const rates = ratesOf({ priceBy: "markup", markup: row?.markup });
  expect(usualMargin(rates).toNumber()).toBe(Number(row?.margin));
});

test("priced by margin it is that margin, by premium the least margin", () => {
  expect(usualMargin(ratesOf({ priceBy: "margin", margin: "0.35" })).toNumber()).toBe(0.35);
  expect(usualMargin(ratesOf({ priceBy: "premium", premium: "9", leastMargin: "0.15" })).toNumber()).toBe(0.15);
});

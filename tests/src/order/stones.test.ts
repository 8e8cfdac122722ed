import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { makeStones, readStones, rectangularCarats, roundCarats, type StonePlace } from "../../../src/order/stones";
import { type Record_, ratesOf, read } from "../orders";
import { published } from "../published";

const RATES = ratesOf({ settingFee: "1", breakage: "0.1" });
const of = (text: string) => Quotient.of(text);
const placed = (where: StonePlace["where"]): StonePlace => ({
  where,
  which: where === "links" ? "12 links" : "",
  links: of(where === "links" ? "12" : "0"),
  count: of("12"),
  follows: undefined,
});
const parsedOf = (record: Record_, where: StonePlace["where"]) => {
  const parts = readStones(where, record, RATES.currency);
  return parts.ok ? makeStones(placed(where), parts.value, RATES.breakage, RATES) : parts;
};
const stonesOf = (record: Record_, where: StonePlace["where"] = "links") => read(parsedOf(record, where));
const faultOf = (record: Record_, where: StonePlace["where"] = "links") => {
  const parsed = parsedOf(record, where);
  return parsed.ok ? undefined : parsed.faults[0];
};

/** Gemmology teaching formulas and a stone weighed by them; see the table. */
const STONES = published<{
  readonly rows: readonly {
    readonly diameter: string;
    readonly depth: string;
    readonly carats: string;
    readonly shape: string;
  }[];
}>("stone-weight.json");

describe("carat by formula", () => {
  test.each(STONES.rows)("a $shape stone of $diameter mm, $depth mm deep: $carats ct (published)", (row) => {
    const carats = roundCarats(of(row.diameter), of(row.depth));
    expect(carats.rounded(2).toFixed(2)).toBe(row.carats);
  });

  test("a baguette of 4 x 2 mm, 1.5 mm deep: 4 x 2 x 1.5 x 0.00915 = 0.1098 ct (hand arithmetic)", () => {
    expect(rectangularCarats(of("4"), of("2"), of("1.5")).value().toString()).toBe("0.1098");
  });

  test("without a depth a round one is 60 % of its diameter deep (common practice): 2 mm are 2 x 2 x 1.2 x 0.0061", () => {
    const { carat, caratFrom, size } = stonesOf({ stoneDiameter: "2" });
    expect(carat?.value().toString()).toBe("0.02928");
    expect([caratFrom, size]).toEqual(["size", "2 mm round"]);
  });

  test("without a depth a rectangular one is 65 % of its width deep (common practice): 3 x 2 x 1.3 x 0.00915", () => {
    const stones = stonesOf({ claspStoneShape: "rectangular", claspStoneLength: "3", claspStoneWidth: "2" }, "clasp");
    expect(stones.carat?.value().toString()).toBe("0.07137");
    expect(stones.size).toBe("3 x 2 mm");
  });

  test("a weighed stone's carat goes before the formula's", () => {
    const { carat, caratFrom } = stonesOf({ stoneDiameter: "2", stoneCarat: "0.03", stoneGravity: "4" });
    expect([carat?.value().toString(), caratFrom]).toEqual(["0.03", "scale"]);
  });

  test("of a specific gravity of 4.4 it is a diamond's of that size x 4.4 / 3.52: 0.02928 x 1.25 (hand arithmetic)", () => {
    const { carat, caratFrom, kind } = stonesOf({ stoneDiameter: "2", stoneKind: "Garnet ", stoneGravity: "4.4" });
    expect([carat?.value().toString(), caratFrom, kind]).toEqual(["0.0366", "size", "Garnet"]);
  });

  test.each([
    ["", "size"],
    ["Lab-grown diamond", "size"],
    ["Diamant", "size"],
    ["brilliant", "size"],
    ["sapphire", "a diamond's size"],
    ["brilliant-cut topaz", "a diamond's size"],
  ])("of a stone called %j, without its specific gravity, it comes from %s", (stoneKind, from) => {
    expect(stonesOf({ stoneDiameter: "2", stoneKind }).caratFrom).toBe(from);
  });
});

describe("price of one stone", () => {
  test("given for a stone", () => {
    expect(stonesOf({ stonePrice: "8" }).price.amount.value().toString()).toBe("8");
  });

  test("given for a carat, by weight: 0.03 ct at 400 are 12 (hand arithmetic)", () => {
    const { price } = stonesOf({ stonePrice: "400", stonePriced: "a carat", stoneCarat: "0.03" });
    expect(price.amount.value().toString()).toBe("12");
  });

  test("the setting fee is the workshop's where none is given", () => {
    const usual = stonesOf({});
    expect(usual.settingFee.amount.value().toString()).toBe("1");
    const own = stonesOf({ settingFee: "2.5" });
    expect(own.settingFee.amount.value().toString()).toBe("2.5");
  });
});

describe("bad input: one sentence that names the field, what was found and what would be right", () => {
  test.each<[Record_, string, string]>([
    [
      { stonePrice: "400", stonePriced: "a carat" },
      "stoneCarat",
      "Carat of one stone: found nothing for stones priced by the carat; give the carat of one, or its size",
    ],
    [{ stoneDiameter: "-2" }, "stoneDiameter", 'Stone diameter: found "-2"; give millimetres above 0, such as 2'],
    [
      { stoneGravity: "0" },
      "stoneGravity",
      'Specific gravity of the stone: found "0"; give how many times heavier than water it is, such as 4',
    ],
    [{ stoneShape: "heart" }, "stoneShape", 'Stone shape: found "heart"; give one of "round", "rectangular"'],
    [{ stoneShape: "rectangular", stoneLength: "3" }, "stoneWidth", "Stone width: found nothing beside the other side"],
    [{ stonePriced: "a gram" }, "stonePriced", 'Stones priced by: found "a gram"; give one of "a stone", "a carat"'],
  ])("%j", (record, field, sentence) => {
    const fault = faultOf(record);
    expect(fault?.field).toBe(field);
    expect(fault?.sentence.startsWith(sentence)).toBe(true);
  });

  test("on the clasp the clasp's fields are named", () => {
    expect(faultOf({ claspStoneCarat: "x" }, "clasp")).toMatchObject({
      field: "claspStoneCarat",
      sentence: expect.stringMatching(/^Carat of one clasp stone: found "x"/),
    });
  });
});

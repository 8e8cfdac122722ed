import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { makeStones, readStones, type StonePlace } from "../../../src/order/stones";
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
  readonly rows: readonly { readonly diameter: string; readonly depth: string; readonly carats: string }[];
}>("stone-weight.json");

describe("carat by size", () => {
  test.each(STONES.rows)("a round diamond of $diameter mm, $depth mm deep: $carats ct (published)", (row) => {
    const { carat } = stonesOf({ stoneDiameter: row.diameter, stoneDepth: row.depth });
    expect(carat?.rounded(2).toFixed(2)).toBe(row.carats);
  });

  test("a round diamond of 6.08 mm, 3.63 mm deep: 0.82 ct, and 0.83 with 2 % for its girdle (published stone carats)", () => {
    const stone = { stoneKind: "diamond", stoneDiameter: "6.08", stoneDepth: "3.63" };
    expect(stonesOf(stone).carat?.rounded(2).toFixed(2)).toBe("0.82");
    expect(
      stonesOf({ ...stone, stoneAdjustment: "1.02" })
        .carat?.rounded(2)
        .toFixed(2),
    ).toBe("0.83");
  });

  test("the oval and the marquise of the same table, by their two sides and depth", () => {
    const oval = { stoneShape: "oval", stoneLength: "8.06", stoneWidth: "5.89", stoneDepth: "3.98" };
    // 1.07 x 1.03
    expect(
      stonesOf({ ...oval, stoneAdjustment: "1.1021" })
        .carat?.rounded(2)
        .toFixed(2),
    ).toBe("1.32");
    const marquise = { stoneShape: "marquise", stoneLength: "10.24", stoneWidth: "6.11", stoneDepth: "4.75" };
    expect(
      stonesOf({ ...marquise, stoneAdjustment: "1.035" })
        .carat?.rounded(2)
        .toFixed(2),
    ).toBe("1.75");
  });

  test("a princess has none without a factor, and no cut but round and rectangular has one without a depth", () => {
    const princess = { stoneShape: "princess", stoneLength: "5", stoneWidth: "5", stoneDepth: "4" };
    expect(stonesOf(princess).carat).toBeUndefined();
    expect(
      stonesOf({ ...princess, stoneFactor: "0.0083" })
        .carat?.value()
        .toString(),
    ).toBe("0.83");
    const oval = { stoneShape: "oval", stoneLength: "5", stoneWidth: "4" };
    expect(stonesOf(oval).carat).toBeUndefined();
    expect(stonesOf(oval).size).toBe("5 x 4 mm oval");
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

  // Until coloured stones had factors of their own, theirs was a diamond's x 4.4 / 3.52: two families in one figure.
  test("of a specific gravity of 4.4 it goes by the coloured stones' factor: 2 x 2 x 1.2 x 0.0018 x 4.4 (hand arithmetic)", () => {
    const { carat, caratFrom, kind } = stonesOf({ stoneDiameter: "2", stoneKind: "Garnet ", stoneGravity: "4.4" });
    expect([carat?.value().toString(), caratFrom, kind]).toEqual(["0.038016", "size", "Garnet"]);
  });

  test("a diamond goes by a diamond's factor, whatever stands as its specific gravity", () => {
    const { carat } = stonesOf({ stoneDiameter: "2", stoneKind: "diamond", stoneGravity: "3.52" });
    expect(carat?.value().toString()).toBe("0.02928");
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
    [{ stoneShape: "star" }, "stoneShape", 'Stone shape: found "star"; give one of "round", "oval", "pear"'],
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

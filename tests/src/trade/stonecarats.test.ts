import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { type CaratFamily, caratsBySize, STONE_CUTS, type StoneCut, sideRatio } from "../../../src/trade/stonecarats";
import { published } from "../published";

interface Row {
  readonly source: string;
  readonly shape?: string;
  readonly check?: string;
  readonly diameter?: string;
  readonly length?: string;
  readonly width?: string;
  readonly depth?: string;
  readonly adjustment?: string;
  readonly ratio?: string;
  readonly carats?: string;
  readonly from?: string;
  readonly to?: string;
  readonly expected?: string;
  readonly note?: string;
}
const TABLE = published<{
  readonly rows: readonly Row[];
  readonly factors: Readonly<Record<string, unknown>>;
}>("stone-carats.json");
const q = (text: string) => Quotient.of(text);
const two = (value: Quotient | undefined) => value?.rounded(2).toFixed(2);
const DIAMOND: CaratFamily = { family: "diamond" };
const ofGravity = (gravity: string): CaratFamily => ({ family: "coloured stone", gravity: q(gravity) });

/** "1.07 x 1.03" as one factor. */
const product = (text = "1") => text.split(" x ").reduce((all, each) => all.times(q(each)), Quotient.one);
const isCut = (shape: string | undefined): shape is StoneCut => STONE_CUTS.some((cut) => cut === shape);

describe("a printed worked example (published stone carats)", () => {
  const worked = TABLE.rows.filter(({ shape, carats }) => carats && isCut(shape));
  test("is there for each cut that has one in print", () => {
    expect([...new Set(worked.map(({ shape }) => shape))].sort()).toEqual(["marquise", "oval", "round", "triangle"]);
  });

  test.each(worked)("$shape, $length$diameter x $width mm, $depth mm deep: $carats ct ($source)", (row) => {
    const { shape, diameter = "", length = diameter, width = diameter, depth = "" } = row;
    if (!isCut(shape)) throw new Error(`${shape} is no cut`);
    // The oval's printed mean diameter is the mean of its two sides; where a row has both, the sides count.
    const size = { cut: shape, length: q(length), width: q(width), depth: q(depth) };
    expect(two(caratsBySize(size, DIAMOND, { adjustment: product(row.adjustment) }))).toBe(row.carats);
  });

  test("by the diameter alone is another formula, and is not met", () => {
    const [row] = TABLE.rows.filter(({ shape }) => shape?.startsWith("round, diameter only"));
    expect(row?.note).toContain("not met");
  });
});

test.each(TABLE.rows.filter(({ check }) => check === "ratio"))("$length : $width is $expected (published)", (row) => {
  const sides = { length: q(row.length ?? ""), width: q(row.width ?? "") };
  expect(two(sideRatio(sides))).toBe(row.expected);
  expect(two(sideRatio({ length: sides.width, width: sides.length }))).toBe(row.expected);
});

test.each(TABLE.rows.filter(({ check }) => check === "another stone, same size"))(
  "$carats ct of specific gravity $from are $expected ct of $to in the same size and cut (published)",
  ({ carats = "", from = "", to = "", expected }) => {
    expect(two(asAnother(carats, from, to))).toBe(expected);
  },
);

/** The carat of a stone of another specific gravity in the size and cut of one whose carat is known. */
function asAnother(carats: string, from: string, to: string): Quotient | undefined {
  const of = (gravity: string) =>
    caratsBySize({ cut: "round", length: q("2"), width: q("2"), depth: q("1") }, ofGravity(gravity));
  const [known, other] = [of(from), of(to)];
  return known && other && q(carats).times(other).dividedBy(known);
}

/** 1 mm deep on a square or an oblong whose outline is 1: the carat is the factor itself. */
function factorOf(cut: StoneCut, ratio: string, of: CaratFamily = DIAMOND): string | undefined {
  const one = { cut, length: q(ratio), width: Quotient.one, depth: Quotient.one.dividedBy(q(ratio)) };
  return caratsBySize(one, of)?.value().toString();
}
type Listed = Readonly<Record<string, string>>;
const diamonds = TABLE.factors["diamond (L, W, D in mm; carats; no density)"] as readonly {
  readonly shape?: string;
  readonly factor?: string;
  readonly factors?: Listed;
}[];
const listed = (shape: string): Listed => diamonds.find((row) => row.shape?.startsWith(shape))?.factors ?? {};

describe("the factor of a diamond's cut", () => {
  test.each([
    ["marquise", "marquise"],
    ["emerald cut", "emerald"],
  ] as const)("%s is the published one at each listed ratio, and between them that of the nearest", (cut, shape) => {
    const rows = Object.entries(listed(shape));
    expect(rows.length).toBeGreaterThan(3);
    for (const [ratio, factor] of rows) {
      expect(Number(factorOf(cut, ratio))).toBe(Number(factor));
      expect(Number(factorOf(cut, (Number(ratio) + 0.04).toFixed(2)))).toBe(Number(factor));
    }
  });

  test("pear is the published one; the print 1.00575 at 2.00 is the misprint of 0.00575 that the table names", () => {
    for (const [ratio, factor] of Object.entries(listed("pear"))) {
      expect(Number(factorOf("pear", ratio))).toBe(Number(factor));
    }
  });

  test("baguette and square emerald are the laboratory's", () => {
    const lab = diamonds.find(({ factors }) => factors?.baguette)?.factors;
    expect(Number(factorOf("baguette", "2"))).toBe(Number(lab?.baguette));
    expect(Number(factorOf("emerald cut", "1"))).toBe(Number(lab?.["square emerald"]));
    expect(Number(factorOf("heart", "1"))).toBe(Number(listed("heart").heart));
    expect(Number(factorOf("triangle", "1"))).toBe(Number(listed("heart").triangle));
  });

  test("none is agreed on for princess: it is an argument, and without it the stone is weighed", () => {
    const stone = { cut: "princess", length: q("5"), width: q("5"), depth: q("4") } as const;
    expect(caratsBySize(stone, DIAMOND)).toBeUndefined();
    // 5 x 5 x 4 x 0.0083, by hand.
    expect(two(caratsBySize(stone, DIAMOND, { factor: q("0.0083") }))).toBe("0.83");
  });
});

test("a baguette, a square and a 2:1 emerald cut of one size differ by up to a quarter", () => {
  const [square, long] = [factorOf("emerald cut", "1"), factorOf("emerald cut", "2")].map(Number);
  expect((long ?? 0) / (square ?? 1)).toBe(1.25);
});

test("a coloured stone goes by its specific gravity, and its factors are never a diamond's (3.9 % more for a round one)", () => {
  const size = { cut: "round", length: q("1"), width: q("1"), depth: q("1") } as const;
  const asColoured = caratsBySize(size, ofGravity("3.52"));
  const asDiamond = caratsBySize(size, DIAMOND);
  // 0.0018 x 3.52 = 0.006336; 0.006336 / 0.0061 = 1.0387.
  expect(asColoured?.value().toString()).toBe("0.006336");
  expect(asColoured && asDiamond && asColoured.dividedBy(asDiamond).rounded(3).toString()).toBe("1.039");
  const chart = TABLE.factors["coloured stones (x specific gravity)"] as readonly { readonly factors: Listed }[];
  const named = {
    round: "round (d² x depth)",
    oval: "oval",
    pear: "pear",
    marquise: "marquise",
    heart: "heart",
  } as const;
  const one = ofGravity("1");
  for (const [cut, row] of Object.entries(named)) {
    expect(caratsBySize({ ...size, cut: cut as StoneCut }, one)?.toNumber(), cut).toBe(Number(chart[0]?.factors[row]));
  }
  expect(caratsBySize({ ...size, cut: "emerald cut" }, one)?.toNumber()).toBe(Number(chart[0]?.factors.emerald));
  expect(caratsBySize({ ...size, cut: "baguette" }, one)?.toNumber()).toBe(Number(chart[0]?.factors.rectangle));
  expect(caratsBySize({ ...size, cut: "triangle" }, one)).toBeUndefined();
});

describe("prints that are wrong are not met", () => {
  const round = (length: string, width: string, depth: string) =>
    caratsBySize({ cut: "round", length: q(length), width: q(width), depth: q(depth) }, DIAMOND);

  test("6.48/6.51 x 3.96 printed 1.01: it is 1.019, cut off and not rounded", () => {
    expect(round("6.48", "6.51", "3.96")?.rounded(3).toString()).toBe("1.019");
    expect(two(round("6.48", "6.51", "3.96"))).not.toBe("1.01");
  });

  test("1.75 and 1.55 carats of cubic zirconia and sapphire for a diamond's carat: the gravities say 1.56 to 1.70, and 1.14", () => {
    const [least, most] = ["5.50", "6.00"].map((gravity) => two(asAnother("1", "3.52", gravity)));
    expect([least, most]).toEqual(["1.56", "1.70"]);
    expect(two(asAnother("1", "3.52", "4.00"))).toBe("1.14");
  });
});

test("a stone twice as large each way weighs eight times as much, whatever its cut and family", () => {
  const side = fc.integer({ min: 50, max: 1500 }).map((each) => q((each / 100).toFixed(2)));
  fc.assert(
    fc.property(
      fc.constantFrom(...STONE_CUTS),
      fc.constantFrom(DIAMOND, ofGravity("4")),
      side,
      side,
      side,
      (cut, family, length, width, depth) => {
        const twice = (each: Quotient) => each.times(q("2"));
        const small = caratsBySize({ cut, length, width, depth }, family);
        const large = caratsBySize({ cut, length: twice(length), width: twice(width), depth: twice(depth) }, family);
        expect(small === undefined).toBe(large === undefined);
        if (small && large) expect(large.equals(small.times(q("8")))).toBe(true);
      },
    ),
  );
});

import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { chainLength, chainWeight, FITS, linkCount, pitchOf, recastWeight, resizedLink } from "../../../src/trade/link";
import { type LengthUnit, lengthIn, MILLIMETRES_PER, millimetres } from "../../../src/units/length";
import { grams } from "../../../src/units/weight";
import { published } from "../published";
import { expectExact, expectFault, figures, positives, rounded } from "../reference";

const q = (text: string) => Quotient.of(text);
const inches = (text: string) => lengthIn(q(text), "in");
const NO_CLASP = millimetres(Quotient.zero);
const NO_FINDINGS = grams(Quotient.zero);

describe("common practice", () => {
  test("4 links an inch make 96 links in 24 inches (common practice)", () => {
    expect(
      linkCount(inches("24"), pitchOf(q("4"), inches("1")), NO_CLASP)
        .value()
        .toString(),
    ).toBe("96");
  });

  test("96 links at 2 g weigh 192 g (common practice)", () => {
    expect(
      chainWeight(q("96"), grams(q("2")), NO_FINDINGS)
        .grams.value()
        .toString(),
    ).toBe("192");
  });

  test("a link model at half scale weighs an eighth (common practice: cubic law)", () => {
    expect(
      resizedLink(grams(q("8")), q("10"), q("5"))
        .grams.value()
        .toString(),
    ).toBe("1");
  });

  test("a chain of the same length from links at half scale weighs a quarter (common practice)", () => {
    fc.assert(
      fc.property(positives(20, 3), positives(8, 1), fc.integer({ min: 5, max: 60 }), (linkWeight, perInch, length) => {
        const link = grams(linkWeight.quotient);
        const full = pitchOf(perInch.quotient, inches("1"));
        const half = millimetres(full.millimetres.dividedBy(q("2")));
        // Whole chains only: a length that the full links fill exactly.
        const reached = chainLength(q(String(length)), full, NO_CLASP);
        const weigh = (count: Quotient, each: typeof link) => chainWeight(count, each, NO_FINDINGS).grams;
        const heavy = weigh(linkCount(reached, full, NO_CLASP), link);
        const light = weigh(linkCount(reached, half, NO_CLASP), resizedLink(link, q("2"), q("1")));
        expect(light.times(q("4")).equals(heavy)).toBe(true);
      }),
    );
  });
});

describe("counting links", () => {
  test.each([
    // (length - clasp) x links per inch, worked by hand beside each row
    ["24", "4", "0.5", "nearest", "1", "94"], // 23.5 x 4 = 94
    ["20", "3.7", "0", "nearest", "1", "74"], // 74 exactly
    ["18.1", "4", "0", "nearest", "1", "72"], // 72.4
    ["18.1", "4", "0", "up", "1", "73"],
    ["18.2", "4", "0", "nearest", "1", "73"], // 72.8
    ["18.2", "4", "0", "down", "1", "72"],
    ["18.125", "4", "0", "nearest", "1", "73"], // 72.5, half up
    ["18.1", "4", "0", "nearest", "2", "72"], // 36.2 pairs
    ["18.25", "4", "0", "nearest", "2", "74"], // 36.5 pairs, half up
    ["18.25", "4", "0", "down", "2", "72"],
    ["18.1", "4", "0", "up", "2", "74"],
    ["7", "3", "0", "nearest", "1", "21"], // a pitch of a third of an inch
    ["0.1", "4", "0", "nearest", "1", "0"],
  ] as const)(
    "%s in at %s an inch less a clasp of %s in, %s to a multiple of %s: %s links",
    (length, per, clasp, fit, multiple, expected) => {
      expect(
        linkCount(inches(length), pitchOf(q(per), inches("1")), inches(clasp), fit, q(multiple))
          .value()
          .toString(),
      ).toBe(expected);
    },
  );

  test("a whole chain is never a link more or less, whatever the unit it is measured in", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 4000 }),
        positives(40, 2),
        figures(0, 5, 2),
        fc.constantFrom<LengthUnit>("in", "cm", "mm"),
        fc.constantFrom(...FITS),
        (count, per, clasp, unit, fit) => {
          const pitch = pitchOf(per.quotient, lengthIn(Quotient.one, "in"));
          const claspLength = lengthIn(clasp.quotient, unit);
          const length = chainLength(q(String(count)), pitch, claspLength);
          expect(linkCount(length, pitch, claspLength, fit).value().toNumber()).toBe(count);
        },
      ),
      { numRuns: 500 },
    );
  });

  test("nearest, up and down are those of the exact ratio (fraction.js)", () => {
    fc.assert(
      fc.property(
        positives(1000, 2),
        positives(20, 2),
        fc.integer({ min: 1, max: 4 }),
        fc.constantFrom<LengthUnit>("in", "cm", "mm"),
        (length, per, multiple, unit) => {
          const mm = length.fraction.mul(MILLIMETRES_PER[unit].toFixed());
          const multiples = mm.mul(per.fraction).div("25.4").div(multiple);
          const whole = { up: multiples.ceil(), down: multiples.floor(), nearest: multiples.add("0.5").floor() };
          for (const fit of FITS) {
            const counted = linkCount(
              lengthIn(length.quotient, unit),
              pitchOf(per.quotient, inches("1")),
              NO_CLASP,
              fit,
              q(String(multiple)),
            );
            expectExact(counted, whole[fit].mul(multiple));
          }
        },
      ),
      { numRuns: 500 },
    );
  });

  test.each([
    ["2", "2"],
    ["2", "3"],
    ["0", "0"],
  ])("a chain of %s in with a clasp of %s in is refused", (length, clasp) => {
    expectFault(
      () => linkCount(inches(length), pitchOf(q("4"), inches("1")), inches(clasp)),
      "outOfRange",
      "clasp",
      "shorter than the length",
    );
  });
});

test("the length reached is links x pitch and the clasp (fraction.js)", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 5000 }), positives(30, 2), figures(0, 50, 2), (count, per, clasp) => {
      const reached = chainLength(q(String(count)), pitchOf(per.quotient, inches("1")), millimetres(clasp.quotient));
      expectExact(reached.millimetres, new Fraction("25.4").div(per.fraction).mul(count).add(clasp.fraction));
    }),
  );
});

test("a chain weighs its links and its findings (fraction.js)", () => {
  fc.assert(
    fc.property(figures(0, 5000, 0), figures(0, 50, 3), figures(0, 50, 3), (count, each, findings) => {
      expectExact(
        chainWeight(count.quotient, grams(each.quotient), grams(findings.quotient)).grams,
        count.fraction.mul(each.fraction).add(findings.fraction),
      );
    }),
  );
});

describe("a link resized or recast", () => {
  test("weighs by the cube of the widths, and back again exactly (fraction.js)", () => {
    fc.assert(
      fc.property(positives(50, 3), positives(30, 2), positives(30, 2), (weight, from, to) => {
        const resized = resizedLink(grams(weight.quotient), from.quotient, to.quotient);
        expectExact(resized.grams, to.fraction.div(from.fraction).pow(3)?.mul(weight.fraction) ?? new Fraction(0));
        expectExact(resizedLink(resized, to.quotient, from.quotient).grams, weight.fraction);
      }),
    );
  });

  test("in another alloy weighs by the ratio of densities (fraction.js)", () => {
    fc.assert(
      fc.property(positives(50, 3), positives(20, 2), positives(20, 2), (weight, from, to) => {
        expectExact(
          recastWeight(grams(weight.quotient), from.quotient, to.quotient).grams,
          weight.fraction.mul(to.fraction).div(from.fraction),
        );
      }),
    );
  });

  const { source, rows } = published<{ source: string; rows: readonly Readonly<Record<string, unknown>>[] }>(
    "casting.json",
  );
  const row = (check: string) => {
    const found = rows.find((candidate) => candidate.check === check);
    if (!found) throw new Error(`casting.json has no "${check}"`);
    return found as { linear: string; parts: readonly [string, string]; wax: string; ratio: string; expected: string };
  };

  test(`5.5 g of wax at a ratio of 13.5 make 74.25 g of metal (${source})`, () => {
    const { wax, ratio, expected } = row("wax to metal");
    expect(
      recastWeight(grams(q(wax)), Quotient.one, q(ratio))
        .grams.value()
        .toString(),
    ).toBe(expected);
  });

  test(`a linear shrinkage of 3.475 % leaves 0.89933 of the weight (${source})`, () => {
    const { linear, expected } = row("weight after shrinkage");
    expect(
      resizedLink(grams(Quotient.one), Quotient.one, Quotient.one.minus(q(linear)))
        .grams.rounded(5)
        .toString(),
    ).toBe(expected);
  });

  test(`wax and metal shrinkage one after the other are the compound shrinkage (${source})`, () => {
    const { parts, expected } = row("compound linear shrinkage");
    const shrink = (weight: ReturnType<typeof grams>, by: string) =>
      resizedLink(weight, Quotient.one, Quotient.one.minus(q(by)));
    const twice = shrink(shrink(grams(Quotient.one), parts[0]), parts[1]);
    expect(twice.grams.equals(shrink(grams(Quotient.one), expected).grams)).toBe(true);
  });
});

test("the reference rounds by whole numbers", () => {
  expect(rounded(new Fraction(1, 8), 2)).toBe("0.13");
});

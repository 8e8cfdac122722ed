import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import {
  alloyDensity,
  assayPasses,
  METAL_DENSITY,
  METALS,
  type Metal,
  type Part,
  STANDARD_MARKS,
  standardMark,
} from "../../../src/gold/alloy";
import { fineness, parseMark } from "../../../src/gold/mark";
import { published } from "../published";
import { expectExact, expectFault, figure, positives } from "../reference";

interface Alloy {
  readonly source: string;
  readonly composition: Readonly<Partial<Record<Metal, string>>>;
}

function partsOf(alloy: Alloy): readonly Part[] {
  return METALS.flatMap((metal) => {
    const parts = alloy.composition[metal];
    return parts === undefined ? [] : [{ metal, parts: Quotient.of(parts) }];
  });
}

describe("density of an alloy", () => {
  const table = published<{
    rounding: string;
    rows: readonly (Alloy & { density: string; tolerance: string })[];
    reject: readonly Alloy[];
  }>("alloy-density.json");

  test.each(table.rows)("$composition is $density g/cm³ within $tolerance ($source)", (row) => {
    const ours = alloyDensity(partsOf(row)).toNumber();
    expect(Math.abs(ours - Number(row.density)) / Number(row.density)).toBeLessThanOrEqual(Number(row.tolerance));
  });

  test.each(table.reject)("$composition is refused ($source)", (row) => {
    expectFault(() => alloyDensity(partsOf(row)), "outOfRange", "sum to 110.04", "1, 100 or 1000");
  });

  test("the densities of the elements are those of the published checks", () => {
    for (const [, density, metal] of table.rounding.matchAll(/(\d+\.\d+) (Au|Ag|Cu|Zn|Ni|Pd)/g)) {
      expect([metal, METAL_DENSITY[metal as Metal].toFixed(2)]).toEqual([metal, density]);
    }
    expect(METAL_DENSITY.Pt.toFixed(2)).toBe("21.45"); // from memory: usual handbook value
  });

  test("one metal alone has its own density, in parts of 1, 100 or 1000", () => {
    for (const metal of METALS) {
      for (const whole of ["1", "100", "1000"]) {
        expect(
          alloyDensity([{ metal, parts: Quotient.of(whole) }])
            .value()
            .eq(METAL_DENSITY[metal]),
        ).toBe(true);
      }
    }
  });

  test("volumes add: the density is the weight over the sum of the volumes (fraction.js)", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 999 }),
        fc.constantFrom(...METALS),
        fc.constantFrom(...METALS),
        (parts, one, other) => {
          const [a, b] = [figure(String(parts)), figure(String(1000 - parts))];
          const volume = a.fraction
            .div(METAL_DENSITY[one].toFixed())
            .add(b.fraction.div(METAL_DENSITY[other].toFixed()));
          expectExact(
            alloyDensity([
              { metal: one, parts: a.quotient },
              { metal: other, parts: b.quotient },
            ]),
            a.fraction.add(b.fraction).div(volume),
          );
        },
      ),
    );
  });

  test.each(["0.9949", "1.0051", "99.49", "100.51", "994.9", "1005.1", "0", "10"])(
    "parts that sum to %s are refused",
    (parts) => {
      expectFault(
        () => alloyDensity([{ metal: "Au", parts: Quotient.of(parts) }]),
        "outOfRange",
        "parts:",
        "1, 100 or 1000",
      );
    },
  );

  test.each(["0.995", "1.005", "99.5", "100.5", "995", "1005"])(
    "parts that sum to %s are within half a per cent",
    (parts) => {
      expect(
        alloyDensity([{ metal: "Au", parts: Quotient.of(parts) }])
          .value()
          .toString(),
      ).toBe("19.32");
    },
  );
});

describe("the standard mark of a fineness", () => {
  const { source, rows } = published<{ source: string; rows: readonly { fineness: string; mark: string }[] }>(
    "mark-floor.json",
  );
  const national = ["375", "585", "750", "916", "999"].map((standard) => Quotient.of(standard));

  test.each(rows)(`$fineness ‰ is marked $mark (${source})`, ({ fineness: found, mark }) => {
    expect(standardMark(Quotient.of(found), national).value().toString()).toBe(mark);
  });

  test("14K by its exact fineness of 583.333 ‰ must not be marked 585", () => {
    expect(
      standardMark(fineness(parseMark("14K")), national)
        .value()
        .toString(),
    ).toBe("375");
  });

  test("a mark may understate, never overstate, and no standard lies between", () => {
    fc.assert(
      fc.property(positives(1000, 1), (found) => {
        if (found.fraction.lt(333)) {
          expectFault(() => standardMark(found.quotient), "belowLowestMark", "below the lowest standard 333");
          return;
        }
        const mark = standardMark(found.quotient);
        expect(mark.isGreaterThan(found.quotient)).toBe(false);
        expect(STANDARD_MARKS.some((standard) => standard.equals(mark))).toBe(true);
        expect(
          STANDARD_MARKS.some((standard) => standard.isGreaterThan(mark) && !standard.isGreaterThan(found.quotient)),
        ).toBe(false);
      }),
    );
  });

  test("the order of the standards does not matter", () => {
    const mixed = ["585", "750", "375"].map((standard) => Quotient.of(standard));
    expect(standardMark(Quotient.of("700"), mixed).value().toString()).toBe("585");
    expectFault(() => standardMark(Quotient.of("374.9"), mixed), "belowLowestMark", "374.9", "375");
  });
});

describe("an assay against its mark", () => {
  const { source, rows } = published<{
    source: string;
    rows: readonly { mark: string; solderFree: string; withSolder: string }[];
  }>("assay-tolerance.json");
  const limits = rows.flatMap(({ mark, solderFree, withSolder }) => [
    { mark, tolerance: "3", limit: solderFree },
    { mark, tolerance: "7", limit: withSolder },
  ]);
  const thousandth = Quotient.of("0.001");

  test.each(limits)(`$mark with $tolerance ‰ passes from $limit ‰ (${source})`, ({ mark, tolerance, limit }) => {
    const assay = Quotient.of(limit);
    const passes = (value: Quotient) => assayPasses(value, parseMark(mark), Quotient.of(tolerance));
    expect(passes(assay.plus(thousandth))).toBe(true);
    expect(passes(assay.minus(thousandth))).toBe(false);
  });

  test("18K, whose limit is exact, passes on it: 750 - 3 and 750 - 7", () => {
    expect(assayPasses(Quotient.of("747"), parseMark("18K"), Quotient.of("3"))).toBe(true);
    expect(assayPasses(Quotient.of("743"), parseMark("18K"), Quotient.of("7"))).toBe(true);
  });

  test("without a tolerance nothing below the mark passes, and 583.33 is below 14K", () => {
    expect(assayPasses(Quotient.of("585"), parseMark("585"), Quotient.zero)).toBe(true);
    expect(assayPasses(Quotient.of("584.999"), parseMark("585"), Quotient.zero)).toBe(false);
    expect(assayPasses(Quotient.of("583.33"), parseMark("14K"), Quotient.zero)).toBe(false);
    expect(assayPasses(Quotient.of("583.34"), parseMark("14K"), Quotient.zero)).toBe(true);
  });
});

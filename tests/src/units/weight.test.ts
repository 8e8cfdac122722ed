import { ucum } from "@atomic-ehr/ucum";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import {
  addWeights,
  GRAMS_PER,
  grams,
  inWeightUnit,
  timesWeight,
  type WeightUnit,
  weightIn,
} from "../../../src/units/weight";
import { published } from "../published";
import { expectExact, figures } from "../reference";

/** Our units in the codes of UCUM. The tola is no UCUM unit: 180 grains, the Indian standard tola, from memory. */
const UCUM: Record<WeightUnit, { readonly code: string; readonly times: number }> = {
  g: { code: "g", times: 1 },
  kg: { code: "kg", times: 1 },
  mg: { code: "mg", times: 1 },
  dwt: { code: "[pwt_tr]", times: 1 },
  ozt: { code: "[oz_tr]", times: 1 },
  gr: { code: "[gr]", times: 1 },
  oz: { code: "[oz_av]", times: 1 },
  ct: { code: "[car_m]", times: 1 },
  tola: { code: "[gr]", times: 180 },
};
const UNITS = Object.keys(UCUM) as readonly WeightUnit[];

test("every unit has its UCUM code here", () => {
  expect(UNITS.toSorted()).toEqual(Object.keys(GRAMS_PER).toSorted());
});

describe("UCUM 1.9 through @atomic-ehr/ucum, relative 1e-12", () => {
  test.each(UNITS.flatMap((from) => UNITS.map((to) => [from, to] as const)))("from %s to %s", (from, to) => {
    const theirs = (ucum.convert(7.25, UCUM[from].code, UCUM[to].code) * UCUM[from].times) / UCUM[to].times;
    const ours = inWeightUnit(weightIn(Quotient.of("7.25"), from), to).toNumber();
    expect(Math.abs(ours - theirs) / theirs).toBeLessThan(1e-12);
  });
});

const { source, rows } = published<{
  source: string;
  rows: readonly { amount: string; unit: string; expected: string; to: string }[];
}>("units.json");
const OURS: Readonly<Record<string, readonly [WeightUnit, string]>> = {
  grain: ["gr", "1"],
  pennyweight: ["dwt", "1"],
  "troy ounce": ["ozt", "1"],
  "troy pound": ["ozt", "12"],
  "metric carat": ["ct", "1"],
};
test.each(rows.filter((row) => row.to === "g"))(
  `one $unit is exactly $expected g (${source})`,
  ({ amount, unit, expected }) => {
    const [ours, count] =
      OURS[unit] ??
      (() => {
        throw new Error(`no unit of ours for ${unit}`);
      })();
    expect(
      weightIn(Quotient.of(amount).times(Quotient.of(count)), ours)
        .grams.value()
        .toString(),
    ).toBe(expected);
  },
);

test("a tola is three eighths of a troy ounce (from memory)", () => {
  expect(
    inWeightUnit(weightIn(Quotient.of("8"), "tola"), "ozt")
      .value()
      .toString(),
  ).toBe("3");
});

test("an ounce of gold is not a kitchen ounce: 175 troy ounces make 192 of them (definition: 480 and 437.5 grains)", () => {
  expect(
    inWeightUnit(weightIn(Quotient.of("175"), "ozt"), "oz")
      .value()
      .toString(),
  ).toBe("192");
});

test("there and back is exact in every pair of units", () => {
  fc.assert(
    fc.property(figures(0, 100_000, 4), fc.constantFrom(...UNITS), (amount, unit) => {
      expectExact(inWeightUnit(weightIn(amount.quotient, unit), unit), amount.fraction);
    }),
  );
});

test("weights add and multiply exactly, and are frozen", () => {
  fc.assert(
    fc.property(figures(0, 1000, 3), figures(0, 1000, 3), figures(0, 500, 0), (a, b, count) => {
      expectExact(addWeights(grams(a.quotient), grams(b.quotient)).grams, a.fraction.add(b.fraction));
      expectExact(timesWeight(grams(a.quotient), count.quotient).grams, a.fraction.mul(count.fraction));
    }),
  );
  expect(Object.isFrozen(grams(Quotient.one))).toBe(true);
});

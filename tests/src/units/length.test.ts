import { ucum } from "@atomic-ehr/ucum";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { inLengthUnit, type LengthUnit, lengthIn, MILLIMETRES_PER, millimetres } from "../../../src/units/length";
import { published } from "../published";
import { expectExact, figures } from "../reference";

const UCUM: Record<LengthUnit, string> = { mm: "mm", cm: "cm", m: "m", in: "[in_i]", ft: "[ft_i]" };
const UNITS = Object.keys(UCUM) as readonly LengthUnit[];

test("every unit has its UCUM code here", () => {
  expect(UNITS.toSorted()).toEqual(Object.keys(MILLIMETRES_PER).toSorted());
});

describe("UCUM 1.9 through @atomic-ehr/ucum, relative 1e-12", () => {
  test.each(UNITS.flatMap((from) => UNITS.map((to) => [from, to] as const)))("from %s to %s", (from, to) => {
    const theirs = ucum.convert(7.25, UCUM[from], UCUM[to]);
    const ours = inLengthUnit(lengthIn(Quotient.of("7.25"), from), to).toNumber();
    expect(Math.abs(ours - theirs) / theirs).toBeLessThan(1e-12);
  });
});

const { source, rows } = published<{
  source: string;
  rows: readonly { amount: string; unit: string; expected: string; to: string }[];
}>("units.json");
test.each(rows.filter((row) => row.to === "mm"))(
  `one $unit is exactly $expected mm (${source})`,
  ({ amount, unit, expected }) => {
    expect(unit).toBe("inch");
    expect(lengthIn(Quotient.of(amount), "in").millimetres.value().toString()).toBe(expected);
  },
);

test("there and back is exact, and a foot is twelve inches", () => {
  fc.assert(
    fc.property(figures(0, 10_000, 3), fc.constantFrom(...UNITS), (amount, unit) => {
      expectExact(inLengthUnit(lengthIn(amount.quotient, unit), unit), amount.fraction);
      expectExact(inLengthUnit(lengthIn(amount.quotient, "ft"), "in"), amount.fraction.mul(12));
    }),
  );
  expect(Object.isFrozen(millimetres(Quotient.one))).toBe(true);
});

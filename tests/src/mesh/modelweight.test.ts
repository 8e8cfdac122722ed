import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import {
  compoundShrinkage,
  cubicMillimetres,
  implausibleLink,
  modelMillimetres,
  modelWeight,
  scaleOf,
} from "../../../src/mesh/modelweight";
import { published } from "../published";
import { expectExact, expectFault, positives } from "../reference";

const q = (text: string) => Quotient.of(text);
const casting = published<{ rows: readonly Record<string, string & readonly string[]>[] }>("casting.json").rows;
const row = (check: string) => {
  const found = casting.find((each) => each.check === check);
  if (!found) throw new Error(`${check} is not published`);
  return found;
};

describe("published", () => {
  test("wax 2.5 % and metal 1 % shrink by 3.475 % together", () => {
    const { parts = [], expected = "" } = row("compound linear shrinkage");
    expect(
      compoundShrinkage([...parts].map(q))
        .value()
        .toString(),
    ).toBe(expected);
  });

  test("which leaves 0.89933 of the weight", () => {
    const { linear = "", expected = "" } = row("weight after shrinkage");
    // 1000 mm³ at 1 g/cm³ weigh 1 g.
    expect(modelWeight(q("1000"), q("1"), Quotient.one, q(linear)).grams.rounded(5).toString()).toBe(expected);
  });
});

test("100 mm³ at 13.33 g/cm³ weigh 1.333 g", () => {
  expect(modelWeight(q("100"), q("13.33")).grams.value().toString()).toBe("1.333");
});

test("weight goes by the cube of the scale and of what shrinkage leaves, exactly", () => {
  fc.assert(
    fc.property(
      positives(500, 3),
      positives(20, 2),
      positives(3, 3),
      fc.integer({ min: 0, max: 99 }),
      (volume, density, scale, per) => {
        const shrinkage = q(`0.${String(per).padStart(2, "0")}`);
        const kept = scale.fraction.mul(100 - per).div(100);
        expectExact(
          modelWeight(volume.quotient, density.quotient, scale.quotient, shrinkage).grams,
          volume.fraction
            .mul(density.fraction)
            .mul(kept.pow(3) ?? 0)
            .div(1000),
        );
      },
    ),
  );
});

test("a cubic inch is 16387.064 mm³, an inch 25.4 mm; a measure counts by its 15 digits", () => {
  expect(cubicMillimetres(1, "in").value().toString()).toBe("16387.064");
  expect(
    cubicMillimetres(0.1 + 0.2, "mm")
      .value()
      .toString(),
  ).toBe("0.3");
  expect(modelMillimetres(0.5, "in").value().toString()).toBe("12.7");
});

test("no steps shrink nothing; a step outside 0 to 1 is refused", () => {
  expect(compoundShrinkage([]).isZero()).toBe(true);
  for (const step of ["-0.01", "1", "2.5"])
    expectFault(() => compoundShrinkage([q(step)]), "outOfRange", "shrinkage", step);
});

describe("scaling", () => {
  test("8 mm to 6 mm is three quarters; 120 % is 1.2", () => {
    expect(
      scaleOf({ kind: "toWidth", from: q("8"), to: q("6") }, false)
        .value()
        .toString(),
    ).toBe("0.75");
    expect(
      scaleOf({ kind: "byPercent", percent: q("120") }, false)
        .value()
        .toString(),
    ).toBe("1.2");
  });

  test("a model with seats for stones keeps its size, and says why", () => {
    expectFault(() => scaleOf({ kind: "byPercent", percent: q("99") }, true), "outOfRange", "seats", "stones");
    expect(scaleOf({ kind: "byPercent", percent: q("100") }, true).equals(Quotient.one)).toBe(true);
  });

  test("to nothing, or from nothing, is refused", () => {
    for (const scaling of [
      { kind: "byPercent", percent: q("0") },
      { kind: "toWidth", from: q("0"), to: q("5") },
      { kind: "toWidth", from: q("5"), to: q("-5") },
    ] as const)
      expectFault(() => scaleOf(scaling, false), "outOfRange", "scale");
  });
});

test("links from 1 to 60 mm are plausible", () => {
  expect(["0.99", "1", "60", "60.01"].map((side) => implausibleLink(q(side)))).toEqual([
    "small",
    undefined,
    undefined,
    "large",
  ]);
});

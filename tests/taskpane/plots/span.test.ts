import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Quotient } from "../../../src/index";
import { around, isInSight, ratioSteps, showTicks, sorted } from "../../../taskpane/plots/span";
import { writeAs } from "../../../taskpane/wording/language";

describe("places across a plot", () => {
  it("stand in even ratios, from one end to the other", () => {
    const steps = ratioSteps({ from: 1, to: 16 }, 4);
    expect(steps).toHaveLength(5);
    for (const [at, step] of [1, 2, 4, 8, 16].entries()) expect(steps[at]).toBeCloseTo(step, 12);
  });

  it("always rise, and begin and end where the plot does", () => {
    const weight = fc.double({ min: 0.01, max: 1000, noNaN: true });
    fc.assert(
      fc.property(weight, fc.double({ min: 1.01, max: 100, noNaN: true }), (from, ratio) => {
        const steps = ratioSteps({ from, to: from * ratio }, 12);
        expect(steps[0]).toBe(from);
        expect(steps.at(-1)).toBeCloseTo(from * ratio, 6);
        expect(steps.every((step, at) => at === 0 || step > (steps[at - 1] ?? 0))).toBe(true);
      }),
    );
  });
});

it("a plot of one height has room around it all the same", () => {
  const { from, to } = around([5, 5], 0.1);
  expect(from).toBeLessThan(5);
  expect(to).toBeGreaterThan(5);
});

it("ticks are written with the decimals that tell them apart", () => {
  writeAs(() => "en-US");
  expect(showTicks([0, 50, 100])).toEqual(["0", "50", "100"]);
  expect(showTicks([0, 0.5, 1])).toEqual(["0.0", "0.5", "1.0"]);
});

it("a mark ten times as far as the order is still in sight, and no further", () => {
  expect([isInSight(10, 1), isInSight(10.01, 1), isInSight(0.1, 1), isInSight(0.09, 1)]).toEqual([
    true,
    false,
    true,
    false,
  ]);
});

it("figures are put in their order, each once", () => {
  const figures = ["3", "1.0", "2", "1", "3.00"].map((text) => Quotient.of(text));
  expect(sorted(figures).map((each) => each.toNumber())).toEqual([1, 2, 3]);
});

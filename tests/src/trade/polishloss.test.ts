import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { benchLoss, castWeight, finishedWeight, LOSS_BASES, type Loss } from "../../../src/trade/polishloss";
import { grams } from "../../../src/units/weight";
import { published } from "../published";
import { expectExact, expectFault, type Figure, figure, figures, positives } from "../reference";

const shares = figures(0, 0.9999, 4);
const losses = fc
  .constantFrom(...LOSS_BASES)
  .chain((basis) => (basis === "grams" ? positives(50, 3) : shares).map((figure) => ({ basis, figure })));

function lossOf({ basis, figure: { quotient } }: { basis: Loss["basis"]; figure: Figure }): Loss {
  return basis === "grams" ? { basis, weight: grams(quotient) } : { basis, share: quotient };
}

function castBy(
  { basis, figure: { fraction } }: { basis: Loss["basis"]; figure: Figure },
  finished: Fraction,
): Fraction {
  if (basis === "grams") return finished.add(fraction);
  if (basis === "finished") return finished.mul(fraction.add(1));
  return finished.div(new Fraction(1).sub(fraction));
}

const share = (basis: "cast" | "finished", text: string): Loss => ({ basis, share: Quotient.of(text) });

describe("what to cast for a finished weight", () => {
  const { source, rows, worked } = published<{
    source: string;
    rows: readonly { from: string; kind: string; share: string }[];
    worked: { content: string; share: string; onFinished: string; onCast: string };
  }>("wastage-norms.json");

  test(`10 g at 2.5 %: 10.25 g counted from the finished weight, 10.2564 g from the cast weight (${source})`, () => {
    const finished = grams(Quotient.of(worked.content));
    expect(castWeight(finished, share("finished", worked.share)).grams.value().toString()).toBe(worked.onFinished);
    expect(castWeight(finished, share("cast", worked.share)).grams.rounded(4).toString()).toBe(worked.onCast);
  });

  test.each(rows)(`$kind, $from: content plus the share of $share (${source})`, (norm) => {
    expectExact(
      castWeight(grams(Quotient.of(100)), share("finished", norm.share)).grams,
      new Fraction(norm.share).mul(100).add(100),
    );
  });

  test("by every basis is the definition (fraction.js), and finishing takes it back exactly", () => {
    fc.assert(
      fc.property(positives(500, 3), losses, (finished, given) => {
        const loss = lossOf(given);
        const cast = castWeight(grams(finished.quotient), loss);
        expectExact(cast.grams, castBy(given, finished.fraction));
        expectExact(finishedWeight(cast, loss).grams, finished.fraction);
      }),
      { numRuns: 1000 },
    );
  });

  test("polishing never adds weight, and no loss leaves it as it is", () => {
    fc.assert(
      fc.property(positives(500, 3), losses, (finished, given) => {
        const cast = castWeight(grams(finished.quotient), lossOf(given)).grams;
        expect(cast.isLessThan(finished.quotient)).toBe(false);
        expect(cast.equals(finished.quotient)).toBe(given.figure.fraction.equals(0));
      }),
    );
  });
});

describe("what is left after polishing", () => {
  const { source, rows } = published<{
    source: string;
    rows: readonly { check: string; cast?: string; finished?: string; expected: string }[];
  }>("casting.json");

  test(`5.877 g cast with 16.51 % lost leave 4.907 g (${source})`, () => {
    const row = rows.find((candidate) => candidate.check === "loss share of cast weight");
    const left = finishedWeight(grams(Quotient.of(row?.cast ?? "")), share("cast", row?.expected ?? ""));
    expect(left.grams.rounded(3).toString()).toBe(row?.finished);
  });

  test.each<[string, Loss]>([
    ["all of it by grams", { basis: "grams", weight: grams(Quotient.of("5")) }],
    ["more than all of it", { basis: "grams", weight: grams(Quotient.of("5.001")) }],
    ["100 % of the cast weight", share("cast", "1")],
  ])("%s is refused", (_what, loss) => {
    expectFault(
      () => finishedWeight(grams(Quotient.of("5")), loss),
      "outOfRange",
      "loss:",
      "whole cast weight",
      "less than was cast",
    );
  });
});

test("the bench counts lost grams from the stated weight, or takes them as given", () => {
  fc.assert(
    fc.property(positives(500, 3), losses, (stated, given) => {
      const expected = given.basis === "grams" ? given.figure.fraction : stated.fraction.mul(given.figure.fraction);
      expectExact(benchLoss(grams(stated.quotient), lossOf(given)).grams, expected);
    }),
  );
  // 100 g at 2 % is 2 g, by hand.
  expect(
    benchLoss(grams(figure("100").quotient), share("cast", "0.02"))
      .grams.value()
      .toString(),
  ).toBe("2");
});

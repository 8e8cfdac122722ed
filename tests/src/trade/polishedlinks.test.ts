import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { polishingOutcome } from "../../../src/trade/polishedlinks";
import { grams } from "../../../src/units/weight";
import { expectExact, expectFault, positives } from "../reference";

const links = (cast: number, back: number, sent: number | undefined) => ({
  castLinks: Quotient.of(cast),
  backLinks: Quotient.of(back),
  sentLinks: sent === undefined ? undefined : Quotient.of(sent),
});
const weights = (cast: string, back: string) => ({ cast: grams(Quotient.of(cast)), back: grams(Quotient.of(back)) });

describe("what polishing took, by the piece", () => {
  test("95 links cast at 190 g, 91 back at 173.81 g: 4.5 % of 182 g, not 8.52 % of 190 g (hand arithmetic)", () => {
    const { out, share, spare, missing } = polishingOutcome({
      ...weights("190", "173.81"),
      ...links(95, 91, undefined),
    });
    expect(out.grams.toNumber()).toBe(182);
    expect(share.toNumber()).toBe(0.045);
    expect([spare, missing]).toEqual([undefined, undefined]);
  });

  test("of 95 cast and 93 sent two are spare, and of those two did not come back: 4 g each (hand arithmetic)", () => {
    const { share, spare, missing } = polishingOutcome({ ...weights("190", "173.81"), ...links(95, 91, 93) });
    expect(share.toNumber()).toBe(0.045);
    expect([spare, missing].map((some) => [some?.links.toNumber(), some?.weight.grams.toNumber()])).toEqual([
      [2, 4],
      [2, 4],
    ]);
  });

  test("without counts all that was cast came back", () => {
    const { out, share } = polishingOutcome({ ...weights("102", "100"), ...links(0, 0, undefined) });
    expect([out.grams.toNumber(), share.equals(Quotient.of(2).dividedBy(Quotient.of(102)))]).toEqual([102, true]);
  });

  test("counts that contradict each other are named", () => {
    const say = (cast: number, back: number, sent?: number) => () =>
      polishingOutcome({ ...weights("190", "173.81"), ...links(cast, back, sent) });
    expectFault(say(0, 91), "blank", "castLinks");
    expectFault(say(95, 0), "blank", "backLinks");
    expectFault(say(0, 0, 95), "blank", "castLinks");
    expectFault(say(90, 91), "outOfRange", "backLinks");
    expectFault(say(95, 91, 96), "outOfRange", "sentLinks");
    expectFault(say(95, 91, 90), "outOfRange", "backLinks");
  });

  test("every link that was cast is spare, missing or back, and so is every gram, whatever was counted", () => {
    const counts = fc.tuple(
      fc.integer({ min: 1, max: 300 }),
      fc.integer({ min: 0, max: 40 }),
      fc.integer({ min: 0, max: 40 }),
    );
    fc.assert(
      fc.property(counts, positives(500, 2), positives(500, 2), ([back, missing, spare], castWeight, backWeight) => {
        const cast = back + missing + spare;
        const said = polishingOutcome({
          cast: grams(castWeight.quotient),
          back: grams(backWeight.quotient),
          ...links(cast, back, back + missing),
        });
        expect([said.spare?.links.toNumber(), said.missing?.links.toNumber()]).toEqual([spare, missing]);
        const parts = [said.out, said.spare?.weight, said.missing?.weight].map(
          (weight) => weight?.grams ?? Quotient.zero,
        );
        expect(parts.reduce((total, part) => total.plus(part)).equals(castWeight.quotient)).toBe(true);
        const out = castWeight.fraction.mul(back).div(cast);
        expectExact(said.share, out.sub(backWeight.fraction).div(out));
        // By the piece: the mean link lost that share, whatever the counts.
        expectExact(said.share, new Fraction(1).sub(backWeight.fraction.div(back).div(castWeight.fraction.div(cast))));
      }),
    );
  });
});

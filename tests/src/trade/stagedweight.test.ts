import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { parseLoss } from "../../../src/rates/rates";
import { castWeight, LOSS_BASES } from "../../../src/trade/polishloss";
import { atStage, castToFinished, type LossShare, STAGES } from "../../../src/trade/stagedweight";
import { grams } from "../../../src/units/weight";
import { parseRecast, parseResizing, parseWax, RECAST_STAGES } from "../../../src/weights/estimate";
import { expectExact, figures, positives } from "../reference";

const cast = (text: string) => atStage("cast", grams(Quotient.of(text)));
const share = (basis: LossShare["basis"], text: string): LossShare => ({ basis, share: Quotient.of(text) });

describe("a link's weight as cast, finished", () => {
  test("1.1423 g less 4.5 % of the cast weight are 1.0908965 g (hand arithmetic: 1.1423 x 0.955)", () => {
    const finished = castToFinished(cast("1.1423"), share("cast", "0.045"));
    expect(finished.stage).toBe("finished");
    expect(finished.weight.grams.value().toString()).toBe("1.0908965");
  });

  test("where the loss is 4.5 % of the finished weight: 1.1423 / 1.045", () => {
    const finished = castToFinished(cast("1.1423"), share("finished", "0.045"));
    expectExact(finished.weight.grams, new Fraction("1.1423").div("1.045"));
  });

  test("is what has to be cast for it, taken back (fraction.js)", () => {
    fc.assert(
      fc.property(
        positives(500, 4),
        figures(0, 0.99, 4),
        fc.constantFrom("cast" as const, "finished" as const),
        (weight, lost, basis) => {
          const finished = castToFinished(atStage("cast", grams(weight.quotient)), share(basis, lost.text));
          const expected =
            basis === "cast"
              ? weight.fraction.mul(new Fraction(1).sub(lost.fraction))
              : weight.fraction.div(lost.fraction.add(1));
          expectExact(finished.weight.grams, expected);
          expectExact(castWeight(finished.weight, share(basis, lost.text)).grams, weight.fraction);
        },
      ),
    );
  });
});

describe("a weight keeps the stage it was taken at", () => {
  test("a wax's weight in metal is that of the casting", () => {
    const metal = parseWax({ wax: "1", waxDensity: "1", metalDensity: "13.5" });
    expect(metal.ok && metal.value.weight.stage).toBe("cast");
  });

  test.each(RECAST_STAGES)("a %s link is a %s one in another alloy and at another width", (stage) => {
    const recast = parseRecast({ weight: "2", stage, fromDensity: "13", toDensity: "15" });
    const resized = parseResizing({ weight: "2", stage, fromWidth: "8", toWidth: "9", linksPer: "", seats: "no" });
    expect([recast.ok && recast.value.weight.stage, resized.ok && resized.value.weight.stage]).toEqual([stage, stage]);
  });

  test("without its stage a weight is not taken", () => {
    const recast = parseRecast({ weight: "2", stage: "", fromDensity: "13", toDensity: "15" });
    expect(recast.ok ? [] : recast.faults.map(({ field, code }) => `${field} ${code}`)).toEqual(["stage blank"]);
  });

  test("the stages are those of the work", () => {
    expect(STAGES).toEqual(["model", "cast", "polished", "finished"]);
  });
});

describe("the loss on Rates", () => {
  test("is read alone, whatever stands in the other rows", () => {
    const read = parseLoss({ loss: 0.045, lossBasis: "cast", spot: "", castingFee: "dear" });
    expect(read.ok && read.value).toMatchObject({ basis: "cast" });
    expect(read.ok && read.value.basis !== "grams" && read.value.share.value().toString()).toBe("0.045");
  });

  test.each(LOSS_BASES)("counted from %s keeps its basis; 1.2 is a loss in grams only", (lossBasis) => {
    const read = parseLoss({ loss: 1.2, lossBasis });
    expect(read.ok).toBe(lossBasis === "grams");
    if (read.ok) expect(read.value.basis).toBe(lossBasis);
  });

  test("names each row that is missing", () => {
    const read = parseLoss({ loss: "", lossBasis: "" });
    expect(read.ok ? [] : read.faults.map(({ sentence }) => sentence)).toEqual([
      expect.stringContaining("Polish loss: found nothing"),
      expect.stringContaining("Loss counted from: found nothing"),
    ]);
  });
});

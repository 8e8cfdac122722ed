import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import type { Loss } from "../../../src/trade/polishloss";
import { castWeight, finishedWeight } from "../../../src/trade/polishloss";
import type { Stage } from "../../../src/trade/stagedweight";
import { grams } from "../../../src/units/weight";
import type { Weighed } from "../../../src/weights/doubt";
import { meanWeight } from "../../../src/weights/weighingmean";
import { allowedLossShare, isGuess, judgeWeighed } from "../../../src/weights/weighingresult";
import { published } from "../published";
import { positives } from "../reference";

const link = { model: "Ada curb", width: 8, mark: "14K", colour: "yellow" };
const weighed = (stage: Stage, pieces: string, weight: string, job = "1001", other = {}): Weighed => ({
  job,
  stage,
  pieces: Quotient.of(pieces),
  weight: grams(Quotient.of(weight)),
  link: { ...link, ...other },
});
const share = (text: string) => Quotient.of(text);

describe("the loss of a weighing", () => {
  const { rows, source } = published<{ source: string; rows: readonly Record<string, string>[] }>("casting.json");
  const row = rows.find((each) => each.check === "loss share of cast weight");

  test(`is the published one for the published weights (${source})`, () => {
    const { loss } = judgeWeighed(
      weighed("finished", "1", row?.finished ?? ""),
      [weighed("cast", "1", row?.cast ?? "")],
      share("0.17"),
    );
    expect(loss?.share.rounded(4).toString()).toBe(row?.expected);
    expect([loss?.from, loss?.judgement]).toEqual(["cast", "within"]);
  });

  test("goes by the piece: 50 cast at 102.5 g, 48 of them back at 96 g, are 98.4 g out and 2.4 lost (hand arithmetic)", () => {
    const { loss } = judgeWeighed(weighed("polished", "48", "96"), [weighed("cast", "50", "102.5")], share("0.02"));
    expect(loss?.out.grams.value().toString()).toBe("98.4");
    expect(loss?.share.equals(Quotient.of("2.4").dividedBy(Quotient.of("98.4")))).toBe(true);
    expect(loss?.judgement).toBe("above");
  });

  test("of the finisher starts where the polisher ended, while the allowed loss is held against the casting", () => {
    const before = [weighed("cast", "1", "100"), weighed("polished", "1", "98")];
    // 98 to 97.02 is 1 % of what went out; 100 to 97.02 is 2.98 % since cast (hand arithmetic).
    const { loss } = judgeWeighed(weighed("finished", "1", "97.02"), before, share("0.025"));
    expect(loss?.share.value().toString()).toBe("0.01");
    expect(loss?.sinceCast?.value().toString()).toBe("0.0298");
    expect([loss?.from, loss?.judgement]).toEqual(["polished", "above"]);
  });

  test("below zero says that more came back than went out, by more than two of the scale's last digits", () => {
    const judged = (weight: string) =>
      judgeWeighed(weighed("finished", "1", weight), [weighed("cast", "1", "100")], share("0.1"));
    expect([judged("100.03").loss?.judgement, judged("100.03").doubt]).toEqual(["more back", "more back"]);
    // 100 may have been 100.00: a hundredth or two more is the scale's own.
    expect([judged("100.02").loss?.judgement, judged("100.02").doubt]).toEqual(["within", undefined]);
  });

  test("names what was sent and did not return: 2 of 50 at 2.05 g (hand arithmetic)", () => {
    const cast = weighed("cast", "50", "102.5");
    const { loss } = judgeWeighed(
      { ...weighed("polished", "48", "96.432"), sent: Quotient.of(50) },
      [cast],
      share("0.025"),
    );
    expect([loss?.missing?.links.toNumber(), loss?.missing?.weight.grams.toNumber()]).toEqual([2, 4.1]);
    expect(loss?.share.toNumber()).toBe(0.02);
    expect(judgeWeighed(weighed("polished", "48", "96.432"), [cast], undefined).loss?.missing).toBe(undefined);
  });

  test("is not said without a job, without a casting of that job and link, or of a casting", () => {
    const cast = weighed("cast", "1", "100");
    expect(judgeWeighed(weighed("finished", "1", "98", ""), [weighed("cast", "1", "100", "")], undefined).loss).toBe(
      undefined,
    );
    expect(judgeWeighed(weighed("finished", "1", "98", "1002"), [cast], undefined).loss).toBe(undefined);
    expect(judgeWeighed(weighed("finished", "1", "98", "1001", { mark: "18K" }), [cast], undefined).loss).toBe(
      undefined,
    );
    expect(judgeWeighed(weighed("cast", "1", "98"), [cast], undefined).loss).toBe(undefined);
  });

  test("on the edge of the allowed is within it, and without a limit nothing is above", () => {
    const others = [weighed("cast", "1", "100")];
    expect(judgeWeighed(weighed("finished", "1", "97.5"), others, share("0.025")).loss?.judgement).toBe("within");
    expect(judgeWeighed(weighed("finished", "1", "97.4"), others, share("0.025")).loss?.judgement).toBe("above");
    expect(judgeWeighed(weighed("finished", "1", "50"), others, undefined).loss?.judgement).toBe("no limit");
  });
});

test("the allowed share is the one that casting for a finished weight uses, whichever way Rates gives it", () => {
  const bases = fc.constantFrom("cast" as const, "finished" as const);
  fc.assert(
    fc.property(bases, positives(0.9, 4), positives(500, 2), (basis, given, finished) => {
      const loss: Loss = { basis, share: given.quotient };
      const cast = castWeight(grams(finished.quotient), loss);
      const allowed = allowedLossShare(loss);
      const left = cast.grams.times(Quotient.one.minus(allowed ?? Quotient.zero));
      expect(left.equals(finished.quotient)).toBe(true);
      expect(finishedWeight(cast, loss).grams.equals(left)).toBe(true);
    }),
  );
  expect(allowedLossShare({ basis: "grams", weight: grams(Quotient.one) })).toBe(undefined);
});

describe("what a weighing says of its link", () => {
  test("the mean is of this link at this stage, this weighing included: 10 at 20.5 g and 20 at 41.6 g are 2.07 g (hand arithmetic)", () => {
    const others = [
      weighed("finished", "10", "20.5", "7"),
      weighed("cast", "10", "99", "7"),
      weighed("finished", "10", "99", "7", { width: 9 }),
    ];
    const { mean, isFarOff } = judgeWeighed(weighed("finished", "20", "41.6", "8"), others, undefined);
    expect(mean?.mean.grams.equals(Quotient.of("2.07"))).toBe(true);
    expect([mean?.weighings, isFarOff]).toEqual([2, false]);
  });

  test("one far from three others is pointed at, and counted all the same", () => {
    const others = ["2.00", "2.02", "1.98"].map((weight) => weighed("finished", "1", weight, ""));
    const { isFarOff, mean } = judgeWeighed(weighed("finished", "1", "2.6", ""), others, undefined);
    expect([isFarOff, mean?.weighings]).toEqual([true, 4]);
  });

  test("is a guess below three weighings, and while its mean is not known to 2 %", () => {
    const said = (...weights: readonly string[]) =>
      isGuess(meanWeight(weights.map((weight) => weighed("finished", "1", weight))));
    expect(said("2.05")).toBe(true);
    expect(said("2.05", "2.05")).toBe(true);
    expect(said("2.05", "2.05", "2.05")).toBe(false);
    // Spread 0.1, within 4.303 x 0.1 / √3 = 0.248 of 2: more than 2 %.
    expect(said("1.9", "2", "2.1")).toBe(true);
    // Spread 0.01: within 0.0248, of 2 only 1.2 %.
    expect(said("1.99", "2", "2.01")).toBe(false);
  });
});

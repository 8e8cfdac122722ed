import { describe, expect, test } from "vitest";
import { grams, judgeWeighed, Quotient, type Stage, type Weighed } from "../../../src/index";
import { sayVerdict } from "../../../taskpane/weights/lossmessage";

const weighed = (stage: Stage, pieces: string, weight: string, job = "1001"): Weighed => ({
  job,
  stage,
  pieces: Quotient.of(pieces),
  weight: grams(Quotient.of(weight)),
  link: { model: "Ada curb", width: 8, mark: "14K", colour: "yellow" },
});
const say = (one: Weighed, others: readonly Weighed[], allowed: string | undefined = "0.025") => {
  const limit = allowed === undefined ? undefined : Quotient.of(allowed);
  return sayVerdict(one, judgeWeighed(one, others, limit), limit).map(({ text, isWarning }) => [
    text.replaceAll("\u00a0", " "),
    isWarning,
  ]);
};

describe("what the pane says of a weighing", () => {
  test("one weighing is a guess whose width nobody knows", () => {
    expect(say(weighed("cast", "10", "20.5"), [])).toEqual([
      ["Ada curb 8 mm 14K yellow, cast: still a guess: 2.050 g after one weighing.", false],
    ]);
  });

  test("two say how wide: 10 at 20.5 g and 10 at 20.6 g are 2.055 g, give or take 0.064 g (hand arithmetic)", () => {
    // Mean 2.055; variance 10 x 0.005² x 2 = 0.0005; √(0.0005 / 20) x 12.706 = 0.0635.
    expect(say(weighed("cast", "10", "20.6"), [weighed("cast", "10", "20.5")])).toEqual([
      ["Ada curb 8 mm 14K yellow, cast: still a guess: 2.055 g, give or take 0.064 g after 2 weighings.", false],
    ]);
  });

  test("a loss within the allowed is told with what went out", () => {
    // 2 of 100 g.
    expect(say(weighed("polished", "50", "98"), [weighed("cast", "50", "100")])[0]).toEqual([
      "Loss since cast: 2 %, 2.000 g of the 100.00 g that went out. Allowed on Rates: 2.5 % of the cast weight.",
      false,
    ]);
  });

  test("a loss above it is warned of, since cast, also where the finisher alone lost less", () => {
    const others = [weighed("cast", "1", "100"), weighed("polished", "1", "98")];
    expect(say(weighed("finished", "1", "97.02"), others).slice(0, 2)).toEqual([
      ["Loss since polished: 1 %, 0.980 g of the 98.00 g that went out. Since cast it is 2.98 %.", false],
      ["The loss since cast, 2.98 %, is above the 2.5 % that Rates allows.", true],
    ]);
  });

  test("more metal back than went out is warned of", () => {
    expect(say(weighed("finished", "1", "105"), [weighed("cast", "1", "100")])[0]).toEqual([
      "More metal came back than went out: 105.00 g against 100.00 g. It is written down, but left out of averages. Look at count and weight, and weigh again.",
      true,
    ]);
    expect(say(weighed("finished", "1", "105"), [weighed("cast", "1", "100")])[1]).toEqual([
      "Ada curb 8 mm 14K yellow, finished: no weighing counts yet.",
      false,
    ]);
  });

  test("without a share on Rates, or a casting to hold it against, that is said", () => {
    const polished = weighed("polished", "1", "98");
    expect(
      sayVerdict(polished, judgeWeighed(polished, [weighed("cast", "1", "100")], undefined), undefined)[0],
    ).toEqual({
      text: expect.stringContaining("Rates gives no share to hold it against."),
      isWarning: false,
    });
    expect(say(polished, [])[0]).toEqual(["Job 1001 has no cast weigh-in of this link: no loss can be said.", false]);
  });

  test("one far from the others is pointed at, with what one piece comes to", () => {
    const others = ["20.0", "20.2", "19.8"].map((weight) => weighed("cast", "10", weight));
    expect(say(weighed("cast", "10", "26"), others).at(-1)).toEqual([
      "One piece comes to 2.600 g, far from the other weighings of it. It is written down all the same: look at count and weight, and weigh again.",
      true,
    ]);
  });
});

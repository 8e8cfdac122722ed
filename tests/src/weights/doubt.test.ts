import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { STAGES, type Stage } from "../../../src/trade/stagedweight";
import { grams } from "../../../src/units/weight";
import { countedWeighings, type Weighed } from "../../../src/weights/doubt";
import { judgeWeighed } from "../../../src/weights/weighingresult";

const weighed = (stage: Stage, pieces: string, weight: string, more: Partial<Weighed> = {}): Weighed => ({
  job: "1001",
  stage,
  pieces: Quotient.of(pieces),
  weight: grams(Quotient.of(weight)),
  link: { model: "Ada curb", width: 8, mark: "14K", colour: "yellow" },
  ...more,
});
const doubts = (...all: readonly Weighed[]) => {
  const known = countedWeighings(all);
  return all.map((each) => known.doubts.get(each));
};

describe("weighings that cannot be", () => {
  test("a piece of ten times the others, or a tenth of them, is the one in doubt", () => {
    const [two, again] = [weighed("finished", "10", "20"), weighed("finished", "10", "20.4")];
    expect(doubts(two, again, weighed("finished", "10", "205"))).toEqual([undefined, undefined, "ten times"]);
    expect(doubts(two, again, weighed("finished", "10", "2.0"))).toEqual([undefined, undefined, "ten times"]);
    expect(doubts(two, again, weighed("finished", "10", "150"))).toEqual([undefined, undefined, undefined]);
  });

  test("of two alone either may be the wrong one", () => {
    expect(doubts(weighed("finished", "10", "20"), weighed("finished", "10", "200"))).toEqual([
      "ten times",
      "ten times",
    ]);
  });

  test("stages do not speak of each other's pieces: wax is light", () => {
    expect(doubts(weighed("model", "10", "1.5"), weighed("cast", "10", "20.5"))).toEqual([undefined, undefined]);
  });

  test("more back than went out is in doubt, and the next stage is then held against the castings", () => {
    const cast = weighed("cast", "10", "20.5");
    const polished = weighed("polished", "10", "21");
    const finished = weighed("finished", "10", "20");
    expect(doubts(cast, polished, finished)).toEqual([undefined, "more back", undefined]);
    expect(judgeWeighed(finished, [cast, polished], undefined).loss?.from).toBe("cast");
    const right = { ...polished, isConfirmed: true };
    expect(judgeWeighed(finished, [cast, right], undefined).loss?.from).toBe("polished");
  });
});

const ofLink = fc.array(
  fc.tuple(fc.constantFrom(...STAGES), fc.integer({ min: 1, max: 60 }), fc.integer({ min: 150, max: 250 })),
  {
    minLength: 3,
    maxLength: 12,
  },
);
const list = (drawn: readonly (readonly [Stage, number, number])[]) =>
  // Each of a job of its own: 1.5 to 2.5 g a piece, so none is in doubt.
  drawn.map(([stage, pieces, cents], at) =>
    weighed(
      stage,
      String(pieces),
      Quotient.of(pieces * cents)
        .dividedBy(Quotient.of(100))
        .value()
        .toString(),
      { job: String(at) },
    ),
  );

test("a weighing that cannot be changes no mean and no other judgement, until it is confirmed", () => {
  fc.assert(
    fc.property(ofLink, fc.integer({ min: 1, max: 60 }), fc.boolean(), (drawn, pieces, isHeavy) => {
      const [one, ...others] = list(drawn);
      if (!one || others.filter(({ stage }) => stage === one.stage).length < 2) return;
      const piece = isHeavy ? 25 : 0.1;
      const slip = weighed(
        one.stage,
        String(pieces),
        Quotient.of(String(pieces * piece))
          .value()
          .toString(),
        { job: "slip" },
      );
      const without = judgeWeighed(one, others, undefined);
      expect(judgeWeighed(one, [...others, slip], undefined)).toEqual(without);
      const itself = judgeWeighed(slip, [one, ...others], undefined);
      expect([itself.doubt, itself.mean?.mean]).toEqual(["ten times", without.mean?.mean]);
      const confirmed = judgeWeighed(one, [...others, { ...slip, isConfirmed: true }], undefined);
      expect(confirmed.mean?.weighings).toBe((without.mean?.weighings ?? 0) + 1);
    }),
  );
});

test("the order in which weighings were written down changes nothing", () => {
  fc.assert(
    fc.property(ofLink, (drawn) => {
      const all = [...list(drawn), weighed("finished", "10", "205"), weighed("cast", "10", "20")];
      const known = countedWeighings(all);
      const turned = countedWeighings([...all].reverse());
      expect(all.map((each) => turned.doubts.get(each))).toEqual(all.map((each) => known.doubts.get(each)));
      expect(turned.counted.length).toBe(known.counted.length);
    }),
  );
});

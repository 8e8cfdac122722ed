import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { metalRateOf, perGram } from "../../../src/gold/goldrate";
import { lineOfWeight } from "../../../src/makeorbuy/chainchoice";
import {
  broughtAt,
  type EarningSpan,
  earningByLinks,
  earningByLinkWeight,
  marginAt,
  premiumFor,
  type Wanted,
} from "../../../src/margins/earning";
import { otherLengths } from "../../../src/margins/otherlengths";
import { costPiece } from "../../../src/quote/piececosts";
import { money } from "../../../src/units/money";
import { grams } from "../../../src/units/weight";
import {
  ORDER,
  orderOf,
  RATES,
  type RandomOrder,
  type Record_,
  randomOrder,
  randomRates,
  ratesOf,
  reckon,
} from "../orders";
import { published } from "../published";
import { expectExact, figure, figures, positives, rounded } from "../reference";

const q = (text: string) => Quotient.of(text);

/** At this spot a mark of 250 has the metal rate of 25.00 of the common figures; 2 g lost at the metal rate, 50 labour. */
const AT_25 = { spot: "3110.34768" };
/** 25 in at 4 links an inch: 100 links of 1 g, so a piece weighs as many grams as it has links. */
const HUNDRED_GRAMS = { mark: "250", length: "25", linkWeight: "1" };

function asked(order: Record_, rates: Record_, premium: string, margin: string) {
  const workshop = ratesOf({ ...AT_25, ...rates });
  const record = { ...ORDER, ...HUNDRED_GRAMS, ...order };
  const read = orderOf(record, workshop);
  const line = read.lines[0];
  if (!line) throw new Error("no line");
  const wanted: Wanted = { premium: perGram(q(premium), workshop.currency), margin: q(margin) };
  return { line, spot: read.spot, rates: workshop, wanted };
}

const byWeight = ({ line, spot, wanted, rates }: ReturnType<typeof asked>) =>
  earningByLinkWeight(line, spot, wanted, rates);
const byLinks = ({ line, spot, wanted, rates }: ReturnType<typeof asked>) => earningByLinks(line, spot, wanted, rates);

describe("heavier or lighter links", () => {
  test("at 8.00 a gram over metal 10 % is earned from 100 / 3.2 g up (hand arithmetic)", () => {
    // A gram brings 0.9 x 33 = 29.7 and costs 26.5; 50 labour and 2 g lost at 25 are to be earned.
    const [span, ...others] = byWeight(asked({}, {}, "8", "0.1"));
    expectExact(span?.from?.grams ?? Quotient.zero, new Fraction("31.25"));
    expect(span?.to).toBeUndefined();
    expect(others).toEqual([]);
  });

  test("a casting minimum of 300 moves that to 400 / 4.7 g (hand arithmetic)", () => {
    // Below 200 g casting costs 300 whatever the weight: 29.7 - 25 is earned a gram.
    const [span] = byWeight(asked({}, { castingMinimum: "300" }, "8", "0.1"));
    expectExact(span?.from?.grams ?? Quotient.zero, new Fraction(4000, 47));
  });

  test("a labour minimum of 150 moves it to 200 / 3.2 g (hand arithmetic)", () => {
    const [span] = byWeight(asked({}, { labourMinimum: "150" }, "8", "0.1"));
    expectExact(span?.from?.grams ?? Quotient.zero, new Fraction("62.5"));
  });

  test("a tax of 10 % held in the price takes 3 of the 33: 10 % of the rest from 100 / 0.5 g up (hand arithmetic)", () => {
    const [span] = byWeight(asked({}, { tax: "0.1", taxIs: "in the price" }, "8", "0.1"));
    expectExact(span?.from?.grams ?? Quotient.zero, new Fraction(200));
  });

  test("where a gram costs more than it may, no weight earns it (hand arithmetic: 0.7 x 33 = 23.1 for 26.5)", () => {
    expect(byWeight(asked({}, {}, "8", "0.3"))).toEqual([]);
  });

  test("a heavy clasp bought cheaply earns for a light chain only: up to 152.5 + 10 g (hand arithmetic)", () => {
    // 0.9 x 29 = 26.1 a gram. The clasp's 10 g bring 261 and cost 100; 100 flat; each gram of chain loses 0.4.
    const [span] = byWeight(asked({ claspWeight: "10", claspCost: "100" }, {}, "4", "0.1"));
    expect(span?.from).toBeUndefined();
    expectExact(span?.to?.grams ?? Quotient.zero, new Fraction("162.5"));
  });

  test("with nothing flat every weight earns it, or none does (hand arithmetic)", () => {
    const free = { labourFlat: "0", loss: "0" };
    expect(byWeight(asked({}, free, "8", "0.1"))).toEqual([{ from: undefined, to: undefined, links: undefined }]);
    expect(byWeight(asked({}, free, "4", "0.1"))).toEqual([]);
  });
});

describe("more or fewer links", () => {
  test("whole links: 31.25 g is not to be had of links of 1 g, so 32 of them are the first (hand arithmetic)", () => {
    const [span] = byLinks(asked({}, {}, "8", "0.1"));
    expectExact(span?.from?.grams ?? Quotient.zero, new Fraction(32));
    expect(span?.to).toBeUndefined();
    expect(span?.links).toEqual({ from: 32, to: 5000 });
  });

  test("a stone in every third link leaves a gap: 80, then 82 and up (hand arithmetic)", () => {
    // Earned beyond the margin: 3.2 x links - 100 - 6 x stones, where 0.9 of the price must pay for a stone of 6.
    // 80 links, 26 stones: 256 - 100 - 156 = 0. 81 links, 27 stones: -2.8. 82: 0.4. 83: 3.6. 84, 28 stones: 0.8; no gap after.
    const stones = { stonesOn: "every n-th link", stoneEvery: "3", stonePrice: "5", settingFee: "1" };
    const spans = byLinks(asked(stones, {}, "8", "0.1"));
    expect(spans.map(({ links }) => links)).toEqual([
      { from: 80, to: 80 },
      { from: 82, to: 5000 },
    ]);
    expect(spans.map(({ from, to }) => [from?.grams.toNumber(), to?.grams.toNumber()])).toEqual([
      [80, 80],
      [82, undefined],
    ]);
  });

  test("twelve stones need twelve links: the shortest that has room for them earns already", () => {
    const stones = { stonesOn: "a number of links", stoneCount: "12", stonePrice: "0", settingFee: "0" };
    const [span] = byLinks(asked(stones, { labourFlat: "0", loss: "0" }, "8", "0.1"));
    expect(span).toEqual({ from: undefined, to: undefined, links: { from: 12, to: 5000 } });
  });

  test("any number of links earns it exactly where it lies in a span: costs in exact rationals (fraction.js)", () => {
    fc.assert(
      fc.property(
        randomRates,
        randomOrder,
        figures(0, 60, 2),
        figures(0, 0.6, 3),
        fc.array(fc.integer({ min: 1, max: 400 }), { minLength: 5, maxLength: 5 }),
        (rates, order, premium, share, counts) => {
          const { spans } = spansOf(rates.record, order.record, premium.text, share.text);
          for (const links of counts) {
            const piece = reckon(rates, ofLinks(order, links));
            const net = piece.finished.mul(piece.metalRate.add(premium.fraction));
            const earns = net.mul(new Fraction(1).sub(share.fraction)).gte(piece.landed);
            const lies = spans.some((span) => span.links && span.links.from <= links && links <= span.links.to);
            expect(lies).toBe(earns);
          }
        },
      ),
      { numRuns: 80 },
    );
  });

  test("with colours in turn and stones in every so many links, every number of links to 300 is told rightly", () => {
    const ratesAndLine = fc.record({
      pattern: fc.stringMatching(/^Y[YW]{0,3}$/),
      stoneEvery: fc.integer({ min: 1, max: 7 }).map(String),
      stonePrice: figures(0, 12, 1).map(({ text }) => text),
      castingMinimum: fc.constantFrom("0", "60", "300"),
      premium: figures(4, 12, 1),
    });
    fc.assert(
      fc.property(ratesAndLine, ({ pattern, stoneEvery, stonePrice, castingMinimum, premium }) => {
        const stones = { stonesOn: "every n-th link", stoneEvery, stonePrice, settingFee: "1" };
        const colours = { pattern, linkWeightWhite: "1.3", plated: "not plated" };
        const record = { ...ORDER, ...HUNDRED_GRAMS, ...stones, ...colours };
        const { spans, marginOf } = spansOf({ ...RATES, ...AT_25, castingMinimum }, record, premium.text, "0.1");
        for (let links = 1; links <= 300; links += 1) {
          const earns = Quotient.of(marginOf(links)?.minus(q("0.1")).rounded(30) ?? -1).isNegative() === false;
          const lies = spans.some((span) => span.links && span.links.from <= links && links <= span.links.to);
          expect([links, lies]).toEqual([links, earns]);
        }
      }),
      { numRuns: 40 },
    );
  });

  test("one link less than a span, or one more, does not earn it", () => {
    fc.assert(
      fc.property(randomRates, randomOrder, figures(0, 60, 2), figures(0, 0.6, 3), (rates, order, premium, share) => {
        const { spans, marginOf } = spansOf(rates.record, order.record, premium.text, share.text);
        for (const { links } of spans) {
          if (!links) throw new Error("spans by links say them");
          if (links.from > 1 && marginOf(links.from - 1)) expectBelow(marginOf(links.from - 1), share.quotient);
          if (links.to < 5000) expectBelow(marginOf(links.to + 1), share.quotient);
          expect(marginOf(links.from)?.isLessThan(share.quotient.minus(q("1e-30")))).toBe(false);
        }
      }),
      { numRuns: 80 },
    );
  });
});

describe("edges by link weight", () => {
  test("at an edge the margin is the wanted one; a thousandth beyond it is not, a thousandth within it is", () => {
    fc.assert(
      fc.property(randomRates, randomOrder, figures(0, 60, 2), figures(0, 0.6, 3), (rates, order, premium, share) => {
        const { line, spot, rates: workshop, wanted } = wantedOf(rates.record, order.record, premium.text, share.text);
        const base = line.clasp.weight.grams;
        const marginOf = (finished: Quotient) =>
          marginAt(
            costPiece(lineOfWeight(line, grams(finished.minus(base)), "heavier links"), spot, workshop),
            wanted.premium,
            workshop,
          );
        const apart = q("0.001");
        for (const { from, to } of earningByLinkWeight(line, spot, wanted, workshop)) {
          for (const [edge, inwards] of [
            [from, apart],
            [to, Quotient.zero.minus(apart)],
          ] as const) {
            if (!edge) continue;
            expect(marginOf(edge.grams).rounded(20).toFixed(20)).toBe(rounded(share.fraction, 20));
            const outside = edge.grams.minus(inwards);
            if (outside.isGreaterThan(base)) expectBelow(marginOf(outside), share.quotient);
            if (!from?.grams.equals(to?.grams ?? Quotient.zero)) {
              expect(marginOf(edge.grams.plus(inwards)).isLessThan(share.quotient)).toBe(false);
            }
          }
        }
      }),
      { numRuns: 120 },
    );
  });

  test("any weight earns it exactly where it lies in the span", () => {
    fc.assert(
      fc.property(
        randomRates,
        randomOrder,
        figures(0, 60, 2),
        figures(0, 0.6, 3),
        positives(400, 2),
        (rates, order, premium, share, chain) => {
          const {
            line,
            spot,
            rates: workshop,
            wanted,
          } = wantedOf(rates.record, order.record, premium.text, share.text);
          const piece = costPiece(lineOfWeight(line, grams(chain.quotient), "heavier links"), spot, workshop);
          const net = broughtAt(piece, wanted.premium, workshop).amount;
          const beyond = net.times(Quotient.one.minus(share.quotient)).minus(piece.landed.amount);
          fc.pre(!Quotient.of(beyond.rounded(30)).isZero());
          const lies = earningByLinkWeight(line, spot, wanted, workshop).some((span) =>
            isIn(piece.finishedWeight, span),
          );
          expect(lies).toBe(beyond.isPositive());
        },
      ),
      { numRuns: 120 },
    );
  });
});

describe("the premium a piece must bring", () => {
  const { source, rows } = published<{
    source: string;
    rows: readonly { readonly cost: string; readonly price: string; readonly margin?: string }[];
  }>("markup-margin.json");

  test.each(rows.filter((row) => row.margin !== undefined))(
    `a cost of $cost at a margin of $margin asks $price: of 10 g, a tenth of it less the metal rate (${source})`,
    ({ cost, price, margin = "" }) => {
      const rates = ratesOf();
      const { spot, line } = asked({}, {}, "0", "0");
      const piece = {
        ...costPiece(line, spot, rates),
        landed: money(q(cost), rates.currency),
        finishedWeight: grams(q("10")),
        markRate: metalRateOf("the mark", perGram(q("5"), rates.currency)),
      };
      expectExact(premiumFor(piece, q(margin), rates).perGram, new Fraction(price).div(10).sub(5));
    },
  );

  test("100 g that cost 2750 must bring 2750 / 0.9 / 100 - 25 for 10 % (hand arithmetic)", () => {
    const { line, spot, rates } = asked({}, {}, "0", "0");
    const needed = premiumFor(costPiece(line, spot, rates), q("0.1"), rates);
    expectExact(needed.perGram, new Fraction(2750).div("0.9").div(100).sub(25));
  });

  test("at that premium the margin is the wanted one, with the tax in the price or on top", () => {
    fc.assert(
      fc.property(randomRates, randomOrder, figures(0, 0.9, 3), fc.boolean(), (rates, order, share, held) => {
        const record = { ...rates.record, taxIs: held ? "in the price" : "on top" };
        const { line, spot, rates: workshop } = wantedOf(record, order.record, "0", "0");
        const piece = costPiece(line, spot, workshop);
        const margin = marginAt(piece, premiumFor(piece, share.quotient, workshop), workshop);
        expect(margin.rounded(30).toFixed(30)).toBe(rounded(share.fraction, 30));
      }),
      { numRuns: 120 },
    );
  });
});

function wantedOf(rates: Record_, order: Record_, premium: string, margin: string) {
  const workshop = ratesOf(rates);
  const read = orderOf(order, workshop);
  const line = read.lines[0];
  if (!line) throw new Error("no line");
  return {
    line,
    spot: read.spot,
    rates: workshop,
    wanted: { premium: perGram(q(premium), workshop.currency), margin: q(margin) },
  };
}

function spansOf(rates: Record_, order: Record_, premium: string, margin: string) {
  const { line, spot, rates: workshop, wanted } = wantedOf(rates, order, premium, margin);
  const lengths = otherLengths(line);
  return {
    spans: earningByLinks(line, spot, wanted, workshop),
    marginOf(links: number): Quotient | undefined {
      const other = lengths.at(links);
      return other && marginAt(costPiece(other, spot, workshop), wanted.premium, workshop);
    },
  };
}

/** The order with such a length that it has so many links. */
function ofLinks(order: RandomOrder, links: number): RandomOrder {
  const unit = { in: "25.4", cm: "10", mm: "1" }[order.words.lengthUnit] ?? "";
  const per = { in: "25.4", cm: "10" }[order.words.linksPerUnit] ?? "";
  const pitch = new Fraction(per).div(order.figures.linksPer.fraction);
  const length = pitch.mul(links).div(unit).add(order.figures.claspLength.fraction);
  return { ...order, figures: { ...order.figures, length: { ...figure("1"), fraction: length } } };
}

function expectBelow(margin: Quotient | undefined, share: Quotient): void {
  expect(margin?.isLessThan(share)).toBe(true);
}

function isIn({ grams: weight }: { readonly grams: Quotient }, { from, to }: EarningSpan): boolean {
  return !(from && weight.isLessThan(from.grams)) && !(to && weight.isGreaterThan(to.grams));
}

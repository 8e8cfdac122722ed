import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { type SpotRisk, spotRisk } from "../../../src/openquotes/spotrisk";
import { type Order, parseOrder } from "../../../src/order/order";
import { costOrder } from "../../../src/quote/costsheet";
import { costPiece } from "../../../src/quote/piececosts";
import { makeQuote } from "../../../src/quote/quote";
import { NOT_KNOWN, type QuotedTerms, termsOf } from "../../../src/rates/quotedterms";
import type { Rates } from "../../../src/rates/rates";
import { spotLimit } from "../../../src/trade/price";
import { money } from "../../../src/units/money";
import { ORDER, orderOf, type Record_, randomOrder, randomRates, ratesOf, read } from "../orders";
import { expectExact, figures, rounded } from "../reference";
import { orderOfRow } from "../typedorders";

const q = (text: string) => Quotient.of(text);
const OUNCE = "31.1034768";

/** A metal rate of 25.00 for the mark 250; 100 g of chain, 2 g lost: 102 x 25 + 150 casting + 50 labour = 2750. */
const AT_25 = { spot: "3110.34768" };
const HUNDRED_GRAMS = { mark: "250", length: "25", linkWeight: "1", spot: AT_25.spot };

/** What a quote made at 25.00 a gram is worth at another spot. @param now spot */
function risk(now: string, total: string, order: Record_ = {}, rates: Record_ = {}): SpotRisk {
  const workshop = ratesOf({ ...rates, spot: now });
  const quoted = orderOf({ ...HUNDRED_GRAMS, ...order }, workshop);
  return spotRisk(quoted, money(q(total), workshop.currency), workshop, termsOf(workshop, NOT_KNOWN));
}

const spotIn = (limit: SpotRisk["floor"]) => ("spot" in limit ? limit.spot.amount : Quotient.zero);
const spotAt = (rate: Fraction | string) => new Fraction(rate).mul(OUNCE).mul(4);
const decimal = (value: Fraction) => value.toString(20);

test("a tax that rises from 8.25 to 10 % after the quote lowers neither what the work brings nor its limits (hand arithmetic)", () => {
  const quotedAt = ratesOf({ ...AT_25, tax: "0.0825" });
  const order = orderOf(HUNDRED_GRAMS, quotedAt);
  // 3,575 and 8.25 % of it, 294.9375, to the cent.
  const total = money(q("3869.94"), "USD");
  const today = ratesOf({ ...AT_25, tax: "0.10", taxIs: "in the price" });
  const { net, floor } = spotRisk(order, total, today, termsOf(quotedAt, NOT_KNOWN));
  expectExact(net.amount, new Fraction(3575));
  expectExact(spotIn(floor), spotAt(new Fraction("3017.5").div(102)));
});

describe("a plain piece at a kept price of 3575", () => {
  test("at its own spot it leaves 825; at 30 a gram 315, below the 10 % of its floor (hand arithmetic)", () => {
    const now = risk(AT_25.spot, "3575");
    expectExact(now.margin ?? Quotient.zero, new Fraction(825, 3575));
    expect([now.belowFloor, now.losesMoney]).toEqual([false, false]);
    // 102 x 30 + 200 = 3260.
    const dearer = risk(decimal(spotAt("30")), "3575");
    expectExact(dearer.margin ?? Quotient.zero, new Fraction(315, 3575));
    expect([dearer.belowFloor, dearer.losesMoney]).toEqual([true, false]);
  });

  test("10 % is left up to where 102 g cost 3217.5 - 200, nothing from 3575 - 200 on (hand arithmetic)", () => {
    const { floor, zero } = risk(AT_25.spot, "3575");
    expect([floor.kind, zero.kind]).toEqual(["upTo", "upTo"]);
    expectExact(spotIn(floor), spotAt(new Fraction("3017.5").div(102)));
    expectExact(spotIn(zero), spotAt(new Fraction(3375).div(102)));
  });

  test("both are what SPOTLIMIT gives for 102 g cast and 200 of other costs", () => {
    const { floor, zero } = risk(AT_25.spot, "3575");
    const usd = (amount: string) => money(q(amount), "USD");
    const { gold } = orderOf(HUNDRED_GRAMS, ratesOf()).lines[0] ?? {};
    if (!gold) throw new Error("no line");
    const given = { kind: "weight", grams: q("102") } as const;
    for (const [limit, share] of [
      [floor, "0.1"],
      [zero, "0"],
    ] as const) {
      const worksheet = spotLimit(usd("3575"), given, gold, usd("200"), q(share));
      expect(spotIn(limit).minus(worksheet.amount).rounded(40).isZero()).toBe(true);
    }
  });

  test("what costs more besides the gold than the price leaves has no spot low enough", () => {
    expect(risk(AT_25.spot, "150").zero).toEqual({ kind: "never" });
    expect(risk(AT_25.spot, "150").losesMoney).toBe(true);
  });

  test("settled by final weight it is at the same risk: its grams follow the scale, not spot", () => {
    const settled = risk(AT_25.spot, "3575", { settled: "by final weight", tolerance: "5 %" });
    expectExact(spotIn(settled.floor), spotAt(new Fraction("3017.5").div(102)));
  });

  test("today's other rates count: 20 more labour lowers both limits (hand arithmetic)", () => {
    const { zero } = risk(AT_25.spot, "3575", {}, { labourFlat: "70" });
    expectExact(spotIn(zero), spotAt(new Fraction(3355).div(102)));
  });
});

describe("the customer's own gold", () => {
  const brought = (weight: string, use: string, share = "") => ({
    ownGoldWeight: weight,
    ownGoldMark: "1000",
    ownGoldUse: use,
    ownGoldShare: share,
  });

  test("used for all of it carries no risk: 25.5 g fine for 102 g of 250, at double the spot as at its own", () => {
    const dearer = risk("6220.69536", "3575", brought("25.5", "used"));
    expect([dearer.floor, dearer.zero]).toEqual([{ kind: "always" }, { kind: "always" }]);
    expectExact(dearer.landed.amount, new Fraction(2750));
    expectExact(dearer.covered.grams, new Fraction("25.5"));
  });

  test("overhead on it carries none either", () => {
    expect(risk("6220.69536", "3575", brought("30", "used"), { overhead: "0.1" }).floor.kind).toBe("always");
  });

  test("used for half of it leaves half the risk: 51 g at today's rate (hand arithmetic)", () => {
    // 2750 + 51 x (rate - 25) = 3217.5.
    const { floor } = risk(AT_25.spot, "3575", brought("12.75", "used"));
    expectExact(spotIn(floor), spotAt(new Fraction("467.5").div(51).add(25)));
  });

  test("credited it is worth today's spot: 10 g fine at 95 % leave 16 of the 25.5 g (hand arithmetic)", () => {
    const { floor, covered } = risk(AT_25.spot, "3575", brought("10", "credited", "95 %"));
    expectExact(covered.grams, new Fraction("9.5"));
    expectExact(spotIn(floor), new Fraction(AT_25.spot).add(new Fraction("467.5").mul(OUNCE).div(16)));
  });

  test("credited for more gold than the work needs, the price is at risk where spot falls (hand arithmetic)", () => {
    // 60 - 25.5 = 34.5 g are held at what was credited.
    const { floor } = risk(AT_25.spot, "3575", brought("60", "credited", "100 %"));
    expect(floor.kind).toBe("downTo");
    expectExact(spotIn(floor), new Fraction(AT_25.spot).sub(new Fraction("467.5").mul(OUNCE).div("34.5")));
  });

  test("on the quick basis no more gold is spared than was charged", () => {
    // 2 % of the cast weight: 102.04 g are cast, 102 g are charged; all of it is the customer's.
    const basis = { costBasis: "quick", lossBasis: "cast", loss: "0.02" };
    expect(risk("6220.69536", "3575", brought("100", "used"), basis).floor.kind).toBe("always");
  });
});

describe("any order", () => {
  const terms = fc.record({
    discount: figures(0, 0.3, 3),
    shipping: figures(0, 90, 2),
    tax: figures(0, 0.27, 4),
    overhead: figures(0, 0.3, 2),
    taxIs: fc.constantFrom("on top", "in the price"),
    shippingTaxed: fc.constantFrom("yes", "no"),
    gold: fc.oneof(
      fc.constant({}),
      fc.record({
        ownGoldWeight: figures(1, 400, 1).map(({ text }) => text),
        ownGoldMark: fc.constantFrom("14K", "999"),
        ownGoldUse: fc.constantFrom("used", "credited"),
        ownGoldShare: fc.constantFrom("0.9", "1"),
      }),
    ),
    extra: fc.record({ amount: figures(0, 90, 2), cost: figures(0, 90, 2) }),
    spotNow: figures(1, 5000, 2),
    taxNow: fc.record({
      taxIs: fc.constantFrom("on top", "in the price"),
      shippingTaxed: fc.constantFrom("yes", "no"),
      tax: fc.constantFrom("0", "0.0825", "0.19"),
    }),
  });

  interface Quoted {
    readonly order: Order;
    readonly rates: Rates;
    readonly quote: ReturnType<typeof makeQuote>;
    readonly terms: QuotedTerms;
    readonly later: Rates;
  }

  function law(check: (quoted: Quoted) => void, numRuns = 60): void {
    fc.assert(
      fc.property(randomRates, randomOrder, terms, (given, ordered, term) => {
        const { overhead, taxIs, shippingTaxed, tax, spotNow, taxNow, gold, extra, discount, shipping } = term;
        const rates = ratesOf({ ...given.record, overhead: overhead.text, taxIs, shippingTaxed, tax: tax.text });
        const form = orderOfRow({
          ...ORDER,
          ...ordered.record,
          ...gold,
          discount: discount.text,
          shipping: shipping.text,
          spot: given.figures.spot.text,
        });
        const extras = [{ text: "Box", amount: extra.amount.text, cost: extra.cost.text }];
        const twice = { ...form.lines[0], quantity: "2", linkWeight: "1.5" };
        const order = read(parseOrder({ ...form, lines: [...form.lines, twice], extras }, rates));
        const quote = makeQuote(order, costOrder(order, rates), rates, "2026-11-25");
        const later = ratesOf({
          ...given.record,
          overhead: overhead.text,
          ...taxNow,
          spot: spotNow.text,
        });
        check({ order, rates, quote, later, terms: termsOf(rates, NOT_KNOWN) });
      }),
      { numRuns },
    );
  }

  const at = (rates: Rates, spot: Quotient): Rates => ({ ...rates, spot: money(spot, rates.currency) });

  test("at the spot it was quoted at it is the quote's own: what it brings, its margin, its floor", () => {
    law(({ order, rates, quote: { quote, watch }, terms }) => {
      const { net, margin, belowFloor } = spotRisk(order, quote.total, at(rates, order.spot.amount), terms);
      expect(net.amount.minus(watch.net.amount).rounded(40).isZero()).toBe(true);
      expect(margin?.rounded(30).toFixed(30)).toBe(watch.margin?.rounded(30).toFixed(30));
      expect(belowFloor).toBe(watch.belowFloor);
    });
  });

  test("it brings what the quote brought, whatever tax Rates hold since: what was quoted is taken apart at its own terms", () => {
    law(({ order, quote: { quote, watch }, later, terms }) => {
      const { net } = spotRisk(order, quote.total, later, terms);
      expect(net.amount.minus(watch.net.amount).rounded(40).isZero()).toBe(true);
    });
  });

  test("at its floor's spot the margin is the least margin, far past the cent; on the wrong side of it less", () => {
    law(({ order, quote: { quote }, later, terms }) => {
      const { floor } = spotRisk(order, quote.total, later, terms);
      if (!("spot" in floor)) return;
      const there = spotRisk(order, quote.total, at(later, floor.spot.amount), terms);
      const kept = there.net.amount.times(Quotient.one.minus(later.leastMargin));
      expect(there.landed.amount.rounded(25).toFixed(25)).toBe(kept.rounded(25).toFixed(25));
      expect(there.margin?.rounded(20).toFixed(20)).toBe(
        rounded(new Fraction(later.leastMargin.value().toString()), 20),
      );
      expect(there.belowFloor).toBe(false);
      const step = q(floor.kind === "upTo" ? "0.01" : "-0.01");
      expect(spotRisk(order, quote.total, at(later, floor.spot.amount.plus(step)), terms).belowFloor).toBe(true);
      const within = floor.spot.amount.minus(step);
      if (within.isPositive()) expect(spotRisk(order, quote.total, at(later, within), terms).belowFloor).toBe(false);
    });
  });

  test("where money begins to be lost cost equals what the work brings", () => {
    law(({ order, quote: { quote }, later, terms }) => {
      const { zero } = spotRisk(order, quote.total, later, terms);
      if (!("spot" in zero)) return;
      const there = spotRisk(order, quote.total, at(later, zero.spot.amount), terms);
      expect(there.landed.amount.rounded(25).toFixed(25)).toBe(there.net.amount.rounded(25).toFixed(25));
      expect(there.losesMoney).toBe(false);
    });
  });

  test("without gold of the customer's the cost is that of its pieces at today's spot, whichever it is", () => {
    law(({ order, quote: { quote }, later, terms }) => {
      if (order.ownGold) return;
      const pieces = order.lines.map((line) => costPiece(line, later.spot, later).landed.amount.times(line.quantity));
      const all = [...pieces, ...order.extras.map(({ cost }) => cost.amount)];
      const expected = all.reduce((total, amount) => total.plus(amount), Quotient.zero);
      const { landed } = spotRisk(order, quote.total, later, terms);
      expect(landed.amount.minus(expected).rounded(40).isZero()).toBe(true);
    });
  });
});

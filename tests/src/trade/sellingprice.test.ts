import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { perGram } from "../../../src/gold/goldrate";
import { netPrice, shownFactor, taxOf, withoutTax } from "../../../src/trade/salestax";
import { askedPrice, partAtPremium, priceUpToStep, shownPrice } from "../../../src/trade/sellingprice";
import { money } from "../../../src/units/money";
import { grams } from "../../../src/units/weight";

const usd = (amount: string) => money(Quotient.of(amount), "USD");
const share = (amount: string) => Quotient.of(amount);
const figure = ({ amount }: ReturnType<typeof usd>) => amount.toNumber();
const held = { share: share("0.08"), isIncluded: true };
const onTop = { share: share("0.08"), isIncluded: false };

describe("what a way of pricing asks, by hand", () => {
  const piece = {
    landed: usd("2600"),
    apart: usd("78"),
    weight: grams(share("100")),
    metalRate: perGram(share("25"), "USD"),
  };

  test("a markup of 30 % asks 3,380, a margin of 35 % 4,000, a premium of 7.50 3,250 and what is apart", () => {
    expect(figure(askedPrice(piece, { by: "markup", share: share("0.3") }))).toBe(3380);
    expect(figure(askedPrice(piece, { by: "margin", share: share("0.35") }))).toBe(4000);
    expect(figure(askedPrice(piece, { by: "premium", rate: perGram(share("7.5"), "USD") }))).toBe(3328);
  });

  test("a part goes by its weight where that brings more than it cost", () => {
    const rates = [perGram(share("25"), "USD"), perGram(share("5"), "USD")] as const;
    expect(figure(partAtPremium(grams(share("2")), ...rates, usd("40")))).toBe(60);
    expect(figure(partAtPremium(grams(share("0")), ...rates, usd("40")))).toBe(40);
  });
});

describe("tax", () => {
  test("is added to a price that holds it, and taken out again", () => {
    expect(figure(shownPrice(usd("1000"), held))).toBe(1080);
    expect(figure(shownPrice(usd("1000"), onTop))).toBe(1000);
    expect(figure(withoutTax(usd("1080"), held))).toBe(1000);
    expect(figure(taxOf(usd("1080"), held))).toBe(80);
    expect(figure(taxOf(usd("1000"), onTop))).toBe(80);
    expect(figure(netPrice(usd("1080"), share("0.1"), held))).toBe(900);
  });

  test("and what is left without it are the amount shown, in fractions", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), fc.integer({ min: 0, max: 9999 }), (cents, tenThousandths) => {
        const tax = { share: share(String(tenThousandths)).dividedBy(share("10000")), isIncluded: true };
        const shown = money(share(String(cents)), "USD");
        const sum = withoutTax(shown, tax).amount.plus(taxOf(shown, tax).amount);
        expect(sum.equals(shown.amount)).toBe(true);
        const factor = new Fraction(tenThousandths, 10000).add(1);
        expect(shownFactor(tax).toNumber()).toBe(factor.valueOf());
      }),
    );
  });
});

describe("a price goes up to its step", () => {
  test("and without one to the smallest coin", () => {
    expect(figure(priceUpToStep(usd("3865.212"), share("1"), 2))).toBe(3866);
    expect(figure(priceUpToStep(usd("3865"), share("5"), 2))).toBe(3865);
    expect(figure(priceUpToStep(usd("33.331"), share("0"), 2))).toBe(33.34);
    expect(figure(priceUpToStep(usd("3061.8595"), share("0"), 0))).toBe(3062);
  });
});

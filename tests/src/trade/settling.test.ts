import fc from "fast-check";
import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { goldOnScale, settledPrice } from "../../../src/trade/settling";
import { money } from "../../../src/units/money";
import { grams } from "../../../src/units/weight";
import { expectExact, positives } from "../reference";

const q = (text: string) => Quotient.of(text);

describe("stones lie on the scale and are not gold", () => {
  test("182 stones of 0.02928 ct weigh 1.065792 g: of 84.01 g on the scale 82.944208 g are gold (hand arithmetic)", () => {
    expectExact(goldOnScale(grams(q("84.01")), q("182").times(q("0.02928"))).grams, new Fraction("82.944208"));
  });

  test("what is gold and a fifth of the carats in grams are what lies on the scale", () => {
    fc.assert(
      fc.property(positives(500, 3), positives(40, 3), (gold, carats) => {
        const onScale = gold.fraction.add(carats.fraction.div(5));
        const weighed = grams(Quotient.of(onScale.toString()));
        expectExact(goldOnScale(weighed, q(carats.text)).grams, gold.fraction);
      }),
    );
  });

  test("stones as heavy as all that lies there are refused, with what would be right", () => {
    expect(() => goldOnScale(grams(q("1")), q("5"))).toThrow("5 to a gram");
  });
});

describe("a price that the final weight settles", () => {
  const quoted = (price: string, perGram: string, stated: string, tolerance: string) => ({
    price: money(q(price), "USD"),
    perGram: money(q(perGram), "USD"),
    stated: grams(q(stated)),
    tolerance: q(tolerance),
  });

  test("is the quoted one to the cent for a piece exactly as stated, whatever a gram brings", () => {
    fc.assert(
      fc.property(positives(9000, 2), positives(200, 2), positives(300, 2), (price, perGram, stated) => {
        const settled = settledPrice(quoted(price.text, perGram.text, stated.text, "0"), grams(q(stated.text)));
        expectExact(settled?.amount ?? q("-1"), price.fraction);
      }),
    );
  });

  test("moves by each gram up to the tolerance and is to be agreed beyond it (hand arithmetic)", () => {
    const terms = quoted("3907", "25", "108", "0.05");
    // 5 % of 108 g are 5.4 g, at 25 a gram 135.
    expectExact(settledPrice(terms, grams(q("113.4")))?.amount ?? q("0"), new Fraction(4042));
    expectExact(settledPrice(terms, grams(q("102.6")))?.amount ?? q("0"), new Fraction(3772));
    expect(settledPrice(terms, grams(q("113.41")))).toBeUndefined();
    expect(settledPrice(terms, grams(q("102.59")))).toBeUndefined();
  });
});

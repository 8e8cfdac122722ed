import { expect, test } from "vitest";
import { Quotient } from "../../../src/exact/quotient";
import { pricingOf, RULE_OF } from "../../../src/trade/pricemethod";

const FIGURE = Quotient.of("0.3");

test("a share for markup and margin, money a gram for a premium, money for a price set by hand", () => {
  expect(pricingOf("markup", FIGURE, "USD")).toEqual({ by: "markup", share: FIGURE });
  expect(pricingOf("margin", FIGURE, "USD")).toEqual({ by: "margin", share: FIGURE });
  expect(pricingOf("premium", FIGURE, "USD")).toMatchObject({
    by: "premium",
    rate: { perGram: FIGURE, currency: "USD" },
  });
  expect(pricingOf("own price", FIGURE, "USD")).toMatchObject({
    by: "own price",
    price: { amount: FIGURE, currency: "USD" },
  });
});

test("a margin is below all of the price; a markup may be more than the cost: a large one is asked about, not refused", () => {
  expect([RULE_OF.margin.below, RULE_OF.markup.most]).toEqual(["1", "1000000"]);
});

import { describe, expectTypeOf, test } from "vitest";
import {
  addMoney,
  askingCheck,
  atStage,
  type CostBasis,
  type CostingErrorCode,
  type Currency,
  castToFinished,
  castWeight,
  chainLength,
  type Fault,
  type Fit,
  grams,
  inLengthUnit,
  type Length,
  type Loss,
  type LossBasis,
  type LossShare,
  landedCost,
  lengthIn,
  type Mark,
  type Money,
  makeOrBuy,
  meltValue,
  metalRate,
  metalRateOf,
  minorDigits,
  money,
  type Order,
  type Parsed,
  parseMark,
  parseOrder,
  perGram,
  premiumOverMark,
  priceAtPremium,
  priceOverMark,
  type Quote,
  type QuoteLine,
  Quotient,
  type Rate,
  type Rates,
  type StagedWeight,
  subtractMoney,
  type Weight,
  weightIn,
} from "../../src/index";
import { roundToCurrency } from "../../src/units/money";
import type { TakeLink } from "../../taskpane/order/linkoffer";
import { orderOfRow } from "./typedorders";

declare const usd: Money<"USD">;
declare const eur: Money<"EUR">;
declare const usdRate: Rate<"USD">;
declare const eurRate: Rate<"EUR">;
declare const weight: Weight;
declare const length: Length;
declare const mark: Mark;
declare const rates: Rates;
declare const loss: Loss;
declare const share: LossShare;
declare const takeLink: TakeLink;
declare const record: Readonly<Record<string, unknown>>;

describe("a link's weight", () => {
  const wax = atStage("model", weight);
  const cast = atStage("cast", weight);
  const finished = atStage("finished", weight);

  test("as cast does not go into an order, nor does one whose stage nobody says", () => {
    takeLink({ texts: {}, weight: finished });
    takeLink({ texts: {}, weight: castToFinished(cast, share) });
    // @ts-expect-error as cast: polishing takes some of it
    takeLink({ texts: {}, weight: cast });
    // @ts-expect-error wax
    takeLink({ texts: {}, weight: wax });
    // @ts-expect-error a weight without its stage
    takeLink({ texts: {}, weight });
    // @ts-expect-error a text says no stage
    takeLink({ texts: { linkWeight: "1.1423" }, weight: finished });
    // @ts-expect-error nor does the text of one colour's links
    takeLink({ texts: { linkWeightWhite: "1.1423" }, weight: finished });
  });

  test("is finished once, by a loss that is a share", () => {
    // @ts-expect-error finished already
    castToFinished(finished, share);
    // @ts-expect-error wax is cast first
    castToFinished(wax, share);
    // @ts-expect-error grams per piece say nothing of one link
    castToFinished(cast, loss);
    expectTypeOf(castToFinished(cast, share)).toEqualTypeOf<StagedWeight<"finished">>();
    expectTypeOf<StagedWeight<"cast">>().not.toExtend<StagedWeight<"finished">>();
  });
});

describe("the metal in the pot and the metal of the mark", () => {
  test("never stand for each other, on either side of a comparison", () => {
    const pot = metalRateOf("the pot", usdRate);
    const ofMark = metalRateOf("the mark", usdRate);
    expectTypeOf<typeof pot>().not.toExtend<typeof ofMark>();
    const making = {
      weight,
      castingFee: usdRate,
      labour: usd,
      loss,
      other: usd,
      basis: "quick",
    } as const;
    makeOrBuy({ ...making, metalRate: pot }, { metalRate: ofMark, surcharge: usdRate });
    // @ts-expect-error bought at what is in the pot
    makeOrBuy({ ...making, metalRate: pot }, { metalRate: pot, surcharge: usdRate });
    // @ts-expect-error cast at what the mark says
    makeOrBuy({ ...making, metalRate: ofMark }, { metalRate: ofMark, surcharge: usdRate });
    // @ts-expect-error a metal that is not named
    makeOrBuy({ ...making, metalRate: pot }, { metalRate: usdRate, surcharge: usdRate });
    // @ts-expect-error a market counts from the mark
    premiumOverMark(usdRate, pot);
    // @ts-expect-error a market counts from the mark
    priceOverMark(weight, pot, usdRate);
  });
});

describe("two currencies", () => {
  test("are never added or subtracted", () => {
    expectTypeOf(addMoney(usd, usd)).toEqualTypeOf<Money<"USD">>();
    // @ts-expect-error euros beside dollars
    addMoney(usd, eur);
    // @ts-expect-error euros beside dollars, third
    addMoney(usd, usd, eur);
    // @ts-expect-error euros from dollars
    subtractMoney(usd, eur);
  });

  test("never meet in a cost or a price", () => {
    const making = {
      weight,
      metalRate: metalRateOf("the pot", usdRate),
      castingFee: usdRate,
      labour: usd,
      loss: { basis: "cast", share: Quotient.zero },
      other: usd,
      basis: "quick",
    } as const;
    expectTypeOf(landedCost(making)).toEqualTypeOf<Money<"USD">>();
    // @ts-expect-error labour in euros
    landedCost({ ...making, labour: eur });
    // @ts-expect-error casting fee in euros
    landedCost({ ...making, castingFee: eurRate });
    // @ts-expect-error surcharge in euros
    makeOrBuy(making, { metalRate: metalRateOf("the mark", usdRate), surcharge: eurRate });
    // @ts-expect-error premium in euros
    priceAtPremium(weight, usdRate, eurRate);
    // @ts-expect-error spot in euros
    askingCheck(usd, weight, mark, eur);
  });

  test("stay told apart through rounding, spot and melt value", () => {
    expectTypeOf(roundToCurrency(eur)).toEqualTypeOf<Money<"EUR">>();
    expectTypeOf(metalRate(eur, mark)).toEqualTypeOf<Rate<"EUR">>();
    expectTypeOf(meltValue(weight, mark, usd)).toEqualTypeOf<Money<"USD">>();
    expectTypeOf<Money<"USD">>().not.toExtend<Money<"EUR">>();
  });

  test("are those of ISO 4217: an ounce of gold is none", () => {
    // @ts-expect-error XAU has no minor unit
    money(Quotient.one, "XAU");
    // @ts-expect-error no such letters
    minorDigits("ZZZ");
    expectTypeOf<"KWD">().toExtend<Currency>();
  });
});

describe("quantities of different kinds", () => {
  test("do not stand for one another", () => {
    expectTypeOf<Weight>().not.toExtend<Length>();
    expectTypeOf<Length>().not.toExtend<Weight>();
    expectTypeOf<Rate>().not.toExtend<Money>();
    expectTypeOf<Money>().not.toExtend<Rate>();
    expectTypeOf<Mark>().not.toExtend<Quotient>();
    expectTypeOf<Quotient>().not.toExtend<Weight>();
  });

  test("are not taken for one another", () => {
    // @ts-expect-error a length is no weight
    castWeight(length, { basis: "cast", share: Quotient.zero });
    // @ts-expect-error a weight is no length
    chainLength(Quotient.one, weight, length);
    // @ts-expect-error a weight is no length
    inLengthUnit(weight, "mm");
    // @ts-expect-error a rate is no money
    addMoney(usd, usdRate);
    // @ts-expect-error money is no rate
    priceAtPremium(weight, usd, usdRate);
    // @ts-expect-error a bare number has no unit
    grams(5);
    // @ts-expect-error a text is read by parseMark first
    metalRate(usd, "14K");
  });

  test("take only units of their own", () => {
    // @ts-expect-error an inch weighs nothing
    weightIn(Quotient.one, "in");
    // @ts-expect-error a gram is no length
    lengthIn(Quotient.one, "g");
    // @ts-expect-error ounces are troy (ozt) or avoirdupois (oz), and say so
    weightIn(Quotient.one, "ounce");
  });

  test("are not changed after they are made", () => {
    // @ts-expect-error readonly
    weight.grams = Quotient.one;
    // @ts-expect-error readonly
    usd.currency = "USD";
    // @ts-expect-error readonly
    parseMark("14K").share = Quotient.one;
  });

  test("are made by their own makers only", () => {
    // @ts-expect-error the parts of a quotient are its own
    new Quotient("1", "2");
    expectTypeOf(money(Quotient.one, "USD")).toEqualTypeOf<Money<"USD">>();
    expectTypeOf(perGram(Quotient.one, "EUR")).toEqualTypeOf<Rate<"EUR">>();
  });
});

describe("words", () => {
  test("of a loss, a basis and a fit are closed", () => {
    expectTypeOf<LossBasis>().toEqualTypeOf<"cast" | "finished" | "grams">();
    expectTypeOf<CostBasis>().toEqualTypeOf<"finished" | "quick">();
    expectTypeOf<Fit>().toEqualTypeOf<"nearest" | "up" | "down">();
  });

  test("a loss in grams has a weight and no share", () => {
    // @ts-expect-error a share is not grams
    castWeight(weight, { basis: "grams", share: Quotient.zero });
    // @ts-expect-error grams are no share
    castWeight(weight, { basis: "cast", weight });
  });
});

describe("faults", () => {
  test("have a closed list of codes", () => {
    expectTypeOf<Fault["code"]>().toEqualTypeOf<CostingErrorCode>();
    expectTypeOf<CostingErrorCode>().toEqualTypeOf<
      | "blank"
      | "notANumber"
      | "outOfRange"
      | "unknownWord"
      | "unknownMark"
      | "ambiguousMark"
      | "wrongShape"
      | "tooLarge"
      | "currencyMismatch"
      | "belowLowestMark"
      | "neverReached"
    >();
  });

  test("a table by code must name every one", () => {
    // @ts-expect-error ten codes are missing
    const partial: Record<CostingErrorCode, string> = { blank: "#VALUE!" };
    expectTypeOf(partial).toEqualTypeOf<Record<CostingErrorCode, string>>();
  });

  test("are looked at before an order is used", () => {
    const parsed = parseOrder(orderOfRow(record), rates);
    expectTypeOf(parsed).toEqualTypeOf<Parsed<Order>>();
    // @ts-expect-error it may have been refused
    parsed.value;
    if (parsed.ok) expectTypeOf(parsed.value).toEqualTypeOf<Order>();
    else expectTypeOf(parsed.faults).toEqualTypeOf<readonly Fault[]>();
  });
});

test("a quote has no field for a cost", () => {
  expectTypeOf<keyof Quote>().toEqualTypeOf<
    | "number"
    | "date"
    | "validUntil"
    | "customer"
    | "workshop"
    | "workshopContact"
    | "lines"
    | "extras"
    | "subtotal"
    | "discount"
    | "shipping"
    | "taxName"
    | "tax"
    | "taxIncluded"
    | "total"
    | "ownGold"
    | "toPay"
    | "deposit"
    | "depositTax"
    | "balance"
    | "tolerance"
    | "settledByWeight"
    | "settledDiscount"
    | "settledWithoutStones"
    | "spot"
  >();
  expectTypeOf<keyof QuoteLine>().toEqualTypeOf<
    | "design"
    | "kind"
    | "mark"
    | "colours"
    | "hollow"
    | "plating"
    | "length"
    | "unit"
    | "reached"
    | "links"
    | "weight"
    | "clasp"
    | "stones"
    | "carats"
    | "caratsAbout"
    | "stoneSets"
    | "stoneSizes"
    | "findings"
    | "engraving"
    | "quantity"
    | "price"
    | "amount"
    | "perGram"
  >();
});

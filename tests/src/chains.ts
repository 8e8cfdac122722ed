import fc from "fast-check";
import Fraction from "fraction.js";
import { Quotient } from "../../src/exact/quotient";
import { costOrder } from "../../src/quote/costsheet";
import { money } from "../../src/units/money";
import { orderOf, type RandomOrder, type RandomRates, type Record_, ratesOf } from "./orders";

const q = (text: string) => Quotient.of(text);

/** The first line of an order as it is costed, with what it was costed by. */
export function costed(order: Record_, rates: Record_) {
  const workshop = ratesOf(rates);
  const read = orderOf(order, workshop);
  const sheet = costOrder(read, workshop)[0];
  if (!sheet) throw new Error("no line was costed");
  const usd = (amount: string) => money(q(amount), workshop.currency);
  return { sheet, line: sheet.line, spot: read.spot, rates: workshop, usd };
}

/** At this spot a mark of 250 has the metal rate of 25.00 of the common figures. */
export const AT_25 = { spot: "3110.34768" };
/** 25 in at 4 links an inch: 100 links of 1 g. */
export const HUNDRED_GRAMS = { mark: "250", length: "25", linkWeight: "1" };

/** A random line of a length that has links, costed at random rates. */
export function priced(rates: RandomRates, order: RandomOrder) {
  const { length, claspLength, linksPer } = order.figures;
  const all = { length: "1000", claspLength: "0", lengthUnit: "mm" };
  fc.pre(length.fraction.gt(claspLength.fraction) && linksPer.fraction.gt(0));
  return costed({ ...order.record, ...all }, rates.record);
}

/**
 * What a plain chain of a weight costs made, in exact rationals, by the notes of the Rates sheet.
 * @param links its own number of links where that does not grow with the weight
 */
export function madeChain(
  rates: RandomRates,
  order: RandomOrder,
  chain: Fraction,
  { setup = new Fraction(0), links }: { setup?: Fraction; links?: Fraction } = {},
): Fraction {
  const rate = (key: keyof RandomRates["figures"]) => rates.figures[key].fraction;
  const lost = rates.loss.fraction;
  const cast =
    rates.lossBasis === "grams"
      ? chain.add(lost)
      : rates.lossBasis === "finished"
        ? chain.mul(lost.add(1))
        : chain.div(new Fraction(1).sub(lost));
  const quick = rates.words.costBasis === "quick";
  const paid = quick ? chain.add(rates.lossBasis === "grams" ? lost : chain.mul(lost)) : cast;
  const pieces = order.figures.quantity.fraction;
  const casting = larger((quick ? chain : cast).mul(rate("castingFee")).mul(pieces), rate("castingMinimum")).div(
    pieces,
  );
  const worked = rate("labourFlat")
    .add(rate("labourPerLink").mul(links ?? chain.div(order.figures.linkWeight.fraction)))
    .add(rate("labourPerGram").mul(chain));
  const metal = paid.mul(rate("spot")).mul(order.share).div("31.1034768");
  return metal
    .add(casting)
    .add(larger(worked, rate("labourMinimum")))
    .add(setup);
}

function larger(a: Fraction, b: Fraction): Fraction {
  return a.lt(b) ? b : a;
}

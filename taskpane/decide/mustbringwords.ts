import {
  broughtAt,
  type CostSheet,
  type EarningSpan,
  grams,
  type Money,
  type MustBring,
  marginAt,
  money,
  premiumFor,
  priceAtPremium,
  Quotient,
  type Rates,
  type Rounding,
  type Weight,
} from "../../src/index";
import { showGrams, showList, showMoney, showNumber, showRate, showShare, showSpot } from "../display";
import { DECIDE_TEXTS } from "../texts/decide";
import type { SaidLine } from "./saidbox";

const texts = DECIDE_TEXTS.mustBring;

/** So many ranges are told; the rest is counted. */
const MOST = 4;
const DECIMALS = 2;

/** Where the market's price leaves the wanted margin, and what this piece must bring. */
export function mustBringWords(
  spans: readonly EarningSpan[],
  wanted: MustBring,
  sheet: CostSheet,
  spot: Money,
  rates: Rates,
): readonly SaidLine[] {
  const premium = showRate(wanted.premium);
  const margin = showShare(wanted.margin);
  const needed = premiumFor(sheet, wanted.margin, rates);
  const weight = showGrams(sheet.finishedWeight, DECIMALS);
  const asked = (over: typeof needed) => {
    const price = showMoney(priceAtPremium(sheet.finishedWeight, sheet.metalRate, over));
    return rates.taxIncluded ? texts.withTax(price) : price;
  };
  const brought = broughtAt(sheet, wanted.premium, rates);
  const isNothing = brought.amount.isZero();
  return [
    { text: spans.length > 0 ? texts.earns(whereOf(spans), premium, margin) : texts.never(premium, margin) },
    {
      text: [
        texts.own(weight, showRate(needed), asked(needed)),
        ...(isNothing
          ? []
          : [texts.brings(premium, asked(wanted.premium), showShare(marginAt(sheet, wanted.premium, rates)))]),
      ].join(" "),
    },
    ...(sheet.line.stones.length > 0 ? [{ text: texts.stones }] : []),
    { text: texts.basis(showSpot(money(spot.amount, spot.currency))) },
  ];
}

/** "From 12.40 to 15.10 g and from 18.20 g up". An edge is rounded into its range, so that what is said is true. */
export function whereOf(spans: readonly EarningSpan[]): string {
  const told = spans.slice(0, MOST).map((span, at) => spanWords(span, at === 0));
  const left = spans.length - told.length;
  return showList(left > 0 ? [...told, texts.more(showNumber(Quotient.of(left)))] : told);
}

function spanWords({ from, to, links }: EarningSpan, isFirst: boolean): string {
  const edge = (weight: Weight, rounding: Rounding, count: number | undefined) => {
    const shown = showGrams(grams(Quotient.of(weight.grams.rounded(DECIMALS, rounding))), DECIMALS);
    return count === undefined ? shown : texts.links(shown, showNumber(Quotient.of(count)));
  };
  const lower = from && edge(from, "up", links?.from);
  const upper = to && edge(to, "down", links?.to);
  if (lower && upper) {
    return links?.from === links?.to && links ? texts.at(lower, isFirst) : texts.between(lower, upper, isFirst);
  }
  if (lower) return texts.from(lower, isFirst);
  return upper ? texts.upTo(upper, isFirst) : texts.any;
}

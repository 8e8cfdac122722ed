import {
  broughtAt,
  type EarningSpan,
  grams,
  type MustBring,
  marginAt,
  premiumFor,
  priceOverMark,
  Quotient,
  type Rate,
  type Rounding,
  type Weight,
} from "../../src/index";
import type { AnswerLine } from "../controls/answerbox";
import type { AskedPiece } from "../views/askedpiece";
import { DECIDE_TEXTS } from "../wording/decidetexts";
import { showGrams, showList, showMoney, showNumber, showRate, showShare, showSpot } from "../wording/display";

const texts = DECIDE_TEXTS.mustBring;

/** So many ranges are told; the rest is counted. */
const MOST = 4;
const DECIMALS = 2;

/** What this piece must bring, and where the market's price, if it is known, leaves the wanted margin: that first. */
export function mustBringWords(
  { premium, margin }: MustBring,
  spans: readonly EarningSpan[],
  { sheet, costed }: AskedPiece,
): readonly AnswerLine[] {
  const { order, rates } = costed;
  const share = showShare(margin);
  const asked = (over: Rate) => {
    const price = showMoney(priceOverMark(sheet.finishedWeight, sheet.markRate, over));
    return rates.taxIncluded ? texts.withTax(price) : price;
  };
  const needed = premiumFor(sheet, margin, rates);
  const own = texts.own(showGrams(sheet.finishedWeight, DECIMALS), showRate(needed), asked(needed), share);
  const besides = [
    ...(sheet.line.stones.length > 0 ? [{ text: texts.stones }] : []),
    { text: texts.basis(showSpot(order.spot)) },
  ];
  if (!premium) return [{ text: own }, { text: texts.noMarket }, ...besides];
  const market = showRate(premium);
  const brings = broughtAt(sheet, premium, rates).amount.isZero()
    ? ""
    : ` ${texts.brings(market, asked(premium), showShare(marginAt(sheet, premium, rates)))}`;
  return [
    { text: spans.length > 0 ? texts.earns(whereOf(spans), market, share) : texts.never(market, share) },
    { text: `${own}${brings}` },
    ...besides,
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

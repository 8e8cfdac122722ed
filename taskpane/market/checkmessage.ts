import {
  type AskedPiece,
  type Asking,
  type LinkMatch,
  nameMark,
  type OwnComparison,
  type PriceCheck,
  Quotient,
  type Rate,
  type Rates,
} from "../../src/index";
import { ASKING_TEXTS } from "../wording/askingtexts";
import { showLength, showMoney, showNumber, showRate, showShare } from "../wording/display";
import { linkName, showScale } from "../wording/shownweight";

const { check: texts } = ASKING_TEXTS;

/** What an asking price says against the metal, in sentences. */
export interface MetalSaid {
  readonly headline: string;
  readonly sentences: readonly string[];
  /** Undefined where nothing needs a second look. */
  readonly warning: string | undefined;
}

export function sayMetal(
  asking: Asking,
  { asked, melt, premium, aboveMelt, askedForAll, meltForAll }: PriceCheck,
): MetalSaid {
  const isBelow = premium.perGram.isNegative();
  const headline = isBelow
    ? texts.under(showRate(negative(premium)))
    : premium.perGram.isZero()
      ? texts.level
      : texts.over(showRate(premium));
  const say = isBelow ? texts.askedUnder : texts.asked;
  return {
    headline,
    sentences: [
      ...changedIn(asking),
      say(showRate(asked), showRate(melt), showShare(isBelow ? minus(aboveMelt) : aboveMelt)),
      ...(askedForAll && meltForAll ? [texts.forAll(showMoney(askedForAll), showMoney(meltForAll))] : []),
    ],
    warning: isBelow ? texts.below : undefined,
  };
}

/** What it says against a piece of ours, the answer first. */
export interface OursSaid {
  readonly answer: string;
  readonly sentences: readonly string[];
  /** Which link was taken, and how well it fits. */
  readonly basis: readonly string[];
}

export function sayOurs(
  asking: Asking,
  check: PriceCheck,
  comparison: OwnComparison,
  match: LinkMatch,
  piece: AskedPiece,
  rates: Rates,
): OursSaid {
  return {
    answer: answerOf(comparison, rates),
    sentences: [
      texts.landed(showMoney(comparison.sheet.landed), showRate(comparison.sheet.landedPerGram)),
      priceOf(comparison),
      ...(comparison.left.amount.isPositive() ? [texts.left(showMoney(comparison.left))] : []),
      ...(check.premium.perGram.isPositive()
        ? [texts.surcharge(showRate(check.premium), showRate(rates.surcharge))]
        : []),
      ...taxOf(comparison, rates),
    ],
    basis: basisOf(asking, match, piece),
  };
}

function changedIn({ price, currency, exchange, own }: Asking): readonly string[] {
  if (currency === own) return [];
  const theirs = { kind: "money", amount: price, currency } as const;
  const ours = { kind: "money", amount: price.times(exchange), currency: own } as const;
  return [texts.changed(showMoney(theirs), showNumber(exchange, 6), showMoney(ours))];
}

function answerOf({ landedPremium, left, marginLeft, keepsLeastMargin }: OwnComparison, rates: Rates): string {
  const landed = showRate(landedPremium);
  if (left.amount.isZero()) return texts.matchLevel(landed);
  if (left.amount.isNegative()) {
    const loss = { ...left, amount: minus(left.amount) };
    return texts.matchLoses(landed, showMoney(loss), showShare(minus(marginLeft)));
  }
  const answer = texts.match(landed, showShare(marginLeft));
  return keepsLeastMargin ? answer : `${answer} ${texts.belowLeast(showShare(rates.leastMargin))}`;
}

function priceOf({ sheet, pricePerGram, abovePrice }: OwnComparison): string {
  const [price, perGram] = [showMoney(sheet.price), showRate(pricePerGram)];
  if (abovePrice.amount.isZero()) return texts.priceSame(price, perGram);
  const apart = {
    ...abovePrice,
    amount: abovePrice.amount.isNegative() ? minus(abovePrice.amount) : abovePrice.amount,
  };
  return (abovePrice.amount.isNegative() ? texts.priceAbove : texts.priceBelow)(price, perGram, showMoney(apart));
}

function taxOf({ asked, netAsked }: OwnComparison, { tax, taxIncluded, taxName }: Rates): readonly string[] {
  if (tax.isZero()) return [];
  const name = taxName === "" ? texts.tax : taxName;
  return [taxIncluded ? texts.taxIn(showMoney(asked), showMoney(netAsked), name) : texts.taxOn(name)];
}

/** A chain of our link this many times heavier or lighter than the piece counts labour by the link wrongly. Common practice: our choice. */
const FAR = Quotient.of("1.5");

/** What a curb link is called. Common practice. */
const CURB = /curb|cuban|gourmette|panzer|grum/i;

function basisOf(
  asking: Asking,
  { link, links, sameMark, wouldWeigh }: LinkMatch,
  piece: AskedPiece,
): readonly string[] {
  const { weight, hollow, mark, kind } = asking;
  const ratio = wouldWeigh && weight ? wouldWeigh.grams.dividedBy(weight.grams) : Quotient.one;
  return [
    texts.taken(showNumber(links, 1), linkName(link.name), showScale(link.weight.weight), link.isWeighed),
    ...(wouldWeigh
      ? [texts.wouldWeigh(showLength(piece.length, piece.lengthUnit), showScale(wouldWeigh), piece.isLengthSaid)]
      : []),
    ...(ratio.isGreaterThan(FAR) ? [texts.farHeavier] : []),
    ...(Quotient.one.dividedBy(ratio).isGreaterThan(FAR) ? [texts.farLighter] : []),
    ...(sameMark ? [] : [texts.otherMark(nameMark(link.mark), nameMark(mark))]),
    ...(piece.colour && link.colour && link.colour !== piece.colour ? [texts.otherColour(link.colour)] : []),
    ...(link.hollow !== (hollow === true) ? [texts.hollowOther] : []),
    ...(kind !== "" && !CURB.test(kind) ? [texts.otherKind(kind)] : []),
  ];
}

function negative(rate: Rate): Rate {
  return { ...rate, perGram: minus(rate.perGram) };
}

function minus(value: Quotient): Quotient {
  return Quotient.zero.minus(value);
}

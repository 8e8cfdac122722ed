import {
  type Bid,
  type BreakEven,
  type Comparison,
  cheaperLarger,
  costByChoice,
  grams,
  type HeavierBy,
  LEVERS,
  type LeastOrder,
  type Lever,
  leastOrder,
  MAKER_OF_RATES,
  type MakerFault,
  MOVED_BY,
  type Money,
  makingRanges,
  money,
  nameMark,
  perGram,
  Quotient,
  type Swing,
  savedByChoice,
  subtractMoney,
  type Tornado,
  timesMoney,
  type Weight,
  type WinningRange,
} from "../../src/index";
import { showList, showMoney, showNumber, showRate, showShare, showSpot } from "../wording/display";
import { showLoss, showScale } from "../wording/shownweight";
import { SOURCING_TEXTS } from "../wording/sourcingtexts";

const { order, ranges, hinge, makers } = SOURCING_TEXTS;

/** How much every figure is moved, as shown here. */
export function movedBy(): string {
  return showShare(MOVED_BY);
}

/** "Make it" or "Buy it from Orrin". */
export function headlineOf({ verdict, best }: Comparison): string {
  if (verdict === "make") return order.make;
  return best && best.seller.maker !== MAKER_OF_RATES ? order.buyFrom(best.seller.maker) : order.buy;
}

/** Both costs a gram, and what the cheaper way saves. */
export function answerOf(said: Comparison): readonly string[] {
  const { best, makePerGram, verdict, quantity, weight, choice } = said;
  const make = showRate(makePerGram);
  const mark = nameMark(choice.line.mark);
  if (!best && said.larger.length > 0) {
    return [order.aloneInFew(make, makers.pieces(showNumber(quantity)), showScale(weight), mark)];
  }
  if (!best) return [order.alone(make, showScale(weight), mark)];
  if (best.saving.amount.isZero()) return [order.level(make)];
  const buy = showRate(best.perGram);
  const { maker } = best.seller;
  const isMade = verdict === "make";
  const all = savedByChoice(said);
  const each = all && timesMoney(all, Quotient.one.dividedBy(quantity));
  return [
    maker === MAKER_OF_RATES ? order.against(make, buy) : order.againstMaker(make, buy, maker),
    ...(each && all
      ? [
          quantity.equals(Quotient.one)
            ? order.saves(showMoney(each), isMade)
            : order.savesAll(showMoney(each), showMoney(all), showNumber(quantity), isMade),
        ]
      : []),
  ];
}

/** Who is cheapest at which weight, for both ways in which a piece grows heavier. */
export type RangesOf = Readonly<Record<HeavierBy, readonly WinningRange[]>>;

/** At which weights making wins, of heavier links at the customer's length and of more links. They are told once where they agree. */
export function rangesSentences(of: RangesOf, links: Quotient): readonly string[] {
  const heavier = makingSentence(of["heavier links"], ranges.by.either, showBound);
  const told =
    heavier === makingSentence(of["more links"], ranges.by.either, showBound)
      ? [makingSentence(of["heavier links"], ranges.by.either, (weight) => perLink(weight, links))]
      : [
          makingSentence(of["heavier links"], ranges.by["heavier links"], (weight) => perLink(weight, links)),
          moreLinksSentence(of["more links"]),
        ];
  return [...told, ...nobodyBelow(of["more links"])];
}

/** At which weights making wins where they differ by the number of links. */
export function moreLinksSentence(all: readonly WinningRange[]): string {
  return makingSentence(all, ranges.by["more links"], showBound);
}

export function nobodyBelow([first]: readonly WinningRange[]): readonly string[] {
  return first?.winner.kind === "only make" && first.to ? [ranges.nobodyBelow(showBound(first.to))] : [];
}

function makingSentence(all: readonly WinningRange[], by: string, show: (weight: Weight) => string): string {
  const making = makingRanges(all.filter(({ winner }) => winner.kind === "make"));
  const isAlways = all.every(({ winner }) => winner.kind !== "buy");
  if (making.length === 0) return ranges.never(by);
  if (isAlways && all[0]?.winner.kind === "make") return ranges.always(by);
  const said = making.map(({ from, to }) => {
    if (!to) return ranges.above(show(from));
    return from.grams.isZero() ? ranges.upTo(show(to)) : ranges.between(show(from), show(to));
  });
  return ranges.wins(by, showList(said));
}

function perLink(weight: Weight, links: Quotient): string {
  return ranges.perLink(showBound(weight), showBound(grams(weight.grams.dividedBy(links))));
}

/** Every range of weight with its cheapest way, as rows. */
export function rangeRows(all: readonly WinningRange[]): readonly (readonly [string, string])[] {
  return all.map(({ from, to, winner }) => [
    to
      ? from.grams.isZero()
        ? ranges.upTo(showBound(to))
        : ranges.from(showBound(from), showBound(to))
      : from.grams.isZero()
        ? ranges.anyWeight
        : ranges.above(showBound(from)),
    winner.kind === "make"
      ? ranges.make
      : winner.kind === "only make"
        ? ranges.onlyMake
        : ranges.buy(nameOf(winner.seller.maker)),
  ]);
}

/** Which figure the answer of one chain hangs on most, what would turn it, and where both ways cost the same. */
export function hingeSentences(
  said: Comparison,
  { swings }: Tornado,
  level: (lever: Lever) => BreakEven | undefined,
): readonly string[] {
  const [most, ...others] = swings.filter(({ width }) => !width.isZero());
  if (!most) return [hinge.nothing];
  const turning = others.filter(isTurning);
  const even = level(most.lever);
  return [
    hinge.most(SOURCING_TEXTS.inWords[most.lever], mostSays(said, most)),
    ...(even ? [hinge.level(showLever(said, most.lever, even.value), changeOf(even.change))] : []),
    ...(turning.length > 0 ? [(isTurning(most) ? hinge.too : hinge.instead)(showList(turning.map(turnedBy)))] : []),
  ];
}

/** Which figure the answers of many chains hang on most. */
export function hingeOfMany({ swings, count }: Tornado): string {
  const [most] = swings.filter(({ width }) => !width.isZero());
  if (!most) return hinge.nothing;
  const answers = (turned: number) => hinge.answers(turned, count);
  return hinge.most(
    SOURCING_TEXTS.inWords[most.lever],
    isTurning(most)
      ? hinge.turnsOf(answers(most.turnedByLess), answers(most.turnedByMore), movedBy())
      : hinge.turnsNone(movedBy()),
  );
}

/** The figures that move nothing, since they are the same either way. */
export function sameSentence({ swings }: Tornado): string {
  const still = swings.filter(({ width }) => width.isZero());
  return still.length === 0 ? "" : hinge.same(showList(still.map(({ lever }) => SOURCING_TEXTS.inWords[lever])));
}

/** A figure in its own unit: "USD 2.50 a gram", "4.5 %", "1.3 g". */
export function showLever({ choice }: Comparison, lever: Lever, value: Quotient): string {
  const { currency } = choice.rates;
  switch (LEVERS[lever].unit(choice)) {
    case "money":
      return lever === "spot"
        ? showSpot(money(Quotient.of(value.rounded(2)), currency))
        : showMoney(money(value, currency));
    case "rate":
      return hinge.ratePerGram(showRate(perGram(value, currency)));
    case "share":
      return showLoss(value);
    case "weight":
      return showScale(grams(value));
  }
}

/** What a larger order would save, and the cash and stock it ties up; nothing where none is cheaper than the answer. */
export function largerSentences(said: Comparison): readonly string[] {
  const bid = cheaperLarger(said);
  if (!bid) return [];
  const { pieces, weight, cash, spare, tiedUp } = leastOrderOf(bid, said);
  const saving = subtractMoney(costByChoice(said), bid.cost);
  const count = (of: Quotient) => makers.pieces(showNumber(of));
  return [
    makers.larger(nameOf(bid.seller.maker), count(pieces), showScale(weight), showRate(bid.perGram)),
    makers.largerSaves(showMoney(saving)),
    makers.largerTakes(showMoney(cash), count(spare), showMoney(tiedUp)),
  ];
}

/** What has to be ordered at once to have these pieces from a maker. */
export function leastOrderOf({ offer, cost }: Bid, { weight, quantity }: Comparison): LeastOrder {
  return leastOrder(offer.minimum, { weight, cost }, quantity);
}

/** The rows that an answer does without, since they cannot be read. */
export function unreadSentences(faults: readonly MakerFault[]): readonly string[] {
  const rows = new Map(faults.map(({ row, maker }) => [row, maker === "" ? makers.aRow : maker]));
  if (rows.size === 0) return [];
  return [makers.unreadRows(showList([...rows].map(([row, maker]) => makers.unreadRow(maker, String(row)))))];
}

export function nameOf(maker: string): string {
  return maker === MAKER_OF_RATES ? ranges.makerOfRates : maker;
}

/** A weight at which something begins or ends: "5 g", "283.17 g". */
export function showBound(weight: Weight): string {
  return `${showNumber(weight.grams, 2)}\u00a0g`;
}

/** Lead time as written; a figure alone is days. */
export function leadOf(lead: string): string {
  return /^\d+$/.test(lead) ? makers.days(lead) : lead;
}

function mostSays(said: Comparison, { less, more, turnedByLess, turnedByMore }: Swing): string {
  const other = said.verdict === "make" ? hinge.buying : hinge.making;
  const lessSaid = hinge.lessTurns(movedBy(), other);
  const moreSaid = hinge.moreTurns(movedBy(), other);
  if (turnedByLess > 0) return turnedByMore > 0 ? hinge.both(lessSaid, moreSaid) : lessSaid;
  if (turnedByMore > 0) return moreSaid;
  // Told of the way that wins: what buying saves is what making loses.
  const isMade = said.verdict === "make";
  const [one, two] = isMade ? [less, more] : [negative(less), negative(more)];
  const [least, most] = one.amount.isLessThan(two.amount) ? [one, two] : [two, one];
  return hinge.stays(movedBy(), isMade ? hinge.making : hinge.buying, showMoney(least), showMoney(most));
}

function negative({ amount, currency }: Money): Money {
  return money(Quotient.zero.minus(amount), currency);
}

function isTurning({ turnedByLess, turnedByMore }: Swing): boolean {
  return turnedByLess + turnedByMore > 0;
}

function turnedBy({ lever, turnedByLess }: Swing): string {
  const what = SOURCING_TEXTS.inWords[lever];
  return turnedByLess > 0 ? hinge.lessOf(movedBy(), what) : hinge.moreOf(movedBy(), what);
}

function changeOf(change: Quotient): string {
  const size = change.isNegative() ? Quotient.zero.minus(change) : change;
  return change.isNegative() ? hinge.less(showShare(size)) : hinge.more(showShare(size));
}

import {
  type Comparison,
  type LargerOrder,
  MAKER_OF_RATES,
  type MakerOrder,
  type MinimumOrder,
  minorDigits,
  type Rates,
  type ShortOfMinimum,
  type SourcingTotal,
  savedByChoice,
} from "../../src/index";
import type { TableRow } from "../controls/table";
import { showFixed, showMoney, showNumber } from "../wording/display";
import { showScale } from "../wording/shownweight";
import { SOURCING_TEXTS } from "../wording/sourcingtexts";
import { nameOf } from "./messages";

const { many: texts } = SOURCING_TEXTS;

/** One chain of a list, compared. */
export interface NamedComparison {
  readonly name: string;
  readonly said: Comparison;
}

/** What the list comes to when each is done the cheaper way. */
export function totalSentences(total: SourcingTotal): readonly string[] {
  const { cost, underMaking, underBuying, onlyMade } = total;
  const [making, buying] = [underMaking, underBuying].map((saving) =>
    saving.amount.isZero() ? undefined : showMoney(saving),
  );
  return [
    texts.cost(showMoney(cost)),
    ...(making && buying
      ? [texts.both(making, buying)]
      : making
        ? [texts.underMaking(making)]
        : buying
          ? [texts.underBuying(buying)]
          : []),
    ...(onlyMade > 0 ? [texts.onlyMade(onlyMade)] : []),
  ];
}

/** That chains of the list could not be read; nothing where all were. */
export function skippedWords(skipped: number): readonly string[] {
  return skipped > 0 ? [texts.skipped(skipped)] : [];
}

/** A row a chain: made, bought, saved by the cheaper way for all pieces, and the answer. */
export function chainRows(all: readonly NamedComparison[], { currency }: Rates): readonly TableRow[] {
  const digits = minorDigits(currency);
  return all.map(({ name, said }) => {
    const { makePerGram, best } = said;
    const saved = savedByChoice(said);
    return {
      cells: [
        name,
        showFixed(makePerGram.perGram, digits),
        best ? showFixed(best.perGram.perGram, digits) : "–",
        saved ? showFixed(saved.amount, digits) : "–",
        answerWord(said),
      ],
    };
  });
}

export function answerWord({ verdict, best }: Comparison): string {
  if (!best) return texts.onlyMake;
  if (verdict === "make") return texts.make;
  return best.seller.maker === MAKER_OF_RATES ? texts.buyPlain : texts.buy(best.seller.maker);
}

/** What is to be bought, a row a maker. */
export function orderRows(orders: readonly MakerOrder[]): readonly TableRow[] {
  return orders.map(({ maker, pieces, weight, cost }) => ({
    cells: [nameOf(maker), showNumber(pieces), showScale(weight), showMoney(cost)],
  }));
}

/** What larger orders would save, and what they still lack. */
export function largerOrderSentences(orders: readonly LargerOrder[]): readonly string[] {
  return orders.map(({ maker, chains, weight, saving, short }) => {
    const lacking = short ? shortSentence(short) : texts.largerReached;
    return `${texts.larger(nameOf(maker), chains, showScale(weight), showMoney(saving))} ${lacking}`;
  });
}

function shortSentence({ minimum, missing, cash }: ShortOfMinimum): string {
  return texts.short(showMinimum(missing), showMinimum(minimum), showMoney(cash));
}

function showMinimum(minimum: MinimumOrder): string {
  return minimum.kind === "weight" ? showScale(minimum.weight) : showMoney(minimum.money);
}

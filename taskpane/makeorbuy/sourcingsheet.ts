import { minorDigits, nameMark, type Quotient, totalOf } from "../../src/index";
import type { ValueColumn } from "../excel/designs/pricesheet";
import { putValueSheet } from "../excel/designs/pricesheet";
import type { Added } from "../excel/tables/additions";
import { dateSerial } from "../excel/template/fields";
import { showCellDate, showSpot, today } from "../wording/display";
import { SOURCING_TEXTS } from "../wording/sourcingtexts";
import { answerWord, type NamedComparison, skippedWords, totalSentences } from "./manymessages";
import type { ManyChains } from "./manyview";
import { hingeOfMany, leastOrderOf, nameOf } from "./messages";

const { heads, name, dated } = SOURCING_TEXTS.sheet;

/** Puts every chain of a list on a sheet of its own, values of now, and says what could not be read. */
export async function putSourcingSheet({ all, rates, tornado, unread, skipped }: ManyChains): Promise<Added> {
  const digits = minorDigits(rates.currency);
  const text = (head: string, width: number): ValueColumn => ({ head, kind: "text", decimals: 0, width });
  const figure = (head: string, decimals: number, width: number): ValueColumn => ({
    head,
    kind: "figure",
    decimals,
    width,
  });
  const total = totalOf(
    all.map(({ said }) => said),
    rates,
  );
  return putValueSheet({
    what: "make or buy",
    name,
    title: name,
    notes: [
      dated(showCellDate(dateSerial(today())), showSpot(rates.spot)),
      ...skippedWords(skipped),
      ...unread,
      totalSentences(total).join(" "),
      hingeOfMany(tornado),
      SOURCING_TEXTS.same,
    ],
    columns: [
      text(heads.name, 150),
      text(heads.mark, 48),
      text(heads.answer, 120),
      text(heads.maker, 120),
      figure(heads.weight, 2, 62),
      figure(heads.pieces, 0, 50),
      figure(heads.make, digits, 88),
      figure(heads.buy, digits, 96),
      figure(heads.saving, digits, 136),
      figure(heads.least, 0, 120),
      figure(heads.cash, digits, 110),
    ],
    rows: all.map((each) => rowOf(each, digits)),
    wrote: async () => {},
  });
}

function rowOf({ name: chain, said }: NamedComparison, digits: number): readonly (string | number)[] {
  const { weight, quantity, makePerGram, best, choice } = said;
  const shown = (value: Quotient | undefined, decimals = digits) => value?.rounded(decimals).toNumber() ?? "";
  const least = best && leastOrderOf(best, said);
  return [
    chain,
    nameMark(choice.line.mark),
    answerWord(said),
    best ? nameOf(best.seller.maker) : "",
    shown(weight.grams, 2),
    shown(quantity, 0),
    shown(makePerGram.perGram),
    shown(best?.perGram.perGram),
    shown(best?.saving.amount),
    shown(least?.pieces, 0),
    shown(least?.cash.amount),
  ];
}

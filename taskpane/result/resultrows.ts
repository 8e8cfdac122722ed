import {
  COST_LINES,
  type CostLine,
  type CostSheet,
  type LineKey,
  type Money,
  money,
  perGramOf,
  premium,
  Quotient,
  type TypedLine,
  timesMoney,
} from "../../src/index";
import type { Costed } from "../order/reckoning";
import { showGrams, showLength, showMoney, showNumber, showRate, showShare } from "../wording/display";
import { SETTLING_TEXTS } from "../wording/settlingtexts";
import { TEXTS } from "../wording/texts";

const { result } = TEXTS;

/** One row of the result: what it is, how much, and a remark in smaller type. */
export interface Row {
  readonly term: string;
  readonly value: string;
  readonly remark?: string;
  /** Whether the value is a sentence, which takes the whole width. */
  readonly sentence?: boolean;
}

/** The piece: links, weights, gold. */
export function pieceRows({ quote }: Costed, cost: CostSheet, index: number): readonly Row[] {
  const { line } = cost;
  const { settledDiscount } = quote;
  const perGram = quote.lines[index]?.perGram;
  return [
    {
      term: result.links,
      value: result.reaches(showNumber(line.links), showLength(cost.reached, line.lengthUnit)),
      remark: differenceOf(cost),
    },
    {
      term: result.finished,
      value: result.about(showGrams(cost.finishedWeight, 1)),
      ...(line.hollow ? { remark: result.hollow } : {}),
    },
    { term: result.cast, value: showGrams(cost.castWeight, 2) },
    {
      term: result.fineGold,
      value: result.inPiece(showGrams(cost.fineGold, 2)),
      remark: result.toBeCast(showGrams(cost.fineGoldCast, 2)),
    },
    ...(perGram
      ? [
          {
            term: result.settling,
            value: result.settlingPerGram(showMoney(perGram)),
            ...(settledDiscount ? { remark: result.beforeDiscount(showShare(settledDiscount)) } : {}),
          },
        ]
      : []),
  ];
}

/** What one piece costs, and that cost compared with the metal and with buying. */
export function costRows(costed: Costed, cost: CostSheet): readonly Row[] {
  const { rates } = costed;
  return [
    {
      term: result.landed,
      value: showMoney(cost.landed),
      ...(cost.line.quantity.equals(Quotient.one) ? {} : { remark: result.forOne }),
    },
    {
      term: result.landedPerGram,
      value: result.aGram(showRate(cost.landedPerGram)),
      remark: result.basis[rates.costBasis],
    },
    { term: result.metalRate, value: result.aGram(showRate(cost.metalRate)) },
    premiumRow(costed, cost),
    { term: result.sourcing, value: sourcingOf(cost), remark: result.sourcingNote, sentence: true },
  ];
}

/** What the piece brings over its metal, after the discount like its margin. */
function premiumRow({ order }: Costed, cost: CostSheet): Row {
  const brings = timesMoney(cost.netPrice, Quotient.one.minus(order.discount));
  const over = premium(perGramOf(brings, cost.finishedWeight), cost.metalRate);
  return {
    term: result.premium,
    value: result.aGram(showRate(over)),
    ...(order.discount.isZero() ? {} : { remark: result.afterDiscount }),
  };
}

/** Where a person says that something is free, by a 0. */
const FREE_BY: Readonly<Partial<Record<CostLine, readonly LineKey[]>>> = {
  clasp: ["claspCost"],
  findings: ["findingsCost"],
  stones: ["stonePrice", "claspStonePrice"],
  engraving: ["engravingCost"],
};

/** Every cost line of one piece that is not zero or was typed as free, and their sum. */
export function costLineRows(cost: CostSheet, typed: TypedLine): readonly Row[] {
  const lines = Object.entries(COST_LINES) as readonly [CostLine, string][];
  const isSaid = (line: CostLine) => FREE_BY[line]?.some((field) => typed[field].trim() !== "") === true;
  return [
    ...lines.flatMap(([line, term]): Row[] => {
      if (!cost.costs[line].amount.isZero()) return [{ term, value: showMoney(cost.costs[line]) }];
      return isSaid(line) ? [{ term, value: result.free, remark: result.zeroTyped }] : [];
    }),
    { term: result.landed, value: showMoney(cost.landed) },
  ];
}

/** What the person should know before the quote goes out. */
export function watchSentences(costed: Costed): readonly string[] {
  const { order, sheets, quote, watch, rates } = costed;
  const sentences: string[] = [];
  if (watch.belowFloor) {
    const say = order.discount.isZero() ? result.belowFloor : result.belowFloorDiscounted;
    sentences.push(say(showMoney(watch.net), showMoney(watch.floor), showShare(rates.leastMargin)));
  }
  for (const line of watch.belowFloor ? [] : watch.linesBelowFloor) {
    sentences.push(result.lineBelowFloor(line + 1, quote.lines[line]?.design ?? "", showShare(rates.leastMargin)));
  }
  for (const line of watch.stonesUnweighed) {
    sentences.push(SETTLING_TEXTS.stonesUnweighed(sheets.length > 1 ? line + 1 : undefined));
  }
  if (watch.depositShort) sentences.push(depositWords(costed));
  return sentences;
}

/** Why the deposit does not do. */
function depositWords({ order, quote, watch, rates }: Costed): string {
  const cash = showMoney(watch.cashOut);
  if (quote.deposit.amount.isZero()) return `${result.noDeposit(cash)} ${result.paidOutFirst}`;
  const isTaxed = rates.taxDue === "with the deposit" && !quote.depositTax.amount.isZero();
  return [
    result.depositShort(showMoney(quote.deposit), showMoney(watch.depositCovers), cash),
    ...(isTaxed ? [result.depositTax] : []),
    order.isDepositTyped ? result.depositTyped : result.depositWhole,
    result.paidOutFirst,
  ].join(" ");
}

function differenceOf({ difference, line }: CostSheet): string {
  const { millimetres } = difference;
  if (millimetres.isZero()) return result.exact;
  const size = { ...difference, millimetres: millimetres.isNegative() ? minus(millimetres) : millimetres };
  const shown = showLength(size, line.lengthUnit);
  return millimetres.isNegative() ? result.shorter(shown) : result.longer(shown);
}

function sourcingOf({ line, sourcing }: CostSheet): string {
  if (line.hollow) return result.hollowSourcing;
  const make = showRate(sourcing.makePerGram);
  const buy = showRate(sourcing.buyPerGram);
  if (sourcing.verdict === "make") return result.make(make, buy, showMoney(sourcing.saving));
  if (sourcing.saving.amount.isZero()) return result.level(make);
  return result.buy(make, buy, showMoney(negative(sourcing.saving)));
}

function minus(value: Quotient): Quotient {
  return Quotient.zero.minus(value);
}

export function negative(amount: Money): Money {
  return money(Quotient.zero.minus(amount.amount), amount.currency);
}

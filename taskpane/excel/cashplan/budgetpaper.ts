import {
  BUDGET_LABELS,
  type Budget,
  EACH_KEYS,
  type EachKey,
  type Mark,
  MOST_PIECES,
  type Money,
  minorDigits,
  ONCE_KEYS,
  Quotient,
  showMark,
  type Weight,
} from "../../../src/index";
import { DECIDE_TEXTS } from "../../wording/decidetexts";
import { lastCautions } from "../job/cautions";
import { COUNT, GRAMS, SHARE } from "../job/figures";
import { entry, formula, type JobRow, paperOf, type Ref, section, text } from "../job/row";
import { asText, type Paper } from "../paper";
import { nameOf } from "../rates/rates";
import { numberFormat } from "../template/fields";

const { sheet: texts, help, steps: stepTexts } = DECIDE_TEXTS.budget;

/** The metal of one piece by weight: on the sheet it follows spot on Rates. */
export interface MetalByWeight {
  /** All that is charged at the metal rate. */
  readonly weight: Weight;
  readonly mark: Mark;
  /** Whether the mark tells the gold; else an alloy of the workshop's own does. */
  readonly isStruck: boolean;
}

/** The first pieces that are followed. */
const FIRST = [1, 2, 3] as const;

const WIDTHS = [188, 92, 116, 84, 84];

/** A budget as a sheet: cream cells to write in, everything else a live formula over them; its metal over Rates, where its weight is known. */
export function budgetPaper(budget: Budget, metal: MetalByWeight | undefined): Paper {
  const money = numberFormat(minorDigits(budget.price.currency));
  return paperOf(WIDTHS, [
    text(texts.title, "title"),
    ...texts.about.map((line) => text(line, "small")),
    ...paidOnce(budget, money),
    ...eachPiece(budget, metal, money),
    ...saleAndCash(budget, money),
    ...beforeTheSale(money),
    ...carried(money),
    ...firstPieces(money),
    ...cashSteps(money),
    section(texts.care),
    ...lastCautions("cash plan", ["tax"]).map((line) => text(asText(line), "small")),
  ]);
}

function amount(key: keyof typeof BUDGET_LABELS, given: Money, money: string): JobRow {
  const note = key in help ? help[key as keyof typeof help] : "";
  return entry(key, BUDGET_LABELS[key], given.amount.toNumber(), asText(note), "input", money);
}

function paidOnce({ once, price }: Budget, money: string): JobRow[] {
  return [
    section(texts.once(price.currency)),
    ...ONCE_KEYS.map((key) => amount(key, once[key], money)),
    formula("once", texts.onceTotal, (at) => `SUM(${at("models")}:${at("marking")})`, "", money, "total"),
  ];
}

function eachPiece({ each, castingMinimum }: Budget, metal: MetalByWeight | undefined, money: string): JobRow[] {
  const others = EACH_KEYS.filter((key): key is Exclude<EachKey, "metal"> => key !== "metal");
  return [
    section(texts.each),
    ...(metal ? metalRows(metal, money) : [amount("metal", each.metal, money)]),
    ...others.map((key) => amount(key, each[key], money)),
    formula("each", texts.eachTotal, (at) => `SUM(${at("metal")}:${at("other")})`, "", money, "total"),
    amount("castingMinimum", castingMinimum, money),
  ];
}

function metalRows({ weight, mark, isStruck }: MetalByWeight, money: string): JobRow[] {
  const gold = isStruck ? asText(showMark(mark)) : mark.share.times(Quotient.of(1000)).toNumber();
  return [
    entry("metalWeight", texts.metalWeight, weight.grams.toNumber(), "g", "input", GRAMS),
    entry("mark", texts.mark, gold, isStruck ? "" : texts.thousandths, "input"),
    formula(
      "metal",
      BUDGET_LABELS.metal,
      (at) => `CURB.MELTVALUE(${at("metalWeight")},${at("mark")},${nameOf("spot")})`,
      texts.atSpot,
      money,
    ),
  ];
}

function saleAndCash({ price, deposit, pieces, cash }: Budget, money: string): JobRow[] {
  return [
    section(texts.plan),
    amount("price", price, money),
    entry("deposit", BUDGET_LABELS.deposit, deposit.toNumber(), asText(help.deposit), "input", SHARE),
    entry("pieces", BUDGET_LABELS.pieces, pieces.toNumber(), "", "input", COUNT),
    amount("cash", cash, money),
  ];
}

/** What one piece costs, what of it is casting, and the caster's minimum. */
function piece(at: Ref): string {
  return `${at("each")},${at("casting")},${at("castingMinimum")}`;
}

/** Words in place of what is never reached; a fault stays a fault. */
function orElse(asked: string, words: string): string {
  return `IF(ISNA(${asked}),"${words}",${asked})`;
}

function beforeTheSale(money: string): JobRow[] {
  return [
    section(texts.before),
    formula("made", texts.made, (at) => `CURB.PIECESCOST(${piece(at)},${at("pieces")})`, "", money),
    formula("out", texts.out, (at) => `${at("once")}+${at("made")}`, "", money),
    formula("deposits", texts.deposits, (at) => `${at("price")}*${at("deposit")}*${at("pieces")}`, "", money),
    formula(
      "needed",
      texts.needed,
      (at) => `CURB.CASHNEEDED(${at("once")},${at("made")},${at("deposits")})`,
      "",
      money,
      "total",
    ),
    formula("left", texts.left, (at) => `${at("cash")}-${at("needed")}`, "", money),
  ];
}

function carried(money: string): JobRow[] {
  const pieces = (id: "FEWESTPIECES" | "MOSTPIECES") => (at: Ref) =>
    `CURB.${id}(${at("cash")},${at("once")},${piece(at)},${at("price")}*${at("deposit")})`;
  return [
    section(texts.carries),
    formula("room", texts.room, (at) => `${at("cash")}-${at("once")}`, "", money),
    formula("fewest", texts.fewest, pieces("FEWESTPIECES"), "", COUNT),
    formula("most", texts.most, pieces("MOSTPIECES"), "", COUNT),
    formula(
      "carries",
      texts.atATime,
      (at) => {
        const [fewest, top] = [at("fewest"), at("most")];
        const any = `IF(${fewest}>1,${fewest}&"${texts.orMore}","${texts.any}")`;
        const some = `IF(${fewest}>1,${fewest}&"${texts.to}"&${top},${top})`;
        return `IF(${top}=0,"${texts.none}",IF(${top}>=${MOST_PIECES},${any},${some}))`;
      },
      "",
      COUNT,
      "total",
    ),
    formula(
      "depositForOne",
      texts.depositForOne,
      (at) => orElse(`CURB.DEPOSITNEEDED(${at("room")},${piece(at)},${at("price")})`, texts.none),
      texts.depositNote,
      SHARE,
    ),
  ];
}

function firstPieces(money: string): JobRow[] {
  const rows = FIRST.map((piece): JobRow => {
    const cells = (at: Ref) => [
      piece === 1 ? `=${at("oneCost")}+${at("once")}` : `=${at("oneCost")}`,
      `=${at("oneCost")}+${at("once")}/${FIRST.length}`,
      `=${at("price")}`,
      `=${at("oneGain")}*${piece}-${at("once")}`,
    ];
    return {
      key: `piece${piece}`,
      cells: (at) => [
        { content: texts.piece(String(piece)), look: "label" },
        ...cells(at).map((content) => ({ content, look: "number", format: money }) as const),
      ],
    };
  });
  return [
    { ...section(texts.first, texts.firstHeads), startsPage: true },
    ...rows,
    formula("oneCost", texts.oneCost, (at) => `CURB.PIECESCOST(${piece(at)})`, texts.oneNote, money),
    formula("oneGain", texts.oneGain, (at) => `${at("price")}-${at("oneCost")}`, "", money),
    formula(
      "paidBack",
      texts.paidBack,
      (at) => orElse(`CURB.PAIDBACKWITH(${at("once")},${at("oneGain")})`, texts.never),
      "",
      COUNT,
      "total",
    ),
  ];
}

function cashSteps(money: string): JobRow[] {
  const step = (index: number, words: string, change: (at: Ref) => string): JobRow => ({
    key: `step${index}`,
    cells: (at) => [
      { content: words, look: "label" },
      { content: `=${change(at)}`, look: "number", format: money },
      {
        content: `=${index === 0 ? at("cash") : at(`step${index - 1}`, "C")}+${at(`step${index}`)}`,
        look: "number",
        format: money,
      },
    ],
  });
  const deposit = (at: Ref) => `${at("price")}*${at("deposit")}`;
  const moves = FIRST.flatMap(
    (piece) =>
      [
        [stepTexts.deposit(String(piece)), deposit],
        [stepTexts.costs(String(piece)), (at: Ref) => `-${at("oneCost")}`],
        [stepTexts.balance(String(piece)), (at: Ref) => `${at("price")}-${deposit(at)}`],
      ] as const,
  );
  const rows = [
    step(0, capital(stepTexts.once()), (at) => `-${at("once")}`),
    ...moves.map(([words, change], index) => step(index + 1, capital(words), change)),
  ];
  const last = `step${rows.length - 1}`;
  return [
    section(texts.steps, texts.stepHeads),
    ...rows,
    formula("low", texts.low, (at) => `MIN(${at("step0", "C")}:${at(last, "C")})`, "", money, "total"),
  ];
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

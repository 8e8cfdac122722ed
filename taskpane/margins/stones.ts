import {
  ADDED_STONES_LABELS,
  ADDED_STONES_WHERE,
  type AddedStonesKey,
  addMoney,
  type CostSheet,
  parseAddedStones,
  type Quotient,
  RISE_BY,
  type StonesPay,
  stonesPay,
  subtractMoney,
} from "../../src/index";
import { type AnswerLine, answerBox } from "../controls/answerbox";
import { element } from "../controls/element";
import { choicesOf, formPlan } from "../controls/formplan";
import { spokenNote } from "../controls/note";
import { atRates, readForm } from "../controls/readform";
import { table } from "../controls/table";
import type { DecideEvents } from "../views/askedpiece";
import type { Working } from "../views/lazypart";
import { cautionsAt } from "../wording/cautions";
import { DECIDE_TEXTS } from "../wording/decidetexts";
import { showMoney, showNumber, showShare } from "../wording/display";
import { shareText } from "../wording/sharetext";
import { askedOf } from "./pieceform";

const { stones: texts } = DECIDE_TEXTS;

const { figure, money, choice, group } = formPlan<AddedStonesKey>(texts.help);

const GROUPS = [
  group("stones", "", [
    choice("where", "half", choicesOf(ADDED_STONES_WHERE, texts.where)),
    figure("count", "half", { required: true }),
    money("price", "half", { required: true }),
    money("settingFee", "half", { usual: ({ settingFee }) => showNumber(settingFee.amount, 3) }),
    figure("breakage", "half", { usual: ({ breakage }) => shareText(breakage) }),
    choice("riseBy", "whole", choicesOf(RISE_BY, texts.riseBy)),
    money("rise", "half", { isAsked: (at) => at("riseBy") === RISE_BY[1] }),
  ]),
];

/** Stones in, what they cost and what the price must rise out. */
export function openStones(place: HTMLElement, on: DecideEvents): Working {
  const said = answerBox();
  const note = spokenNote();
  const form = readForm(
    {
      name: "addedstones",
      title: texts.form,
      groups: GROUPS,
      labels: ADDED_STONES_LABELS,
      parse: atRates(on.rates, parseAddedStones),
    },
    { changed, submitted: () => void form.ask(), lacking: note.say },
  );

  function changed(): void {
    note.say("");
    show();
  }

  function show(): void {
    const asked = askedOf(on, form, said);
    if (!asked) return;
    const { wanted, piece } = asked;
    const { order, rates: used } = piece.costed;
    const pays = stonesPay(piece.sheet, wanted, order, used);
    const isByHand = piece.sheet.pricing.by === "own price" && !wanted.rise;
    said.show(
      [
        ...stonesWords(pays),
        ...(isByHand ? [{ text: texts.ownPrice }] : []),
        ...(order.discount.isZero() ? [] : [{ text: texts.discounted }]),
      ],
      pairTable(pays, piece.sheet),
    );
  }

  const caution = element("p", { class: "caution" }, ...cautionsAt("stones", ["stones"]));

  place.replaceChildren(element("div", { class: "decidepart" }, form.root, note.root, said.root, caution));
  return {
    follow() {
      const { rates } = on.rates();
      if (rates) form.adapt(rates);
      show();
    },
  };
}

/** What the stones cost and must bring, then what the price does and what that leaves. */
export function stonesWords(pays: StonesPay): readonly AnswerLine[] {
  const { stones, cost, leastRise, rise, priceAfter, marginBefore, marginAfter } = pays;
  const count = texts.count(showNumber(stones));
  const head = leastRise
    ? texts.head(count, showMoney(cost), showMoney(leastRise))
    : texts.headNone(count, showMoney(cost));
  return [{ text: head }, { text: riseWords() }];

  function riseWords(): string {
    const [added, price] = [showMoney(rise), showMoney(priceAfter)];
    if (!marginBefore || !marginAfter) return texts.noMargin(added, price);
    const [before, after] = [showShare(marginBefore), showShare(marginAfter)];
    const lacking = leastRise && subtractMoney(leastRise, rise);
    if (lacking?.amount.isPositive()) {
      return rise.amount.isZero()
        ? texts.none(price, before, after)
        : texts.falls(added, price, before, after, showMoney(lacking));
    }
    return texts.keeps(added, price, before, after);
  }
}

function pairTable(pays: StonesPay, { landed }: CostSheet): HTMLElement {
  const { rows } = texts;
  const share = (margin: Quotient | undefined) => (margin ? showShare(margin) : "–");
  return table(
    texts.table,
    ["", rows.without, rows.with],
    [
      [rows.cost, showMoney(landed), showMoney(addMoney(landed, pays.cost))],
      [rows.price, showMoney(pays.priceBefore), showMoney(pays.priceAfter)],
      [rows.margin, share(pays.marginBefore), share(pays.marginAfter)],
    ],
  ).root;
}

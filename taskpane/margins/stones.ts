import {
  ADDED_STONES_LABELS,
  ADDED_STONES_WHERE,
  type AddedStonesKey,
  addMoney,
  type CostSheet,
  parseAddedStones,
  type Quotient,
  type Rates,
  RISE_BY,
  type StonesPay,
  stonesPay,
  subtractMoney,
} from "../../src/index";
import { element } from "../controls/element";
import { figureForm } from "../controls/figureform";
import { figureTable } from "../controls/figuretable";
import { type SaidLine, saidBox } from "../controls/messagebox";
import { type SmallField, spokenNote } from "../controls/smallform";
import type { DecideEvents } from "../views/askedpiece";
import type { Working } from "../views/lazypart";
import { DECIDE_TEXTS } from "../wording/decidetexts";
import { showMoney, showNumber, showShare } from "../wording/display";
import { shareText } from "../wording/sharetext";
import { TEXTS } from "../wording/texts";
import { pieceForm } from "./pieceform";

const { stones: texts } = DECIDE_TEXTS;

function typedField(key: keyof typeof texts.help, required = false): SmallField {
  return {
    plan: { label: ADDED_STONES_LABELS[key], required, numeric: true, help: texts.help[key] },
    width: "half",
  };
}

const FIELDS: Readonly<Record<AddedStonesKey, SmallField>> = {
  where: {
    plan: {
      label: ADDED_STONES_LABELS.where,
      choices: ADDED_STONES_WHERE.map((value) => ({ value, shown: texts.where[value] })),
    },
    width: "half",
  },
  count: typedField("count", true),
  price: typedField("price", true),
  settingFee: typedField("settingFee"),
  breakage: typedField("breakage"),
  riseBy: {
    plan: {
      label: ADDED_STONES_LABELS.riseBy,
      choices: RISE_BY.map((value) => ({ value, shown: texts.riseBy[value] })),
    },
    width: "whole",
  },
  rise: typedField("rise"),
};

/** Stones in, what they cost and what the price must rise out. */
export function openStones(place: HTMLElement, on: DecideEvents): Working {
  const said = saidBox();
  const note = spokenNote();
  const form = figureForm<AddedStonesKey>("addedstones", texts.form, FIELDS, {
    changed,
    submitted: () => answers.demand(),
  });
  const answers = pieceForm(on, { form, said, note, labels: ADDED_STONES_LABELS, parse: parseAddedStones });

  function changed(): void {
    note.say("");
    show();
  }

  function show(): void {
    form.fields.rise.root.hidden = form.typed().riseBy !== RISE_BY[1];
    const asked = answers.asked();
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

  const caution = element("p", { class: "caution" }, TEXTS.cautions.stones);

  function adapt(rates: Rates): void {
    form.fields.price.setUnit(rates.currency);
    form.fields.settingFee.setUnit(rates.currency);
    form.fields.rise.setUnit(rates.currency);
    form.fields.settingFee.setPlaceholder(showNumber(rates.settingFee.amount, 3));
    form.fields.breakage.setPlaceholder(shareText(rates.breakage));
  }

  place.replaceChildren(element("div", { class: "decidepart" }, form.root, note.root, said.root, caution));
  return {
    follow() {
      const { rates } = on.rates();
      if (rates) adapt(rates);
      show();
    },
  };
}

/** What the stones cost and must bring, then what the price does and what that leaves. */
export function stonesWords(pays: StonesPay): readonly SaidLine[] {
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
  return figureTable(
    texts.table,
    ["", rows.without, rows.with],
    [
      [rows.cost, showMoney(landed), showMoney(addMoney(landed, pays.cost))],
      [rows.price, showMoney(pays.priceBefore), showMoney(pays.priceAfter)],
      [rows.margin, share(pays.marginBefore), share(pays.marginAfter)],
    ],
  );
}

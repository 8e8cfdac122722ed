import { type Rates, type Tornado, totalOf, type WinningRange } from "../../src/index";
import { answerBox } from "../controls/answerbox";
import { button } from "../controls/button";
import { element, setText } from "../controls/element";
import { table } from "../controls/table";
import { figure } from "../plots/figure";
import { SOURCING_TEXTS } from "../wording/sourcingtexts";
import {
  chainRows,
  largerOrderSentences,
  type NamedComparison,
  orderRows,
  skippedWords,
  totalSentences,
} from "./manymessages";
import { hingeOfMany, moreLinksSentence, nobodyBelow } from "./messages";
import { perGramOfMany } from "./pergramplot";
import { tornadoOfMany } from "./tornadoplot";

const { many: texts, catalogue } = SOURCING_TEXTS;

/** What many chains came to. */
export interface ManyChains {
  readonly all: readonly NamedComparison[];
  readonly tornado: Tornado;
  readonly rates: Rates;
  /** What of the makers' price lists could not be read: the answers do without it. */
  readonly unread: readonly string[];
  /** Chains of the list that could not be read: nothing that is said holds for them. */
  readonly skipped: number;
  /** Where all are of one chain, lighter and heavier: who is cheapest at which weight. */
  readonly ranges?: readonly WinningRange[];
}

export interface ManyView {
  readonly root: HTMLElement;
  /** Undefined takes everything away. */
  show(chains: ManyChains | undefined): void;
  draw(): void;
}

/** More rows than these are for a sheet. */
const MOST_ROWS = 60;

/** Many chains: how many to make and buy, what that saves, every one of them, and what the answers hang on. */
export function manyView(name: string, put: (chains: ManyChains, working: WorkingButton) => void): ManyView {
  const answer = answerBox();
  const lines = table("", texts.heads(name));
  const units = element("p", { class: "help" });
  const shown = element("p", { class: "help" });
  const orders = table(texts.orderCaption, texts.orderHeads);
  const ordersTitle = element("h3", {}, texts.orders);
  const short = element("div", { class: "shorts" });
  const perGram = figure();
  const swings = figure();
  const place = button(texts.put, "outline", () => {
    if (current) put(current, place);
  });
  const root = element(
    "div",
    { class: "answer" },
    answer.root,
    element("div", { class: "tablepart" }, units, lines.root, shown),
    element("div", { class: "actions" }, place.root),
    element("div", { class: "tablepart" }, ordersTitle, orders.root, short),
    element("p", { class: "help" }, SOURCING_TEXTS.same),
    perGram.root,
    swings.root,
  );
  let current: ManyChains | undefined;
  root.hidden = true;

  const draw = () => {
    const width = root.clientWidth;
    if (!current || width === 0) return;
    const { all, ranges, tornado } = current;
    if (ranges) {
      const compared = all.map(({ said }) => said);
      perGram.show(perGramOfMany(compared, ranges, width));
    }
    swings.show(tornadoOfMany(tornado, width));
  };
  return {
    root,
    show(chains) {
      current = chains;
      root.hidden = chains === undefined;
      if (!chains) return;
      const { all, tornado, rates, ranges, skipped } = chains;
      const sum = totalOf(
        all.map(({ said }) => said),
        rates,
      );
      const sentences = [
        texts.headline(sum.made, sum.bought, skipped),
        totalSentences(sum).join(" "),
        ...(ranges ? [moreLinksSentence(ranges), ...nobodyBelow(ranges)] : []),
        hingeOfMany(tornado),
      ];
      const [head = "", ...others] = sentences.filter((text) => text !== "");
      answer.show([
        { text: head },
        ...[...skippedWords(skipped), ...chains.unread].map((text) => ({ text, isWarning: true })),
        ...others.map((text) => ({ text })),
      ]);
      setText(units, texts.caption(rates.currency));
      lines.name(texts.caption(rates.currency));
      const rows = largestFirst(all);
      lines.show(chainRows(rows, rates));
      setText(shown, rows.length < all.length ? catalogue.shown(rows.length, all.length) : "");
      orders.show(orderRows(sum.orders));
      short.replaceChildren(...largerOrderSentences(sum.larger).map((sentence) => element("p", {}, sentence)));
      ordersTitle.hidden = sum.orders.length === 0 && sum.larger.length === 0;
      perGram.root.hidden = ranges === undefined;
      swings.root.hidden = tornado.swings.length === 0;
      draw();
    },
    draw,
  };
}

export type WorkingButton = ReturnType<typeof button>;

/** All of them in their order, or where there are too many those that matter most. */
function largestFirst(all: readonly NamedComparison[]): readonly NamedComparison[] {
  if (all.length <= MOST_ROWS) return all;
  const saved = ({ said: { best, quantity } }: NamedComparison) =>
    best ? Math.abs(best.saving.amount.times(quantity).toNumber()) : 0;
  return [...all].sort((a, b) => saved(b) - saved(a)).slice(0, MOST_ROWS);
}

import {
  breakEven,
  type ChainChoice,
  type Comparison,
  compareSources,
  fineness,
  type Lever,
  nameMark,
  type Tornado,
  tornado,
  winningRanges,
} from "../../src/index";
import { answerBox } from "../controls/answerbox";
import { element, setText } from "../controls/element";
import { table } from "../controls/table";
import { STAND_IN } from "../order/reckoning";
import { figure } from "../plots/figure";
import { showNumber, showRate } from "../wording/display";
import { showScale } from "../wording/shownweight";
import { SOURCING_TEXTS } from "../wording/sourcingtexts";
import { makerRows } from "./makerrows";
import {
  answerOf,
  headlineOf,
  hingeSentences,
  largerSentences,
  type RangesOf,
  rangeRows,
  rangesSentences,
} from "./messages";
import { perGramPlot } from "./pergramplot";
import type { AskedMakers } from "./readmakers";
import { tornadoPlot } from "./tornadoplot";

const texts = SOURCING_TEXTS;

export interface OrderView {
  readonly root: HTMLElement;
  /** @param unread what of the price lists the answer does without */
  show(choice: ChainChoice, from: AskedMakers["from"], unread: readonly string[]): void;
  /** Nothing to compare yet, and why. */
  lack(sentence: string): void;
  /** Draws what was shown at the width there is now. */
  draw(): void;
}

/** One chain: the answer, what it rests on, and every maker. */
export function orderView(): OrderView {
  const lacking = element("p", { class: "help" });
  const subject = element("h3");
  const answer = answerBox(subject);
  const note = element("p", { class: "help" });
  const makers = table(texts.makers.caption, texts.makers.heads);
  const perGram = figure();
  const ranges = table(texts.ranges.caption, [texts.ranges.weightHead, texts.ranges.winnerHead]);
  const swings = figure();
  const shown = element(
    "div",
    { class: "answer" },
    answer.root,
    note,
    makers.root,
    element("p", { class: "help" }, texts.same),
    perGram.root,
    ranges.root,
    swings.root,
  );
  const root = element("div", {}, lacking, shown);
  let current: Shown | undefined;
  shown.hidden = true;

  const draw = () => {
    const width = shown.clientWidth;
    if (!current || width === 0) return;
    perGram.show(perGramPlot(current.said, current.ranges["heavier links"], width));
    swings.show(tornadoPlot(current.said, current.tornado, current.level, width));
  };

  return {
    root,
    show(choice, from, unread) {
      current = shownOf(choice);
      const { said } = current;
      const { best, weight } = said;
      const design = choice.line.design === STAND_IN ? texts.order.nameless : choice.line.design;
      setText(subject, texts.order.subject(design, showScale(weight), nameMark(choice.line.mark)));
      const besides = [
        largerSentences(said).join(" "),
        rangesSentences(current.ranges, choice.line.links).join(" "),
        best ? hingeSentences(said, current.tornado, current.level).join(" ") : "",
      ].filter((text) => text !== "");
      answer.show(
        [
          { text: headlineOf(said) },
          { text: answerOf(said).join(" ") },
          ...unread.map((text) => ({ text, isWarning: true })),
        ],
        ...besides.map((text) => element("p", {}, text)),
      );
      setText(note, noteOf(choice, from));
      makers.show(makerRows(said));
      const atLength = current.ranges["heavier links"];
      ranges.show(atLength.length > 2 ? rangeRows(atLength).map((cells) => ({ cells: [...cells] })) : []);
      note.hidden = note.textContent === "";
      swings.root.hidden = !best;
      lacking.hidden = true;
      shown.hidden = false;
      draw();
    },
    lack(sentence) {
      current = undefined;
      setText(lacking, sentence);
      lacking.hidden = false;
      shown.hidden = true;
    },
    draw,
  };
}

interface Shown {
  readonly said: Comparison;
  readonly ranges: RangesOf;
  readonly tornado: Tornado;
  readonly level: (lever: Lever) => ReturnType<typeof breakEven>;
}

function shownOf(choice: ChainChoice): Shown {
  const levels = new Map<Lever, ReturnType<typeof breakEven>>();
  const level = (lever: Lever) => {
    if (!levels.has(lever)) levels.set(lever, breakEven(choice, lever));
    return levels.get(lever);
  };
  return {
    said: compareSources(choice),
    ranges: {
      "heavier links": winningRanges(choice, "heavier links"),
      "more links": winningRanges(choice, "more links"),
    },
    tornado: tornado([choice], choice.rates),
    level,
  };
}

function noteOf({ line, rates }: ChainChoice, from: AskedMakers["from"]): string {
  const surcharge = showRate(rates.surcharge);
  const sentences = [
    ...(line.gold.share.equals(line.mark.share)
      ? []
      : [texts.order.twoMetals(showNumber(fineness(line.gold)), nameMark(line.mark))]),
    ...(from === "nowhere: the piece is hollow" ? [texts.makers.hollow] : []),
    ...(from === "no price list" ? [texts.makers.noTable(surcharge)] : []),
    ...(from === "no row for the mark" ? [texts.makers.noRow(nameMark(line.mark), surcharge)] : []),
  ];
  return sentences.join(" ");
}

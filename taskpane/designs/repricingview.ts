import type { RepricedLine, Repricing } from "../../src/index";
import { Quotient } from "../../src/index";
import { element } from "../controls/element";
import { showMoney, showNumber, showShare } from "../wording/display";
import { TEXTS } from "../wording/texts";

const texts = TEXTS.catalogue.spot;

/** So many lines of a list are shown; the rest is counted. */
const MOST = 8;

/** What another spot does to a catalogue, in words: how many move, the largest moves, what falls below its floor. */
export function repricingView(
  { lines, moved, largestUp, largestDown, belowFloor, refused }: Repricing,
  firstRow: number,
): HTMLElement {
  const all = count(lines.length);
  return element(
    "div",
    { class: "repricing" },
    element(
      "p",
      { class: "headcount" },
      lines.length === 0 ? texts.noLines : moved.length === 0 ? texts.none(all) : texts.moved(count(moved.length), all),
    ),
    ...move(texts.up, largestUp),
    ...move(texts.down, largestDown),
    ...listed("below", belowFloor, texts.belowFloor(count(belowFloor.length)), ({ design, before, marginKept }) =>
      texts.belowLine(design, showMoney(before), marginKept === undefined ? "–" : showShare(marginKept)),
    ),
    ...listed("refused", refused, texts.refused(count(refused.length)), ({ row, design, sentence }) =>
      texts.row(firstRow + row, design, sentence),
    ),
  );
}

function move(term: string, line: RepricedLine | undefined): HTMLElement[] {
  if (!line) return [];
  const said = texts.move(line.design, showMoney(line.before), showMoney(line.after));
  return [element("p", { class: "move" }, `${term}: ${said}`)];
}

function listed<T>(kind: string, items: readonly T[], head: string, say: (item: T) => string): HTMLElement[] {
  if (items.length === 0) return [];
  const more = items.length > MOST ? [element("p", { class: "help" }, texts.more(count(items.length - MOST)))] : [];
  return [
    element(
      "div",
      { class: `listed ${kind}` },
      element("p", {}, head),
      element("ul", {}, ...items.slice(0, MOST).map((item) => element("li", {}, say(item)))),
      ...more,
    ),
  ];
}

function count(lines: number): string {
  return showNumber(Quotient.of(lines));
}

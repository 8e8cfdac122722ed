import { type CostSheet, Quotient } from "../../src/index";
import { element, setText } from "../controls/element";
import { labelsOf } from "../order/faultplace";
import { lineTitle } from "../order/linetitle";
import { type Costed, type Reckoning, type Typed, wrong } from "../order/reckoning";
import { showList, showMoney, showShare } from "../wording/display";
import { TEXTS } from "../wording/texts";
import { castRows, goldRows, stoneRows } from "./castrows";
import { isPlain, lineRows, payRows } from "./payrows";
import { plotSection } from "./plotsection";
import { costLineRows, costRows, pieceRows, type Row, watchSentences } from "./resultrows";

const { result } = TEXTS;

export interface ResultCard {
  readonly root: HTMLElement;
  /** The line with the price; the pane watches whether it is in sight. */
  readonly headline: HTMLElement;
  /** Shows the calculated order, and of its lines the open one; undefined while the rates cannot be read. */
  show(reckoning: Reckoning | undefined, typed: Typed, line: number): void;
}

/** The result, first in the pane. It shows only figures that the form and the rates give right now. */
export function resultCard(): ResultCard {
  const headline = element("p", { class: "headline" });
  const profit = element("p", { class: "profit" });
  const remark = element("p", { class: "help" });
  const watch = element("div", { class: "watch" });
  const lines = rowList();
  const pay = rowList();
  const lineHead = element("h3", { class: "resultline" });
  const piece = rowList();
  const costs = rowList();
  const costLines = rowList();
  const cast = rowList(result.all);
  const gold = rowList(result.ownGold);
  const stones = rowList(result.stonesToBuy);
  const plots = plotSection();
  const lists = [lines, pay, piece, costs, costLines, cast, gold, stones];
  const figures = element(
    "div",
    { class: "figures" },
    lines.root,
    pay.root,
    lineHead,
    piece.root,
    costs.root,
    element(
      "details",
      {},
      element("summary", {}, result.costLines),
      costLines.root,
      element("p", { class: "help costnote" }, result.costNote),
    ),
    cast.root,
    gold.root,
    stones.root,
    plots.root,
  );
  const root = element(
    "section",
    { class: "result", "aria-labelledby": "result-title" },
    element(
      "div",
      { class: "resulthead" },
      element("h2", { id: "result-title" }, result.title),
      headline,
      profit,
      remark,
    ),
    watch,
    figures,
  );

  const showFigures = (costed: Costed, typed: Typed, line: number) => {
    const cost = costed.sheets[line];
    if (!cost) throw new Error("The open line was not costed");
    const plain = isPlain(costed);
    const after = plain ? priceIs(costed, cost) : result.inAll;
    headline.replaceChildren(
      element("span", { class: "price" }, showMoney(plain ? cost.price : costed.quote.total)),
      ...(after === "" ? [] : [" ", element("span", { class: "each" }, after)]),
    );
    const { margin, markup } = costed.watch;
    setText(
      profit,
      result.profit(margin && showShare(margin), markup && showShare(markup), !costed.order.discount.isZero()),
    );
    lines.show(plain ? [] : lineRows(costed));
    pay.show(payRows(costed));
    const shownLine = typed.lines[line];
    setText(lineHead, costed.sheets.length > 1 && shownLine ? result.lineOf(lineTitle(line + 1, shownLine)) : "");
    lineHead.hidden = lineHead.textContent === "";
    piece.show(pieceRows(costed, cost, line));
    costs.show(costRows(costed, cost));
    if (shownLine) costLines.show(costLineRows(cost, shownLine));
    cast.show(castRows(costed));
    gold.show(goldRows(costed));
    stones.show(stoneRows(costed));
    watch.replaceChildren(...watchSentences(costed).map((sentence) => element("p", {}, sentence)));
  };
  const showNone = (said: string) => {
    setText(headline, said);
    setText(profit, "");
    watch.replaceChildren();
    for (const list of lists) list.show([]);
  };

  return {
    root,
    headline,
    show(reckoning, typed, line) {
      const costed = reckoning?.kind === "costed";
      root.classList.toggle("priced", costed);
      figures.hidden = !costed;
      plots.show(costed ? reckoning.costed : undefined, line);
      if (costed) showFigures(reckoning.costed, typed, line);
      else showNone(headlineOf(reckoning, typed));
      setText(remark, reckoning ? remarkOf(reckoning, typed) : "");
      for (const part of [profit, remark, watch]) part.hidden = part.childNodes.length === 0;
    },
  };
}

/** What a screen reader says of a result once typing pauses. */
export function spokenResult(reckoning: Reckoning | undefined, typed: Typed): string {
  const costed = reckoning?.kind === "costed" ? reckoning.costed : undefined;
  const cost = costed?.sheets[0];
  if (!costed || !cost) return headlineOf(reckoning, typed);
  const margin = costed.watch.margin && showShare(costed.watch.margin);
  return isPlain(costed)
    ? result.spoken(showMoney(cost.price), priceIs(costed, cost), margin, !costed.order.discount.isZero())
    : result.spokenTotal(showMoney(costed.quote.total), margin);
}

function headlineOf(reckoning: Reckoning | undefined, typed: Typed): string {
  if (!reckoning) return result.ratesFirst;
  if (reckoning.kind !== "faulty") return result.noPrice;
  return result.faulty(labelsOf(wrong(reckoning, typed), typed).length);
}

function remarkOf(reckoning: Reckoning, typed: Typed): string {
  if (reckoning.kind === "faulty") return `${showList(labelsOf(wrong(reckoning, typed), typed))}.`;
  if (reckoning.faults.length === 0) return "";
  const list = showList(labelsOf(reckoning.faults, typed));
  return reckoning.kind === "costed" ? result.stillForQuote(list) : `${result.toFill} ${result.stillToFill(list)}`;
}

interface RowList {
  readonly root: HTMLElement;
  show(rows: readonly Row[]): void;
}

/** Rows under an optional heading; hidden while there are no rows. */
function rowList(title?: string): RowList {
  const list = element("dl");
  const root = title === undefined ? list : element("div", {}, element("h3", { class: "resultline" }, title), list);
  return {
    root,
    show(rows) {
      list.replaceChildren(...rows.map(rowElement));
      root.hidden = rows.length === 0;
    },
  };
}

function rowElement({ term, value, remark, sentence }: Row): HTMLElement {
  return element(
    "div",
    { class: sentence ? "row sentence" : "row" },
    element("dt", {}, term),
    element("dd", {}, value, ...(remark === undefined ? [] : [" ", element("span", { class: "remark" }, remark)])),
  );
}

/** What the price of a piece is: of one of several, and before the discount that margin and total come after. */
function priceIs({ order }: Costed, cost: CostSheet): string {
  const words = [isOne(cost) ? "" : result.each, order.discount.isZero() ? "" : result.beforeDiscountShort];
  return words.filter((word) => word !== "").join(" ");
}

function isOne({ line }: CostSheet): boolean {
  return line.quantity.equals(Quotient.one);
}

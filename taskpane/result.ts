import { type CostSheet, Quotient } from "../src/index";
import { showList, showMoney, showShare } from "./display";
import { element, setText } from "./element";
import { labelsOf } from "./orderform";
import { plotSection } from "./plotsection";
import { type Costed, type Reckoning, type Typed, wrong } from "./reckoning";
import { costLineRows, costRows, orderCautions, payRows, pieceRows, type Row, watchSentences } from "./resultrows";
import { TEXTS } from "./texts";

const { result } = TEXTS;

export interface ResultCard {
  readonly root: HTMLElement;
  /** The line with the price, to know whether it is in sight. */
  readonly headline: HTMLElement;
  /** Shows what the form amounts to; undefined while the rates cannot be read. */
  show(reckoning: Reckoning | undefined, typed: Typed): void;
}

/** The result, first in the pane. It shows no figure that the form and the rates do not give right now. */
export function resultCard(): ResultCard {
  const headline = element("p", { class: "headline" });
  const profit = element("p", { class: "profit" });
  const remark = element("p", { class: "help" });
  const watch = element("div", { class: "watch" });
  const pay = element("dl");
  const piece = element("dl");
  const costs = element("dl");
  const lines = element("dl");
  const plots = plotSection();
  const cautions = element("div", { class: "cautions" });
  const figures = element(
    "div",
    { class: "figures" },
    pay,
    piece,
    costs,
    element(
      "details",
      {},
      element("summary", {}, result.costLines),
      lines,
      element("p", { class: "help costnote" }, result.costNote),
    ),
    plots.root,
    cautions,
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

  const showFigures = (costed: Costed) => {
    const sheet = costed.sheets[0];
    if (!sheet) throw new Error("An order without a line was costed");
    headline.replaceChildren(
      element("span", { class: "price" }, showMoney(sheet.price)),
      ...(isOne(sheet) ? [] : [" ", element("span", { class: "each" }, result.each)]),
    );
    const { margin, markup } = costed.watch;
    setText(
      profit,
      result.profit(margin && showShare(margin), markup && showShare(markup), !costed.order.discount.isZero()),
    );
    pay.replaceChildren(...payRows(costed, sheet).map(rowElement));
    piece.replaceChildren(...pieceRows(sheet).map(rowElement));
    costs.replaceChildren(...costRows(costed, sheet).map(rowElement));
    lines.replaceChildren(...costLineRows(sheet).map(rowElement));
    watch.replaceChildren(...watchSentences(costed).map((sentence) => element("p", {}, sentence)));
    cautions.replaceChildren(...orderCautions(costed).map((sentence) => element("p", { class: "caution" }, sentence)));
  };
  const showNone = (said: string) => {
    setText(headline, said);
    setText(profit, "");
    for (const part of [watch, pay, piece, costs, lines, cautions]) part.replaceChildren();
  };

  return {
    root,
    headline,
    show(reckoning, typed) {
      const costed = reckoning?.kind === "costed";
      root.classList.toggle("priced", costed);
      figures.hidden = !costed;
      plots.show(costed ? reckoning.costed : undefined);
      if (costed) showFigures(reckoning.costed);
      else showNone(headlineOf(reckoning, typed));
      setText(remark, reckoning ? remarkOf(reckoning, typed) : "");
      for (const part of [profit, remark, watch]) part.hidden = part.childNodes.length === 0;
    },
  };
}

/** What a screen reader is told of a result once typing rests. */
export function spokenResult(reckoning: Reckoning | undefined, typed: Typed): string {
  const costed = reckoning?.kind === "costed" ? reckoning.costed : undefined;
  const sheet = costed?.sheets[0];
  if (!costed || !sheet) return headlineOf(reckoning, typed);
  return result.spoken(showMoney(sheet.price), costed.watch.margin && showShare(costed.watch.margin));
}

function headlineOf(reckoning: Reckoning | undefined, typed: Typed): string {
  if (!reckoning) return result.ratesFirst;
  if (reckoning.kind !== "faulty") return result.noPrice;
  return result.faulty(labelsOf(wrong(reckoning, typed)).length);
}

function remarkOf(reckoning: Reckoning, typed: Typed): string {
  if (reckoning.kind === "faulty") return `${showList(labelsOf(wrong(reckoning, typed)))}.`;
  if (reckoning.faults.length === 0) return "";
  const list = showList(labelsOf(reckoning.faults));
  return reckoning.kind === "costed" ? result.stillForQuote(list) : `${result.toFill} ${result.stillToFill(list)}`;
}

function rowElement({ term, value, remark, sentence }: Row): HTMLElement {
  return element(
    "div",
    { class: sentence ? "row sentence" : "row" },
    element("dt", {}, term),
    element("dd", {}, value, ...(remark === undefined ? [] : [" ", element("span", { class: "remark" }, remark)])),
  );
}

function isOne({ line }: CostSheet): boolean {
  return line.quantity.equals(Quotient.one);
}

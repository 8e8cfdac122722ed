import { type Rates, showQuoteNumber } from "../../src/index";
import { bookedTotal } from "../booked";
import { button, linkButton } from "../button";
import { showMoney, today } from "../display";
import { element, setText } from "../element";
import type { BookedQuote } from "../excel/quotebook";
import { reckon } from "../reckoning";
import { DECIDE_TEXTS } from "../texts/decide";
import type { QuoteRisk } from "./risks";
import { riskWords } from "./riskwords";

const { risk: texts } = DECIDE_TEXTS;

export interface RiskEntryEvents {
  /** Makes the quote anew at today's spot, as a revision; answers whether one was made. */
  readonly revise: (quote: BookedQuote) => Promise<boolean>;
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  readonly say: (sentence: string) => void;
}

export interface RiskEntry {
  readonly root: HTMLElement;
  show(risk: QuoteRisk, rates: Rates): void;
}

/** One open quote: what today's spot does to it, and a revision at today's spot after a look at both totals. */
export function riskEntry(on: RiskEntryEvents): RiskEntry {
  let shown: { readonly risk: QuoteRisk; readonly rates: Rates } | undefined;
  let said = "";
  const name = element("b");
  const customer = element("span", { class: "who" });
  const total = element("span", { class: "sum" });
  const words = element("div", { class: "riskwords" });
  const question = element("div", { class: "riskquestion", role: "group" });
  const revise = button(texts.revise, "outline", ask, "small");
  const foot = element("div", { class: "actions" }, revise.root);
  question.hidden = true;

  /** Both totals are shown before anything is made: a click must not surprise a customer. */
  function ask(): void {
    if (!shown) return;
    const { risk, rates } = shown;
    const number = showQuoteNumber(risk.quote.number);
    const typed = { ...risk.typed, order: { ...risk.typed.order, spot: "" } };
    const reckoning = reckon(typed, rates, today());
    if (reckoning.kind !== "costed" || reckoning.faults.length > 0) {
      const [fault] = reckoning.faults;
      put(element("p", { class: "fault" }, texts.noOrder(number, fault?.sentence ?? "")));
      return;
    }
    const before = bookedTotal(risk.quote);
    const now = showMoney(reckoning.costed.quote.total);
    const byHand = risk.order.lines.some(({ pricing }) => pricing?.by === "own price");
    const make = button(
      texts.make,
      "primary",
      () =>
        void on.attempt(async () => {
          make.work(texts.making);
          try {
            if (await on.revise(risk.quote)) put();
          } finally {
            make.rest();
          }
        }),
      "small",
    );
    make.root.setAttribute("aria-label", texts.makeOf(number));
    const leave = linkButton(texts.leave, () => {
      put();
      revise.root.focus();
      on.say(texts.left(number));
    });
    const asked = before === now ? texts.askedSame(number, now) : texts.asked(number, before, now);
    put(
      element("p", {}, asked),
      ...(byHand ? [element("p", { class: "help" }, texts.ownPrice)] : []),
      element("div", { class: "actions" }, make.root, leave),
    );
    on.say(asked);
    make.root.focus();
  }

  function put(...content: readonly HTMLElement[]): void {
    question.replaceChildren(...content);
    question.hidden = content.length === 0;
    foot.hidden = content.length > 0 || isAtTodaysSpot();
  }

  /** Made anew it would be what it is. */
  function isAtTodaysSpot(): boolean {
    return shown?.risk.order.spot.amount.equals(shown.rates.spot.amount) ?? false;
  }

  return {
    root: element(
      "li",
      {},
      element("p", { class: "quotehead" }, element("span", {}, name, " ", customer), total),
      words,
      foot,
      question,
    ),
    show(risk, rates) {
      const number = showQuoteNumber(risk.quote.number);
      const lines = riskWords(risk, rates);
      const now = JSON.stringify([lines, risk.quote.cells.order, risk.quote.cells.total]);
      shown = { risk, rates };
      setText(name, number);
      setText(customer, String(risk.quote.cells.customer));
      setText(total, bookedTotal(risk.quote));
      revise.root.setAttribute("aria-label", texts.reviseOf(number));
      if (now === said) return;
      said = now;
      // What was asked rested on what was shown before.
      put();
      words.replaceChildren(
        ...lines.map(({ text, isWarning }, at) =>
          element("p", { class: isWarning ? "loss" : at === 0 ? "" : "help" }, text),
        ),
      );
    },
  };
}

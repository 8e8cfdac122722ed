import { type Rates, showQuoteNumber } from "../../src/index";
import { button, linkButton } from "../controls/button";
import { element, setText } from "../controls/element";
import { whileWorking } from "../controls/pressstep";
import type { BookedQuote } from "../excel/quote/quotebook";
import { bookedTotal } from "../order/bookedquote";
import { reckon } from "../order/reckoning";
import { termChanges } from "../order/termchanges";
import { DECIDE_TEXTS } from "../wording/decidetexts";
import { showMoney, today } from "../wording/display";
import type { QuoteRisk } from "./openquotes";
import { riskWords } from "./riskmessages";

const { risk: texts } = DECIDE_TEXTS;

export interface RiskEntryEvents {
  /** Makes the quote again at today's spot, as a revision; gives whether one was made. */
  readonly revise: (quote: BookedQuote) => Promise<boolean>;
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  readonly say: (sentence: string) => void;
}

interface Question {
  readonly said: string;
  /** The element that gets the focus. */
  readonly first?: HTMLElement;
  readonly content: () => readonly HTMLElement[];
}

export interface RiskEntry {
  readonly root: HTMLElement;
  show(risk: QuoteRisk, rates: Rates): void;
}

/** One open quote: what today's spot does to it, and a revision at today's spot after a look at both totals. */
export function riskEntry(on: RiskEntryEvents): RiskEntry {
  let shown: { readonly risk: QuoteRisk; readonly rates: Rates } | undefined;
  let said = "";
  let questionSaid = "";
  const name = element("b");
  const customer = element("span", { class: "who" });
  const total = element("span", { class: "sum" });
  const words = element("div", { class: "riskwords" });
  const question = element("div", { class: "riskquestion", role: "group" });
  const revise = button(texts.revise, "outline", ask, "small");
  const foot = element("div", { class: "actions" }, revise.root);
  question.hidden = true;

  function ask(): void {
    const asked = questionOf();
    if (!asked) return;
    put(asked);
    on.say(asked.said);
    asked.first?.focus();
  }

  /** Shows both totals before anything is made, so that no click changes a customer's price by surprise. */
  function questionOf(): Question | undefined {
    if (!shown) return undefined;
    const { risk, rates } = shown;
    const number = showQuoteNumber(risk.quote.number);
    const typed = { ...risk.typed, order: { ...risk.typed.order, spot: "" } };
    const reckoning = reckon(typed, rates, today());
    if (reckoning.kind !== "costed" || reckoning.faults.length > 0) {
      const sentence = texts.noOrder(number, reckoning.faults[0]?.sentence ?? "");
      return { said: sentence, content: () => [element("p", { class: "fault" }, sentence)] };
    }
    const before = bookedTotal(risk.quote);
    const now = showMoney(reckoning.costed.quote.total);
    const byHand = risk.order.lines.some(({ pricing }) => pricing?.by === "own price");
    const changes = termChanges(risk.terms, rates, risk.typed);
    const said = before === now ? texts.askedSame(number, now) : texts.asked(number, before, now);
    const make = makeButton(risk.quote, number);
    const leave = linkButton(texts.leave, () => {
      put(undefined);
      revise.root.focus();
      on.say(texts.left(number));
    });
    return {
      said,
      first: make,
      content: () => [
        element("p", {}, said),
        ...(changes === "" ? [] : [element("p", { class: "help" }, changes)]),
        ...(byHand ? [element("p", { class: "help" }, texts.ownPrice)] : []),
        element("div", { class: "actions" }, make, leave),
      ],
    };
  }

  function makeButton(quote: BookedQuote, number: string): HTMLElement {
    const make = button(
      texts.make,
      "primary",
      () =>
        void on.attempt(async () => {
          return whileWorking(make, texts.making, async () => {
            if (await on.revise(quote)) put(undefined);
          });
        }),
      "small",
    );
    make.root.setAttribute("aria-label", texts.makeOf(number));
    return make.root;
  }

  function put(asked: Question | undefined): void {
    questionSaid = asked?.said ?? "";
    question.replaceChildren(...(asked?.content() ?? []));
    question.hidden = asked === undefined;
    foot.hidden = asked !== undefined || isAtTodaysSpot();
  }

  /** Keeps the question up to date while rates change; removes it once there is nothing to make. */
  function follow(): void {
    const asked = isAtTodaysSpot() ? undefined : questionOf();
    if (asked?.said === questionSaid) return;
    put(asked);
    if (asked) on.say(asked.said);
  }

  /** Whether a revision at today's spot would be the same quote. */
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
      const now = JSON.stringify(lines);
      shown = { risk, rates };
      setText(name, number);
      setText(customer, String(risk.quote.cells.customer));
      setText(total, bookedTotal(risk.quote));
      for (const each of [revise.root, question]) each.setAttribute("aria-label", texts.reviseOf(number));
      if (question.hidden) put(undefined);
      else follow();
      if (now === said) return;
      said = now;
      words.replaceChildren(
        ...lines.map(({ text, isWarning }, at) =>
          element("p", { class: isWarning ? "loss" : at === 0 ? "" : "help" }, text),
        ),
      );
    },
  };
}

import { Quotient, type Rates, showQuoteNumber } from "../../src/index";
import { answerBox } from "../controls/answerbox";
import { linkButton } from "../controls/button";
import { element, setText } from "../controls/element";
import { spokenNote } from "../controls/note";
import type { BookedQuote } from "../excel/quote/quotebook";
import { readWorkbook } from "../excel/quote/workbookreading";
import { isRefusal, sentenceOf } from "../excel/run";
import { oneAtATime } from "../running/oneatatime";
import type { PartEvents, Working } from "../views/lazypart";
import { cautionsAt } from "../wording/cautions";
import { DECIDE_TEXTS } from "../wording/decidetexts";
import { showList, showMoney, showNumber, today } from "../wording/display";
import { type QuoteRisk, type Risks, risksOf } from "./openquotes";
import { type RiskEntry, riskEntry } from "./riskentry";
import { risksHead } from "./riskmessages";

const { risk: texts } = DECIDE_TEXTS;

export interface SpotRiskEvents extends PartEvents {
  readonly revise: (quote: BookedQuote) => Promise<boolean>;
}

/** Quotes listed at first, and added at each press of "more". */
const STEP = 10;

/** The open quotes, worst first: what today's spot does to each, and a revision of it at today's spot. */
export function openSpotRisk(place: HTMLElement, on: SpotRiskEvents): Working {
  const said = answerBox();
  const note = spokenNote();
  const list = element("ul", { class: "quotes risks" });
  const besides = element("div", { class: "besides" });
  let limit = STEP;
  let risks: Risks | undefined;
  let entries = new Map<string, RiskEntry>();
  const more = linkButton("", () => {
    limit += STEP;
    fillList();
  });

  const read = oneAtATime(async () => {
    const { rates } = on.rates();
    if (!rates) return;
    try {
      const { quotes } = await readWorkbook(true);
      if (!quotes) return;
      note.read(quotes.ok ? "" : quotes.sentence);
      risks = risksOf(quotes.ok ? quotes.quotes : [], rates, today());
      show(rates, quotes.ok);
    } catch (error) {
      note.read(sentenceOf(error));
      if (!isRefusal(error)) throw error;
    }
  });

  function show(rates: Rates, wasRead: boolean): void {
    if (!risks) return;
    const { open, ended, unknownStatus, unread, cashBuyers } = risks;
    const termless = open.filter(({ terms }) => !terms).map(({ quote }) => showQuoteNumber(quote.number));
    said.show(wasRead ? [{ text: risksHead(risks, rates), isWarning: false }] : []);
    fillList();
    besides.replaceChildren(
      ...(unread.length > 0
        ? [
            element("p", {}, `${texts.unread(unread.length)}:`),
            element("ul", {}, ...unread.map((sentence) => element("li", {}, sentence))),
          ]
        : []),
      ...(termless.length > 0 ? [element("p", { class: "help" }, texts.termless(showList(termless)))] : []),
      ...(ended.length > 0 ? [element("p", { class: "help" }, texts.ended(showList(ended)))] : []),
      ...(unknownStatus.length > 0
        ? [element("p", { class: "help" }, texts.unknownStatus(showList(unknownStatus)))]
        : []),
      ...cashBuyers.map(({ customer, quotes, together }) =>
        element(
          "p",
          {},
          texts.together(customer, showList(quotes.map(({ number }) => showQuoteNumber(number))), showMoney(together)),
        ),
      ),
      ...(cashBuyers.length > 0 ? [element("p", { class: "caution" }, ...cautionsAt("open quotes", ["cash"]))] : []),
    );
    list.hidden = open.length === 0;
  }

  function fillList(): void {
    const { rates } = on.rates();
    if (!risks || !rates) return;
    const keyed = new Map<string, QuoteRisk>();
    for (const each of risks.open.slice(0, limit)) {
      // A row that a person copied has its number twice.
      const name = showQuoteNumber(each.quote.number);
      keyed.set(keyed.has(name) ? `${name} ${keyed.size}` : name, each);
    }
    const before = [...entries.keys()].join();
    // Entries that are shown already keep their elements, and with them the focus.
    entries = new Map([...keyed].map(([key]) => [key, entries.get(key) ?? riskEntry(on)]));
    for (const [key, each] of keyed) entries.get(key)?.show(each, rates);
    if (before !== [...entries.keys()].join()) list.replaceChildren(...[...entries.values()].map(({ root }) => root));
    const left = risks.open.length - entries.size;
    more.hidden = left <= 0;
    setText(more, texts.more(showNumber(Quotient.of(Math.max(0, Math.min(STEP, left))))));
  }

  more.hidden = true;
  place.replaceChildren(element("div", { class: "decidepart" }, note.root, said.root, list, more, besides));
  return {
    follow() {
      void on.attempt(read);
    },
  };
}

import { QUOTE_STATUSES, type QuoteStatus, quoteStatusOf, showQuoteNumber } from "../../src/index";
import { button, linkButton } from "../controls/button";
import { element, setText } from "../controls/element";
import type { BookedQuote } from "../excel/quote/quotebook";
import type { QuotesReading } from "../excel/quote/workbookreading";
import { bookedTotal, bookedValidity, newestFirst } from "../order/bookedquote";
import { today } from "../wording/display";
import { TEXTS } from "../wording/texts";

const { earlier: texts } = TEXTS;

export interface EarlierEvents {
  /** The list was unfolded: the quotes are to be read. */
  readonly unfolded: () => void;
  readonly open: (quote: BookedQuote) => void;
  readonly statusChosen: (quote: BookedQuote, status: QuoteStatus) => void;
}

export interface EarlierQuotes {
  readonly root: HTMLDetailsElement;
  show(reading: QuotesReading): void;
}

/** Quotes listed at first, and added at each press of "more". */
const STEP = 20;

/** The quotes made so far, folded until the person opens the list. */
export function earlierQuotes(on: EarlierEvents): EarlierQuotes {
  const list = element("ul", { class: "quotes" });
  const note = element("p", { class: "help" });
  let shown = STEP;
  let quotes: readonly BookedQuote[] = [];
  let entries = new Map<string, Entry>();
  const more = linkButton("", () => {
    shown += STEP;
    render();
  });
  const root = element("details", { class: "earlier" }, element("summary", {}, texts.title), note, list, more);
  root.addEventListener("toggle", () => {
    if (root.open) on.unfolded();
  });

  function render(): void {
    const before = [...entries.keys()];
    // A row that a person copied has its number twice; each row gets its own entry.
    const keyed = new Map<string, BookedQuote>();
    for (const quote of quotes.slice(0, shown)) {
      const name = showQuoteNumber(quote.number);
      keyed.set(keyed.has(name) ? `${name} ${keyed.size}` : name, quote);
    }
    // Entries that are shown already keep their elements, and with them the focus.
    entries = new Map([...keyed].map(([key, quote]) => [key, entries.get(key) ?? entry(quote, on)]));
    for (const [key, quote] of keyed) entries.get(key)?.show(quote);
    if (before.join() !== [...entries.keys()].join()) {
      list.replaceChildren(...[...entries.values()].map((each) => each.root));
    }
    const left = quotes.length - entries.size;
    more.hidden = left <= 0;
    setText(more, texts.more(Math.min(STEP, left)));
  }

  return {
    root,
    show(reading) {
      quotes = reading.ok ? newestFirst(reading.quotes) : [];
      setText(note, reading.ok ? (quotes.length > 0 ? texts.about : texts.none) : reading.sentence);
      note.classList.toggle("fault", !reading.ok);
      render();
    },
  };
}

interface Entry {
  readonly root: HTMLElement;
  show(quote: BookedQuote): void;
}

function entry(first: BookedQuote, on: EarlierEvents): Entry {
  let quote = first;
  const name = showQuoteNumber(quote.number);
  const customer = element("span", { class: "who" });
  const total = element("span", { class: "sum" });
  const validity = element("p", { class: "help" });
  const status = element(
    "select",
    { "aria-label": texts.statusOf(name) },
    ...QUOTE_STATUSES.map((each) => element("option", { value: each }, texts.statuses[each])),
  );
  status.addEventListener("change", () => {
    const chosen = quoteStatusOf(status.value);
    if (chosen) on.statusChosen(quote, chosen);
  });
  const open = button(texts.open, "outline", () => on.open(quote), "small");
  open.root.setAttribute("aria-label", texts.openOf(name));
  return {
    root: element(
      "li",
      {},
      element("p", { class: "quotehead" }, element("span", {}, element("b", {}, name), " ", customer), total),
      validity,
      element("div", { class: "quotefoot" }, element("div", { class: "box choice" }, status), open.root),
    ),
    show(now) {
      quote = now;
      setText(customer, String(now.cells.customer));
      setText(total, bookedTotal(now));
      setText(validity, bookedValidity(now, today()));
      choose(status, now.cells.status);
    },
  };
}

/** Selects the status of a quote; a person's own words are shown as in the cell. */
function choose(select: HTMLSelectElement, cell: unknown): void {
  const known = quoteStatusOf(cell);
  select.querySelector("option[data-own]")?.remove();
  const own = String(cell).trim();
  if (!known) {
    select.prepend(element("option", { value: own, "data-own": true }, own === "" ? texts.noStatus : own));
  }
  select.value = known ?? own;
}

import {
  type Answer,
  type Money,
  orderQuestions,
  parseRates,
  type QuoteStatus,
  type Rates,
  showQuoteNumber,
} from "../src/index";
import { announcer } from "./controls/announcer";
import type { Button } from "./controls/button";
import { element } from "./controls/element";
import { stepEnding } from "./controls/ending";
import { watchFoot } from "./controls/foot";
import { hold } from "./controls/keepplace";
import { goTo } from "./excel/host";
import { type BookedQuote, writeQuoteStatus } from "./excel/quote/quotebook";
import { readWorkbook } from "./excel/quote/workbookreading";
import { goToRate, type RatesNews, watchRates } from "./excel/rates/rates";
import { addMissingRates, layOutRates } from "./excel/rates/ratesheet";
import { serialNow } from "./excel/rates/ratespaper";
import { confirmSpotRead, stampSpot } from "./excel/rates/spotread";
import { isRefusal, sentenceOf } from "./excel/run";
import { readSelectedOrder } from "./excel/selection";
import { bookedTotal, lastSpotOf, openBooked } from "./order/bookedquote";
import { orderForm } from "./order/orderform";
import { type Reckoning, reckon } from "./order/reckoning";
import { spotReadWords, termChanges } from "./order/termchanges";
import { earlierQuotes } from "./quote/earlierquotes";
import { openQuestions } from "./quote/questions";
import { quoteMaker } from "./quote/quotemaker";
import { type RatesKnown, ratesHead } from "./quote/rateshead";
import { revisionOf } from "./quote/revision";
import { spotAgeSentence } from "./quote/spotage";
import { templateChoice } from "./quote/templatechoice";
import { resultCard, spokenResult } from "./result/result";
import { oneAtATime } from "./running/oneatatime";
import { toolsFor } from "./tools";
import { paneFrame } from "./views/frame";
import type { LazyPart } from "./views/lazypart";
import { viewsOf } from "./views/views";
import { today } from "./wording/display";
import type { RowTaken, RowTexts } from "./wording/rowtexts";
import { TEXTS } from "./wording/texts";

const MINUTE = 60_000;

/** The whole pane: what is read from Rates and what is typed, wired to what is shown. */
export function openPane(place: HTMLElement): void {
  /** What is shown was made from it. */
  let known: RatesKnown = { reading: undefined, parsed: undefined, failure: "" };
  let isWatching = false;
  let reckoning: Reckoning | undefined;
  /** The spot of the last quote; undefined until the quotes were read. */
  let quoted: { readonly lastSpot: Money | undefined } | undefined;

  const voice = announcer();
  const ending = stepEnding();
  const head = ratesHead({
    goTo: show,
    layOut,
    addMissing,
    readAgain: () => void followRates(),
    stamp: (spot, source) =>
      noteSpot(() => stampSpot(spot, source), source === "keep" ? TEXTS.rates.stamped : TEXTS.rates.stampedCleared),
    confirm: (spot) => noteSpot(() => confirmSpotRead(spot), TEXTS.rates.confirmed),
  });
  const result = resultCard();
  const form = orderForm({
    changed: () => {
      if (!maker.isMaking) ending.clear();
      compute();
    },
    opened: compute,
    leftFaulty: voice.say,
    say: voice.say,
    takeRow: () => attempt(() => readRow(form.takeRow, takeRow)),
    addRow: () => attempt(() => readRow(form.addRow, form.add)),
  });
  const revision = revisionOf(form, startAnew);
  const earlier = earlierQuotes({
    unfolded: () => void followRates(),
    open: (quote) => void reopen(quote, "as quoted"),
    statusChosen: (quote, status) => void attempt(() => setStatus(quote, status)),
  });
  const questions = openQuestions({
    answered: put,
    kept: compute,
    allAnswered(sentence) {
      frame.press.root.focus();
      voice.say(sentence);
    },
  });
  const template = templateChoice(attempt);
  const tools = toolsFor(form, {
    filled() {
      compute();
      views.go("quote");
      form.goTo("linkWeight");
    },
    revise,
    rates: () => ({ reading: known.reading, rates: ratesNow() }),
    order: () => reckoning,
    goTo: show,
    attempt,
    say: voice.say,
  });
  const roots = (parts: readonly LazyPart[]) => parts.map(({ root }) => root);
  const views = viewsOf(
    {
      quote: [result.root, revision.root, form.root, template.root, earlier.root],
      check: roots(tools.check),
      decide: roots(tools.decide),
      links: roots(tools.links),
      catalogue: roots(tools.catalogue),
    },
    (view) => {
      frame.allowPress(view === "quote");
      if (!maker.isMaking) ending.clear();
      if (view !== "quote") for (const part of tools[view]) part.look();
    },
  );
  const frame = paneFrame(
    place,
    {
      head: head.root,
      tabs: views.tabs,
      work: views.panels,
      ending: ending.root,
      ask: questions.root,
      voice: voice.root,
    },
    () => void attempt(() => maker.make()),
  );
  const maker = quoteMaker({
    form,
    revision,
    ending,
    press: frame.press,
    questions,
    template: () => template.name,
    reckoned() {
      compute();
      const { reading } = known;
      return reading?.found && reckoning ? { reckoning, rateValues: reading.values } : undefined;
    },
    followRates: () => followRates(),
    made(spot) {
      quoted = { lastSpot: spot };
    },
    attempt,
    goTo: show,
    say: voice.say,
  });

  function ratesNow(): Rates | undefined {
    return known.parsed?.ok ? known.parsed.value : undefined;
  }

  function compute(): void {
    const typed = form.typed();
    const rates = ratesNow();
    const stay = hold(result.root);
    reckoning = rates ? reckon(typed, rates, today(), form.misread()) : undefined;
    result.show(reckoning, typed, form.line);
    const costed = reckoning?.kind === "costed" ? reckoning.costed : undefined;
    questions.show(costed ? orderQuestions(costed.order, typed, costed.rates, quoted) : [], typed.lines.length);
    form.judge(reckoning?.faults ?? [], costed);
    stay();
    const spoken = spokenResult(reckoning, typed);
    frame.glance(spoken);
    voice.sayAtRest(spoken);
  }

  /** Does what a person answered to a question: goes to where the figure is typed, or types one for them. */
  function put(answer: Exclude<Answer, { readonly does: "keep" }>, lines: readonly number[]): void {
    const [first = form.line] = lines;
    if (answer.does === "put") {
      form.answer(answer.texts, lines);
      compute();
    } else if (answer.to.on === "line") form.goTo(answer.to.field, first);
    else if (answer.to.on === "order") form.goToTerm(answer.to.field);
    else {
      const { field } = answer.to;
      void attempt(() => goToRate(field));
    }
  }

  /**
   * Reads Rates and shows them. It never fails: what could not be read is told in the head, where it says nothing of the
   * step that it follows, and the last good figures stay. A quote is made only at what its own batch reads.
   */
  const followRates = oneAtATime(async () => {
    try {
      const { rates: reading, quotes } = await readWorkbook(earlier.root.open || quoted === undefined, known.reading);
      known = { reading, parsed: reading.found ? parseRates(reading.values) : undefined, failure: "" };
      const rates = ratesNow();
      if (rates) form.adapt(rates);
      revision.follow();
      if (quotes) earlier.show(quotes);
      if (quotes?.ok) quoted = { lastSpot: lastSpotOf(quotes.quotes) };
      frame.showWork(reading.found);
    } catch (error) {
      known = { ...known, failure: sentenceOf(error) };
      if (!isRefusal(error)) reportError(error);
    }
    compute();
    watchSpotAge();
    followParts();
  });

  /** What a minute brings: an older spot, and another try where Excel gave no answer. */
  function eachMinute(): void {
    watchSpotAge();
    if (known.failure !== "") void followRates();
    if (!isWatching) void attempt(watch);
  }

  async function watch(): Promise<void> {
    await watchRates(hear);
    isWatching = true;
  }

  function followParts(): void {
    if (views.shown !== "quote") for (const part of tools[views.shown]) part.follow();
  }

  /** A quote at an old spot is the person's to make, but not unseen. */
  function watchSpotAge(): void {
    head.show(known);
    const { reading } = known;
    const rates = ratesNow();
    const said = reading?.found && rates ? spotAgeSentence(reading.spotRead, rates, serialNow()) : "";
    frame.spotAge(said === "" ? "" : `${said} ${TEXTS.catalogue.age.before}`);
  }

  async function layOut(spot: string): Promise<void> {
    await attempt(async () => {
      ending.clear();
      try {
        await layOutRates(spot);
      } finally {
        // Also where it was taken back: what was seen of it meanwhile is gone.
        await followRates();
      }
      voice.say(TEXTS.rates.laidOut);
    });
  }

  async function addMissing(): Promise<void> {
    await attempt(async () => {
      ending.clear();
      const count = known.reading?.found ? known.reading.missing.length : 0;
      try {
        await addMissingRates();
      } finally {
        await followRates();
      }
      voice.say(TEXTS.rates.addedMissing(count));
    });
  }

  /** What a person says of when the spot was read. */
  async function noteSpot(write: () => Promise<void>, sentence: string): Promise<void> {
    await attempt(async () => {
      ending.clear();
      try {
        await write();
      } finally {
        await followRates();
      }
      voice.say(sentence);
    });
  }

  /** What we write while a quote is made is read once at its end; a sheet without rates may calculate as it likes. */
  function hear({ isOwn, calculatedSheetId }: RatesNews): void {
    // The remark on the age of spot calculates Rates with every change of the workbook.
    if (maker.isMaking && (isOwn || calculatedSheetId !== undefined)) return;
    const sheetIds = known.reading?.found ? known.reading.sheetIds : [];
    const isElsewhere = calculatedSheetId !== undefined && !sheetIds.includes(calculatedSheetId);
    if (isElsewhere && known.failure === "") followParts();
    else void followRates();
  }

  async function readRow(pressed: Button, put: (row: RowTexts) => RowTaken): Promise<void> {
    const rates = ratesNow();
    if (!rates) return ending.failed(TEXTS.result.ratesFirst);
    pressed.work(TEXTS.form.takingRow);
    try {
      ending.clear();
      const { fields, otherCustomer } = put(await readSelectedOrder(rates.currency));
      compute();
      if (fields === 0) return ending.failed(TEXTS.form.tookNone);
      if (otherCustomer) {
        const sentence = TEXTS.form.otherCustomer(otherCustomer, form.typed().order.customer);
        ending.show({ kind: "noted", sentence });
      }
      voice.say(TEXTS.form.took(fields));
    } finally {
      pressed.rest();
    }
  }

  function takeRow(row: RowTexts): RowTaken {
    // A row that takes the form's only line is an order of its own: it must not become a revision of another.
    if (form.typed().lines.length === 1) revision.end();
    return form.take(row);
  }

  /** Puts a quote into the form to be revised, at its own spot or the one on Rates; answers whether it could be opened. */
  function reopen(quote: BookedQuote, spot: "as quoted" | "as Rates"): boolean {
    if (maker.isMaking) return false;
    ending.clear();
    const rates = ratesNow();
    const opened = rates
      ? openBooked(quote, rates.currency)
      : ({ ok: false, sentence: TEXTS.result.ratesFirst } as const);
    if (!opened.ok) {
      ending.failed(opened.sentence);
      return false;
    }
    const { typed, terms } = opened;
    const asked = spot === "as Rates" ? { ...typed, order: { ...typed.order, spot: "" } } : typed;
    revision.begin(quote.number, bookedTotal(quote), asked, () => {
      const now = ratesNow();
      const remarks = [spot === "as quoted" ? spotReadWords(terms) : "", now ? termChanges(terms, now, typed) : ""];
      return remarks.filter((remark) => remark !== "");
    });
    views.go("quote");
    compute();
    revision.root.focus({ preventScroll: true });
    revision.root.scrollIntoView({ block: "start" });
    voice.say(TEXTS.earlier.opened(showQuoteNumber(quote.number)));
    return true;
  }

  /** Makes a quote anew at today's spot, by the way of opening it and pressing the button; answers whether one was made. */
  async function revise(quote: BookedQuote): Promise<boolean> {
    if (!reopen(quote, "as Rates")) return false;
    await maker.make("again");
    // Once a revision is made, that one stands in the form.
    return revision.of !== undefined && showQuoteNumber(revision.of) !== showQuoteNumber(quote.number);
  }

  function startAnew(): void {
    ending.clear();
    compute();
    form.root.querySelector("input")?.focus();
    voice.say(TEXTS.revising.left);
  }

  async function setStatus({ number }: BookedQuote, status: QuoteStatus): Promise<void> {
    try {
      await writeQuoteStatus(number, status);
      voice.say(TEXTS.earlier.statusIs(showQuoteNumber(number), TEXTS.earlier.statuses[status]));
    } finally {
      // The choice shows what the cell says, also where it could not be written.
      await followRates();
    }
  }

  function show(sheet: string): void {
    void attempt(() => goTo(sheet));
  }

  /** Runs a step for a person. What the workbook refuses is told; anything else is told too, and stays an error. */
  async function attempt(step: () => Promise<void>): Promise<void> {
    try {
      await step();
    } catch (error) {
      ending.failed(sentenceOf(error));
      if (!isRefusal(error)) throw error;
    }
  }

  watchFoot(frame.foot, result.headline);
  window.setInterval(eachMinute, MINUTE);
  void followRates();
  void attempt(watch);
}

/** Says that the pane is not in Excel. */
export function refusePane(place: HTMLElement): void {
  place.replaceChildren(
    element("header", {}, element("h1", {}, TEXTS.name)),
    element("p", { class: "alone" }, TEXTS.notInExcel),
  );
}

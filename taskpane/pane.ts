import { type Parsed, parseRates, type Rates, type Standing, showQuoteNumber } from "../src/index";
import { announcer } from "./announcer";
import { banner } from "./banner";
import { bookedTotal, openBooked } from "./booked";
import { type Button, button } from "./button";
import { catalogueSection } from "./catalogue/section";
import { spotAgeSentence } from "./catalogue/spotage";
import { showMoney, today } from "./display";
import { earlierQuotes } from "./earlier";
import { element, setText } from "./element";
import { goTo } from "./excel/host";
import { fillQuote, RatesChanged } from "./excel/quote";
import { type BookedQuote, writeStanding } from "./excel/quotebook";
import { type RatesNews, type RatesReading, watchRates } from "./excel/rates";
import { addMissingRates, layOutRates } from "./excel/ratesheet";
import { serialNow } from "./excel/ratespaper";
import { readWorkbook } from "./excel/reading";
import { readSelectedOrder } from "./excel/selection";
import { modelSection } from "./modelsection";
import { orderForm } from "./orderform";
import { ratesHead } from "./rateshead";
import { type Reckoning, reckon } from "./reckoning";
import { isRefusal, refusalOf, sentenceOf } from "./refusal";
import { resultCard, spokenResult } from "./result";
import { revisionOf } from "./revision";
import type { RowTaken, RowTexts } from "./rowtexts";
import { scaleSections } from "./scalesections";
import { hold } from "./steady";
import { templateChoice } from "./templatechoice";
import { TEXTS } from "./texts";
import { oneAtATime } from "./turns";
import { watchFoot } from "./viewport";

const MINUTE = 60_000;

/** The whole pane: what is read from Rates and what is typed, wired to what is shown. */
export function openPane(place: HTMLElement): void {
  let rates: Parsed<Rates> | undefined;
  /** What was read of Rates; `rates` and what is shown were made from it. */
  let ratesRead: RatesReading = { found: false };
  let reckoning: Reckoning | undefined;
  let making = false;

  const voice = announcer();
  const ending = banner();
  const head = ratesHead({ goTo: show, layOut, addMissing, readAgain: () => void attempt(followRates) });
  const result = resultCard();
  const form = orderForm({
    changed: () => {
      if (!making) ending.clear();
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
    unfolded: () => void attempt(followRates),
    open: reopen,
    stands: (quote, standing) => void attempt(() => setStanding(quote, standing)),
  });
  const template = templateChoice(attempt);
  const model = modelSection({
    useLinkWeight: (grams) => {
      form.fillLine({ linkWeight: grams });
      compute();
    },
    alloyAsked: () => form.typed().lines[form.line] ?? { mark: "", colour: "" },
    say: voice.say,
  });
  const scale = scaleSections({
    takeLink: (texts) => {
      form.fillLine(texts);
      compute();
    },
    line: () => form.typed().lines[form.line] ?? {},
  });
  const catalogue = catalogueSection({ goTo: show, attempt, say: voice.say });
  const press = button(TEXTS.make.press, "primary", () => attempt(makeQuote));
  press.root.setAttribute("aria-keyshortcuts", "Control+Enter");
  press.root.title = TEXTS.make.keys;
  const glance = element("div", { class: "glance", "aria-hidden": "true" });
  const pressBar = element("div", { class: "press" }, glance, press.root);
  const oldSpot = element("p", { class: "spotage", role: "status" });
  oldSpot.hidden = true;
  const foot = element("footer", {}, ending.root, oldSpot, pressBar);
  const work = element(
    "main",
    {},
    result.root,
    revision.root,
    form.root,
    scale.root,
    model.root,
    template.root,
    earlier.root,
    catalogue.root,
  );
  const body = element("div", { class: "body" });
  place.replaceChildren(element("header", {}, element("h1", {}, TEXTS.name), head.root), body, foot, voice.root);
  pressBar.hidden = true;

  function compute(): void {
    const typed = form.typed();
    const stay = hold(result.root);
    reckoning = rates?.ok ? reckon(typed, rates.value, today(), form.misread()) : undefined;
    result.show(reckoning, typed, form.line);
    form.judge(reckoning?.faults ?? [], reckoning?.kind === "costed" ? reckoning.costed.sheets : undefined);
    stay();
    const spoken = spokenResult(reckoning, typed);
    glance.dataset.text = spoken;
    voice.sayAtRest(spoken);
  }

  const followRates = oneAtATime(async () => {
    try {
      const { rates: reading, quotes } = await readWorkbook(earlier.root.open);
      ratesRead = reading;
      rates = reading.found ? parseRates(reading.values) : undefined;
      head.show(reading, rates);
      catalogue.show(reading, rates);
      if (rates?.ok) form.adapt(rates.value);
      if (quotes) earlier.show(quotes);
      if (reading.found !== body.contains(work)) body.replaceChildren(...(reading.found ? [work] : []));
      pressBar.hidden = !reading.found;
      foot.classList.toggle("ready", reading.found);
    } catch (error) {
      // Rates that cannot be read now must not price anything, whatever they were before.
      ratesRead = { found: false };
      rates = undefined;
      head.failed(sentenceOf(error));
      if (!isRefusal(error)) throw error;
    } finally {
      compute();
      watchSpotAge();
    }
  });

  /** A quote at an old spot is the person's to make, but not unseen. */
  function watchSpotAge(): void {
    head.show(ratesRead, rates);
    const said = ratesRead.found && rates?.ok ? spotAgeSentence(ratesRead.values, rates.value, serialNow()) : "";
    setText(oldSpot, said === "" ? "" : `${said} ${TEXTS.catalogue.age.before}`);
    oldSpot.hidden = said === "";
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
      const count = ratesRead.found ? ratesRead.missing.length : 0;
      try {
        await addMissingRates();
      } finally {
        await followRates();
      }
      voice.say(TEXTS.rates.addedMissing(count));
    });
  }

  /** What we write while a quote is made is read once at its end; a sheet without rates may calculate as it likes. */
  function hear({ isOwn, calculatedSheetId }: RatesNews): void {
    // The remark on the age of spot calculates Rates with every change of the workbook.
    if (making && (isOwn || calculatedSheetId !== undefined)) return;
    scale.follow();
    const sheetIds = ratesRead.found ? ratesRead.sheetIds : [];
    if (calculatedSheetId !== undefined && !sheetIds.includes(calculatedSheetId)) return;
    void attempt(followRates);
  }

  async function readRow(pressed: Button, put: (row: RowTexts) => RowTaken): Promise<void> {
    if (!rates?.ok) return ending.failed(TEXTS.result.ratesFirst);
    pressed.work(TEXTS.form.takingRow);
    try {
      ending.clear();
      const { fields, otherCustomer } = put(await readSelectedOrder(rates.value.currency));
      compute();
      if (fields === 0) return ending.failed(TEXTS.form.tookNone);
      if (otherCustomer) ending.noted(TEXTS.form.otherCustomer(otherCustomer, form.typed().order.customer));
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

  function reopen(quote: BookedQuote): void {
    if (making) return;
    ending.clear();
    const opened = rates?.ok
      ? openBooked(quote, rates.value.currency)
      : ({ ok: false, sentence: TEXTS.result.ratesFirst } as const);
    if (!opened.ok) {
      ending.failed(opened.sentence);
      return;
    }
    revision.begin(quote.number, bookedTotal(quote), opened.typed);
    compute();
    revision.root.focus({ preventScroll: true });
    revision.root.scrollIntoView({ block: "start" });
    voice.say(TEXTS.earlier.opened(showQuoteNumber(quote.number)));
  }

  function startAnew(): void {
    ending.clear();
    compute();
    form.root.querySelector("input")?.focus();
    voice.say(TEXTS.revising.left);
  }

  async function setStanding({ number }: BookedQuote, standing: Standing): Promise<void> {
    try {
      await writeStanding(number, standing);
      voice.say(TEXTS.earlier.nowStands(showQuoteNumber(number), TEXTS.earlier.standings[standing]));
    } finally {
      // The choice shows what the cell says, also where it could not be written.
      await followRates();
    }
  }

  async function makeQuote(): Promise<void> {
    if (making) return;
    compute();
    if (!ratesRead.found || !rates || !reckoning) return ending.failed(TEXTS.make.notYet);
    if (reckoning.kind !== "costed" || reckoning.faults.length > 0) {
      ending.failed(refusalOf(reckoning, form.typed()));
      return form.demand(reckoning.faults);
    }
    making = true;
    ending.clear();
    press.work(TEXTS.make.working);
    voice.say(TEXTS.make.working);
    try {
      const { order, sheets, quote, rates: used } = reckoning.costed;
      const revised = revision.of;
      const rateValues = ratesRead.values;
      const filled = await fillQuote({
        order,
        sheets,
        quote,
        rates: used,
        rateValues,
        typed: form.typed(),
        revised,
        template: template.name,
      });
      // The form still holds that quote at its spot: what follows is a revision too, until a new order is begun.
      if (revision.of) revision.goOn(filled.number, showMoney(quote.total));
      try {
        // The quote has taken its number; the next one must be known before another can be made.
        await followRates();
      } finally {
        ending.done(filled, show);
      }
    } catch (error) {
      if (!(error instanceof RatesChanged)) {
        // What was calculated meanwhile was not followed.
        void attempt(followRates);
        throw error;
      }
      await followRates();
      ending.failed(
        TEXTS.make.ratesChanged(reckoning?.kind === "costed" ? showMoney(reckoning.costed.quote.total) : undefined),
      );
    } finally {
      making = false;
      press.rest();
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

  document.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" || !(event.ctrlKey || event.metaKey) || event.isComposing || pressBar.hidden) return;
    event.preventDefault();
    void attempt(makeQuote);
  });
  watchFoot(foot, result.headline);
  window.setInterval(watchSpotAge, MINUTE);
  void attempt(async () => {
    await followRates();
    await watchRates(hear);
  });
}

/** Says that the pane is not in Excel. */
export function refusePane(place: HTMLElement): void {
  place.replaceChildren(
    element("header", {}, element("h1", {}, TEXTS.name)),
    element("p", { class: "alone" }, TEXTS.notInExcel),
  );
}

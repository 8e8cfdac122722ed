import {
  type Fault,
  money,
  type Parsed,
  parseRates,
  Quotient,
  RATE_KEYS,
  RATE_ROWS,
  type RateKey,
  type Rates,
} from "../../src/index";
import { button, linkButton } from "../controls/button";
import { element, setText } from "../controls/element";
import { field } from "../controls/field";
import { whileWorking } from "../controls/pressstep";
import type { RatesReading } from "../excel/rates/rates";
import { serialNow } from "../excel/rates/ratespaper";
import { faultWithLocalMark, twoReadings, withPoint } from "../wording/decimalmark";
import { showCellDate, showList, showSpot } from "../wording/display";
import { TEXTS } from "../wording/texts";
import { spotAgeSentence } from "./spotage";

const { rates: texts } = TEXTS;

export interface RatesHeadEvents {
  readonly goTo: (sheet: string) => void;
  readonly layOut: (spot: string) => Promise<void>;
  readonly addMissing: () => Promise<void>;
  readonly readAgain: () => void;
  /** Writes now as the time of the spot shown. */
  readonly stamp: (spot: unknown, source: "keep" | "clear") => Promise<void>;
  /** The time on Rates is the shown spot's, as the person says. */
  readonly confirm: (spot: unknown) => Promise<void>;
}

/** What the pane knows of Rates. */
export interface RatesKnown {
  /** The last reading that succeeded; undefined before the first. A failed reading does not mean that there are no rates. */
  readonly reading: RatesReading | undefined;
  /** That reading, parsed; undefined where there are no rates. */
  readonly parsed: Parsed<Rates> | undefined;
  /** Why a later reading failed; "" where it did not. */
  readonly failure: string;
}

type FoundRates = Extract<RatesReading, { found: true }>;

export interface RatesHead {
  readonly root: HTMLElement;
  show(known: RatesKnown): void;
}

/** Under the pane's name: the spot worked from, what is wrong on Rates, or the offer to lay Rates out. */
export function ratesHead(on: RatesHeadEvents): RatesHead {
  const root = element("div", { class: "rateshead" }, element("p", { class: "help" }, texts.reading));
  const offer = layOutOffer(on.layOut);
  const age = element("p", { class: "spotage" });
  let shown = "";
  return {
    root,
    show({ reading, parsed, failure }) {
      setText(age, reading?.found && parsed?.ok ? spotAgeSentence(reading.spotRead, parsed.value, serialNow()) : "");
      age.hidden = age.textContent === "";
      // Called at every change in the workbook. What is shown already keeps its elements, with the focus and a spot half typed.
      const news = JSON.stringify([reading ?? null, failure]);
      if (news === shown) return;
      shown = news;
      if (failure !== "") {
        const isKept = reading?.found && parsed?.ok;
        root.replaceChildren(
          unread(failure, isKept ? texts.kept : texts.triedAgain, on.readAgain),
          ...(isKept ? [spotLine(reading, parsed.value, () => on.goTo(reading.sheet)), age] : []),
        );
      } else if (!reading) {
        root.replaceChildren(element("p", { class: "help" }, texts.reading));
      } else if (!reading.found) {
        root.replaceChildren(offer);
      } else {
        const goToRates = () => on.goTo(reading.sheet);
        root.replaceChildren(
          parsed?.ok ? spotLine(reading, parsed.value, goToRates) : faultList(parsed?.faults ?? [], goToRates),
          age,
          ...(parsed?.ok ? timeAsk(reading, parsed.value, on) : []),
          ...(reading.missing.length > 0 ? [missingRows(reading.missing, on.addMissing)] : []),
        );
      }
    },
  };
}

function unread(failure: string, what: string, readAgain: () => void): HTMLElement {
  return element(
    "div",
    { class: "banner failed", role: "group", "aria-labelledby": "rates-unread" },
    element("p", { id: "rates-unread", class: "bannerhead" }, texts.unread),
    element("p", {}, failure),
    element("p", {}, what),
    linkButton(texts.again, readAgain),
  );
}

function spotLine({ spotRead }: FoundRates, rates: Rates, goToRates: () => void): HTMLElement {
  const { time, timeWords, source, ofAnother } = spotRead;
  const parts = [
    texts.spot(showSpot(rates.spot)),
    ofAnother ? texts.timeNotKnown : time === undefined ? timeWords || texts.noTime : showCellDate(time),
    ...(source === "" && ofAnother ? [] : [source || texts.noSource]),
  ];
  return element("p", { class: "spotline" }, parts.join(", "), " ", linkButton(texts.show, goToRates));
}

/** Where the time on Rates is of another spot: the ways to put it right, of which none is taken without a press. */
function timeAsk({ spotRead, values }: FoundRates, rates: Rates, on: RatesHeadEvents): readonly HTMLElement[] {
  const { ofAnother } = spotRead;
  if (!ofAnother) return [];
  const { spot, time, source } = ofAnother;
  const way = (words: string, act: () => Promise<void>) => {
    const press = button(words, "outline", () => whileWorking(press, texts.stamping, act), "small");
    return press.root;
  };
  const before = isPlain(spot) ? showSpot(money(Quotient.of(spot), rates.currency)) : texts.otherWords(spot);
  return [
    element(
      "div",
      { class: "banner missing", role: "group", "aria-labelledby": "spot-time" },
      element("p", { id: "spot-time" }, texts.otherTime(before)),
      element(
        "div",
        { class: "actions" },
        way(source === "" ? texts.readNow : texts.readNowKeep(source), () => on.stamp(values.spot, "keep")),
        ...(source === "" ? [] : [way(texts.readNowClear, () => on.stamp(values.spot, "clear"))]),
        ...(time === "" ? [] : [linkButton(texts.timeIsRight, () => void on.confirm(values.spot))]),
      ),
    ),
  ];
}

function isPlain(spot: string): boolean {
  return /^\d+(\.\d+)?$/.test(spot);
}

function faultList(faults: readonly Fault[], goToRates: () => void): HTMLElement {
  return element(
    "div",
    { class: "banner failed", role: "group", "aria-labelledby": "rates-faulty" },
    element("p", { id: "rates-faulty", class: "bannerhead" }, texts.faulty(faults.length)),
    element("ul", {}, ...faults.map((fault) => element("li", {}, fault.sentence))),
    linkButton(texts.show, goToRates),
  );
}

function missingRows(missing: readonly RateKey[], add: () => Promise<void>): HTMLElement {
  const press = button(
    texts.addMissing(missing.length),
    "outline",
    async () => {
      return whileWorking(press, texts.addingMissing, async () => {
        await add();
      });
    },
    "small",
  );
  const labels = showList(missing.map((key) => RATE_ROWS[key].label));
  return element(
    "div",
    { class: "banner missing" },
    element("p", {}, texts.missing(missing.length, labels)),
    element("div", { class: "actions" }, press.root),
  );
}

function layOutOffer(layOut: (spot: string) => Promise<void>): HTMLElement {
  const spot = field({
    id: "start-spot",
    label: texts.spotLabel,
    required: true,
    numeric: true,
    unit: texts.spotUnit(RATE_ROWS.currency.start),
    help: texts.spotHelp,
  });
  const press = button(texts.layOut, "primary", async () => {
    const sentence = spotFault(spot.control.value);
    spot.setFault(sentence);
    if (sentence !== "") return spot.control.focus();
    return whileWorking(press, texts.layingOut, async () => {
      await layOut(withPoint(spot.control.value, "figure").trim());
    });
  });
  spot.control.addEventListener("input", () => {
    if (spot.root.classList.contains("faulty")) spot.setFault(spotFault(spot.control.value));
  });
  return element(
    "section",
    { class: "offer", "aria-labelledby": "offer-title" },
    element("h2", { id: "offer-title" }, texts.emptyTitle),
    element("p", {}, texts.emptyWhat),
    spot.root,
    press.root,
  );
}

/** What is wrong with a first spot, read as the Rates sheet will read it, together with the start values. */
function spotFault(typed: string): string {
  const readings = twoReadings(typed, "figure");
  if (readings) return TEXTS.form.ambiguous(texts.spotLabel, typed.trim(), readings.fraction, readings.whole);
  const spot = withPoint(typed, "figure");
  const start = Object.fromEntries(RATE_KEYS.map((key) => [key, RATE_ROWS[key].start]));
  const parsed = parseRates({ ...start, spot });
  const sentence = parsed.ok ? "" : (parsed.faults.find((fault) => fault.field === "spot")?.sentence ?? "");
  return faultWithLocalMark(sentence, spot, typed);
}

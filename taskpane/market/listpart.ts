import { isBlank, type ListReading, questionsOf, type Rates, readAskingList } from "../../src/index";
import { type Button, button } from "../controls/button";
import { element, setText } from "../controls/element";
import { type Counts, countsOf, WHOLE, wayTo, wrote } from "../controls/ended";
import { stepEnding } from "../controls/ending";
import { progress } from "../controls/progress";
import { readAskingBook } from "../excel/market/askingbook";
import { keptAskings, keysOf } from "../excel/market/seenaskings";
import { takeListIn } from "../excel/market/takelist";
import { oneAtATime } from "../running/oneatatime";
import { pause } from "../running/slices";
import type { PartEvents, Working } from "../views/lazypart";
import { ASKING_TEXTS } from "../wording/askingtexts";
import { today } from "../wording/display";
import { usedColumns } from "./askingcolumns";
import { listColumns } from "./listcolumns";
import { listOutcome } from "./listoutcome";
import { listQuestions } from "./listquestions";
import { listSource, type ReadList } from "./listsource";
import { takenLists } from "./takenlists";

const { list: texts } = ASKING_TEXTS;

/** Rows that are read anew at every key; a longer list is once typing rests. */
const AT_ONCE = 200;
const REST = 200;

/** A list of asking prices: read, asked about, checked row by row, and taken into the workbook at once. */
export function openAskingList(place: HTMLElement, on: PartEvents): Working {
  const ending = stepEnding();
  const source = listSource({ attempt: begin, read: show, refused: ending.failed });
  const summary = element("p", { class: "summaryline", role: "status" });
  const columns = listColumns(judge);
  const questions = listQuestions(() => {
    window.clearTimeout(resting);
    if (list && list.rows.length > AT_ONCE) resting = window.setTimeout(judge, REST);
    else judge();
  });
  const outcome = listOutcome();
  const take: Button = button(texts.take(0), "outline", () => void begin(takeIn));
  const takeActions = element("div", { class: "actions" }, take.root);
  const working = progress((sentence) => ending.show({ kind: "noted", sentence }));
  const taken = takenLists({ attempt: begin, done: (sentence) => done(sentence, WHOLE), changed: () => read() });
  let list: ReadList | undefined;
  let resting: number | undefined;
  /** What we write ourselves is read once, at its end. */
  let writing = false;
  let kept: ReadonlySet<string> = new Set();
  let reading: ListReading | undefined;
  /** Rows of the list that were taken in by now. */
  let takenRows: ReadonlySet<number> = new Set();
  summary.hidden = true;
  takeActions.hidden = true;
  place.replaceChildren(
    source.root,
    summary,
    columns.root,
    questions.root,
    outcome.root,
    takeActions,
    working.root,
    ending.root,
    taken.root,
  );

  function begin(step: () => Promise<void>): Promise<void> {
    ending.clear();
    return on.attempt(step);
  }

  function done(sentence: string, counts: Counts, sheet?: string): void {
    ending.show(wrote(sentence, counts, { ways: sheet === undefined ? [] : [wayTo(sheet, on.goTo)] }));
  }

  async function show(given: ReadList): Promise<void> {
    list = given;
    takenRows = new Set();
    setText(summary, texts.summary(texts.rows(given.rows.filter((row) => !row.every(isBlank)).length), given.where));
    summary.hidden = false;
    columns.show(given.headers);
    await read();
    judge();
  }

  const read = oneAtATime(async () => {
    const { askings } = await readAskingBook();
    const { rates } = on.rates();
    taken.show(askings.ok ? askings.rows : []);
    if (!askings.ok) return ending.failed(askings.sentence);
    kept = rates ? keysOf(keptAskings(askings.rows, rates.currency, today())) : new Set();
  });

  /** What comes of the list as it is answered now. */
  function judge(): void {
    const { rates } = on.rates();
    reading = undefined;
    outcome.clear();
    takeActions.hidden = true;
    if (!list) return;
    if (!rates) {
      ending.failed(ASKING_TEXTS.check.ratesFirst);
      return;
    }
    const used = usedColumns(columns.matches);
    const before = questions.settings(rates.currency);
    if (!before) return;
    questions.ask(questionsOf(used, list.rows, before), rates.currency);
    const settings = questions.settings(rates.currency) ?? before;
    const byPiece = questionsOf(used, list.rows, settings).per && settings.per === "piece";
    if (!columns.judge(byPiece)) return;
    reading = readAskingList(used, list.rows, settings, kept);
    outcome.show(reading, rates, settings.today, takenRows);
    takeActions.hidden = reading.ready.length === 0;
    take.name(texts.take(reading.ready.length));
  }

  /** All of it was taken in. */
  function forget(): void {
    list = undefined;
    for (const each of [summary, columns.root, questions.root]) each.hidden = true;
  }

  async function takeIn(): Promise<void> {
    const { rates } = on.rates();
    // The table may have grown meanwhile.
    await read();
    judge();
    if (!reading || !rates || reading.ready.length === 0) return;
    const { ready, refused } = reading;
    take.work(texts.taking);
    writing = true;
    try {
      const came = await working.follow(({ progress: told, signal }) =>
        takeListIn(
          ready.map(({ seen, mark }) => ({ seen: withSpot(seen, rates), mark })),
          async (share) => {
            told(share);
            await pause(signal);
          },
        ),
      );
      if (!came) return read();
      const { rows, sheet, looked } = came;
      takenRows = new Set([...takenRows, ...ready.map(({ row }) => row)]);
      if (refused.length === 0) forget();
      judge();
      const sentences = refused.length > 0 ? [texts.leftOut(refused.length)] : [];
      done(texts.taken(texts.rows(rows), sheet), countsOf(looked, { rows: refused.length, sentences }), sheet);
      await read();
      judge();
    } finally {
      writing = false;
      take.rest();
      if (reading) take.name(texts.take(reading.ready.length));
    }
  }

  return {
    follow() {
      if (writing) return;
      void on.attempt(async () => {
        await read();
        judge();
      });
    },
    opened() {
      void on.attempt(source.refresh);
    },
  };
}

/** Beside a price of today stands the spot of today, so that its premium stays what it is. */
function withSpot(seen: ListReading["ready"][number]["seen"], rates: Rates): typeof seen {
  return seen.spot || seen.date !== today() ? seen : { ...seen, spot: rates.spot };
}

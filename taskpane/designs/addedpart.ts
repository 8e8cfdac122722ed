import { money, Quotient, RATE_ROWS } from "../../src/index";
import { element, say } from "../controls/element";
import type { DoneEvents } from "../controls/ended";
import { putSpotBack } from "../excel/rates/newspot";
import { readTakenSpot, type TakenSpot } from "../excel/rates/takenspot";
import { isRefusal, sentenceOf } from "../excel/run";
import { type Addition, listAdditions, takeOut } from "../excel/tables/additions";
import { type TheirPart, takeColumnsOut } from "../excel/tables/takecolumns";
import { showList, showSpot } from "../wording/display";
import { KIT_TEXTS } from "../wording/kittexts";
import { TEXTS } from "../wording/texts";
import { addedEntry, type Undoable, type Undone } from "./addedentry";

const texts = TEXTS.catalogue.added;

export interface AddedPart {
  readonly root: HTMLElement;
  refresh(): Promise<void>;
}

/** So many places are named; the rest is counted. */
const MOST = 6;

/** What the catalogue put into the workbook, each to be taken out again in one step, and the old spot to be put back. */
export function addedPart(on: {
  readonly attempt: (step: () => Promise<void>) => Promise<void>;
  readonly done: DoneEvents["done"];
  readonly say: (sentence: string) => void;
}): AddedPart {
  const list = element("ul", { class: "added" });
  const unread = element("p", { class: "help fault", role: "status" });
  unread.hidden = true;
  const root = element(
    "section",
    { "aria-labelledby": "added-title" },
    element("h3", { id: "added-title" }, texts.title),
    unread,
    list,
  );
  root.hidden = true;

  /** What follows a finished step: that the list cannot be read is said here, and makes the step no failure. */
  async function refresh(): Promise<void> {
    try {
      await read();
      unread.hidden = true;
    } catch (error) {
      say(unread, KIT_TEXTS.unreadAdded(sentenceOf(error)));
      root.hidden = false;
      if (!isRefusal(error)) throw error;
    }
  }

  async function read(): Promise<void> {
    const [additions, spot] = [await listAdditions(), await readTakenSpot()];
    const entries = [...(spot ? [spotBack(spot)] : []), ...additions.map(takingOut)];
    list.replaceChildren(...entries.map((entry) => addedEntry(entry, { ...on, refresh })));
    root.hidden = entries.length === 0;
  }

  return { root, refresh };
}

function spotBack({ currency, is, was, cells }: TakenSpot): Undoable {
  const shown = (amount: string) => showSpot(money(Quotient.of(amount), currency));
  const beside = cells.filter(({ key }) => key !== "spot").map(({ key }) => RATE_ROWS[key].label);
  return {
    what: texts.spot(shown(is), shown(was)),
    press: texts.spotBack,
    pressOf: texts.spotBackOf(shown(was)),
    busy: texts.puttingBack,
    async undo() {
      await putSpotBack();
      return { said: texts.spotIsBack(shown(was), showList(beside)) };
    },
  };
}

function takingOut(addition: Addition): Undoable {
  const what = texts.on(texts.whats[addition.what], addition.sheet);
  return {
    what,
    press: texts.takeOut,
    pressOf: texts.takeOutOf(what),
    busy: texts.taking,
    async undo() {
      if (addition.columns) return columnsOut(addition.id, what);
      await takeOut(addition.id);
      return { said: texts.taken(what) };
    },
  };
}

/** Whatever of the person's is about the columns is told first. @param seen what they agreed to */
async function columnsOut(id: string, what: string, seen?: TheirPart): Promise<Undone> {
  const theirs = await takeColumnsOut(id, seen);
  if (!theirs) return { said: seen ? texts.takenBeside(what) : texts.columnsTaken(what) };
  return {
    found: texts.found(theirs.sheet),
    sentences: [
      ...(theirs.own.length > 0 ? [texts.own(places(theirs.own))] : []),
      ...(theirs.readers.length > 0 ? [texts.readers(places(theirs.readers))] : []),
    ],
    agree: () => columnsOut(id, what, theirs),
  };
}

function places(names: readonly string[]): string {
  const more = names.length - MOST;
  return showList(more > 1 ? [...names.slice(0, MOST), texts.more(more)] : names);
}

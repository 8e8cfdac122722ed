import type { Looked } from "../excel/looked";
import { showList } from "../wording/display";
import { KIT_TEXTS } from "../wording/kittexts";

/** How a step ended. */
export type Ended = Done | Told;

/** Only `wrote` makes one: nothing is called done without a look at it. */
interface Done extends Said {
  readonly kind: "done";
  readonly [LOOKED_AT]: true;
}
const LOOKED_AT = Symbol();

interface Told extends Said {
  /** `noted`: worth a look, though nothing went wrong. */
  readonly kind: "noted" | "failed";
}

interface Said {
  readonly sentence: string;
  /** What is good to know beside it. */
  readonly remarks?: readonly string[];
  readonly ways?: readonly Way[];
}

/** What a part tells of its steps. */
export interface DoneEvents {
  /** Something was written. @param sheet where it is, when there is one to go to */
  readonly done: (sentence: string, counts: Counts, sheet?: string) => void;
  /** Nothing was written, and why. */
  readonly note: (sentence: string) => void;
}

/** Where to go from there. */
export interface Way {
  readonly words: string;
  readonly press: () => void;
}

/** What a step was to write, and what came of it. */
export interface Counts {
  /** How many were asked for: rows, sheets, cells. */
  readonly of: number;
  readonly written: number;
  /** Sentences on what was left out, and on what has faults where it was written. */
  readonly faults: readonly string[];
}

/**
 * The ending of a step that wrote something: done where all of it was written and shows no fault, failed where nothing of it can be
 * used, else worth a look.
 */
export function wrote(
  sentence: string,
  { of, written, faults }: Counts,
  more: { readonly remarks?: readonly string[]; readonly ways?: readonly Way[] } = {},
): Ended {
  const remarks = [...faults, ...(more.remarks ?? [])];
  const said = { sentence, remarks, ways: more.ways ?? [] };
  if (of > 0 && written === 0) return { ...said, kind: "failed" };
  if (faults.length > 0 || written < of) return { ...said, kind: "noted" };
  return { ...said, kind: "done", [LOOKED_AT]: true };
}

/** Counts of what was looked at after it was written, and of what was left out before. */
export function countsOf(
  looked: Looked,
  left: { readonly rows: number; readonly sentences: readonly string[] } = NONE,
): Counts {
  if (looked.kind === "unseen") {
    return { of: 1, written: 1, faults: [KIT_TEXTS.unseen(looked.sentence), ...left.sentences] };
  }
  const { rows, faulty, waiting } = looked;
  const named = faulty.slice(0, MOST).map(String);
  const list = showList(faulty.length > MOST ? [...named, KIT_TEXTS.moreRows(faulty.length - MOST)] : named);
  return {
    of: rows + left.rows,
    written: rows - faulty.length,
    faults: [
      ...(faulty.length > 0 ? [KIT_TEXTS.faulty(faulty.length, rows, list)] : []),
      ...(waiting > 0 ? [KIT_TEXTS.waiting(waiting)] : []),
      ...left.sentences,
    ],
  };
}

const NONE = { rows: 0, sentences: [] };
/** So many rows are named; the rest is counted. */
const MOST = 8;

/** Something that was taken out, put back or copied as a whole: it is done, or it threw. */
export const WHOLE: Counts = { of: 1, written: 1, faults: [] };

export function wayTo(sheet: string, goTo: (sheet: string) => void, words = KIT_TEXTS.show(sheet)): Way {
  return { words, press: () => goTo(sheet) };
}

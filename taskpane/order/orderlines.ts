import { type Fault, LINE_LABELS, type LineKey, MOST_LINES, type TypedLine } from "../../src/index";
import { copyOf, countedTexts, type Entries, fillEntries, freshEntries, isUntouched, misread } from "./entries";
import { keysOf, type PlannedGroup } from "./formplan";

export type LineEntries = Entries<LineKey>;
export type LineTexts = Readonly<Partial<Record<LineKey, string>>>;

/** A line that was taken out, and where it stood. */
export interface TakenLine {
  readonly entries: LineEntries;
  readonly at: number;
}

/** The lines of an order as typed, one of them open. There is always one. */
export interface OrderLines {
  readonly all: readonly LineEntries[];
  /** Counted from 0. */
  readonly open: number;
  readonly current: LineEntries;
  readonly isFull: boolean;
  go(line: number): void;
  /** A line with the units of the open one: an order is measured in one. */
  blank(): LineEntries;
  /** Puts a line after the open one and opens it; there must be room. */
  insert(entries: LineEntries): void;
  /** Takes the open line out; undefined where it is the only one. */
  takeOut(): TakenLine | undefined;
  putBack(taken: TakenLine): void;
  /** Puts these in place of all lines. */
  fill(given: readonly LineTexts[]): void;
  /** Puts texts into the open line. */
  fillOpen(given: LineTexts): void;
  /** The first line that nobody has touched. */
  untouched(): number | undefined;
  typed(): readonly TypedLine[];
  misread(): readonly Fault[];
  leaveAll(): void;
  /** What gives back all lines as they are now. */
  keep(): () => void;
}

export function orderLines(groups: readonly PlannedGroup<LineKey>[], first: LineEntries): OrderLines {
  let all: readonly LineEntries[] = [first];
  let open = 0;
  const current = () => {
    const entries = all[open];
    if (!entries) throw new Error("The order has no open line");
    return entries;
  };
  const go = (line: number) => {
    open = Math.max(0, Math.min(line, all.length - 1));
  };
  const blank = () => {
    const entries = freshEntries(groups);
    const { lengthUnit, linksPerUnit } = current().texts;
    Object.assign(entries.texts, { lengthUnit, linksPerUnit });
    return entries;
  };
  const putIn = (entries: LineEntries, at: number) => {
    all = [...all.slice(0, at), entries, ...all.slice(at)];
    go(at);
  };
  return {
    get all() {
      return all;
    },
    get open() {
      return open;
    },
    get current() {
      return current();
    },
    get isFull() {
      return all.length >= MOST_LINES;
    },
    go,
    blank,
    insert: (entries) => putIn(entries, open + 1),
    takeOut() {
      if (all.length < 2) return undefined;
      const taken = { entries: current(), at: open };
      all = all.filter((entries) => entries !== taken.entries);
      go(open);
      return taken;
    },
    putBack: ({ entries, at }) => putIn(entries, Math.min(at, all.length)),
    fill(given) {
      const start = blank();
      all = given.map((texts) => {
        const entries = copyOf(start);
        fillEntries(groups, entries, asTyped(texts));
        return entries;
      });
      go(0);
    },
    fillOpen: (given) => fillEntries(groups, current(), asTyped(given)),
    untouched() {
      // Units say nothing of their own.
      const { lengthUnit, linksPerUnit } = freshEntries(groups).texts;
      const found = all.findIndex(({ texts, left }) =>
        isUntouched(groups, { texts: { ...texts, lengthUnit, linksPerUnit }, left }),
      );
      return found < 0 ? undefined : found;
    },
    typed: () => all.map((entries) => countedTexts(groups, entries)),
    misread: () =>
      all.flatMap((entries, line) => misread(groups, LINE_LABELS, entries).map((fault) => ({ ...fault, line }))),
    leaveAll() {
      for (const { left } of all) for (const key of keysOf(groups)) left.add(key);
    },
    keep() {
      const kept = all.map(copyOf);
      const at = open;
      return () => {
        all = kept;
        go(at);
      };
    },
  };
}

/** A count of links with stones says which links, where nothing else does; a unit that is not given stays as it was. */
function asTyped(given: LineTexts): LineTexts {
  const said = (key: LineKey) => (given[key] ?? "").trim() !== "";
  const typed: Partial<Record<LineKey, string>> = { ...given };
  if (!said("stonesOn") && said("stoneCount")) typed.stonesOn = "a number of links";
  for (const key of ["lengthUnit", "linksPerUnit"] as const) if (!said(key)) delete typed[key];
  return typed;
}

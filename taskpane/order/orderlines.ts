import { type Fault, LINE_LABELS, type LineKey, MOST_LINES, type TypedLine } from "../../src/index";
import {
  allGoneFrom,
  countedTexts,
  type Entries,
  filledWith,
  freshEntries,
  isUntouched,
  misread,
} from "../controls/entries";
import type { PlannedGroup } from "../controls/formplan";

export type LineEntries = Entries<LineKey>;
export type LineTexts = Readonly<Partial<Record<LineKey, string>>>;
type LineGroups = readonly PlannedGroup<LineKey>[];

/** The lines of an order as typed, one of them open. There is always one; every change makes new ones. */
export interface OrderLines {
  readonly all: readonly LineEntries[];
  /** Counted from 0. */
  readonly open: number;
}

/** A line that was taken out, and where it stood. */
export interface TakenLine {
  readonly entries: LineEntries;
  readonly at: number;
}

export function openLineOf({ all, open }: OrderLines): LineEntries {
  const entries = all[open];
  if (!entries) throw new Error("The order has no open line");
  return entries;
}

export function isFull({ all }: OrderLines): boolean {
  return all.length >= MOST_LINES;
}

/** With another line open. */
export function opened({ all }: OrderLines, line: number): OrderLines {
  return { all, open: Math.max(0, Math.min(line, all.length - 1)) };
}

/** With other entries in the open line. */
export function withOpen({ all, open }: OrderLines, entries: LineEntries): OrderLines {
  return { all: all.map((each, line) => (line === open ? entries : each)), open };
}

/** A line with the units of the open one: an order is measured in one. */
export function blankLine(groups: LineGroups, lines: OrderLines): LineEntries {
  const { texts, blurred } = freshEntries(groups);
  const { lengthUnit, linksPerUnit } = openLineOf(lines).texts;
  return { texts: { ...texts, lengthUnit, linksPerUnit }, blurred };
}

/** With a line after the open one, which is then open; there must be room. */
export function withLine(lines: OrderLines, entries: LineEntries): OrderLines {
  return withLineAt(lines, entries, lines.open + 1);
}

/** Without the open line; undefined where it is the only one. */
export function withoutOpen(lines: OrderLines): { readonly lines: OrderLines; readonly taken: TakenLine } | undefined {
  const { all, open } = lines;
  if (all.length < 2) return undefined;
  const taken = { entries: openLineOf(lines), at: open };
  return { lines: opened({ all: all.filter((_, line) => line !== open), open }, open), taken };
}

export function withTaken(lines: OrderLines, { entries, at }: TakenLine): OrderLines {
  return withLineAt(lines, entries, Math.min(at, lines.all.length));
}

function withLineAt({ all, open }: OrderLines, entries: LineEntries, at: number): OrderLines {
  return opened({ all: [...all.slice(0, at), entries, ...all.slice(at)], open }, at);
}

/** These in place of all lines. */
export function linesOf(groups: LineGroups, lines: OrderLines, given: readonly LineTexts[]): OrderLines {
  const start = blankLine(groups, lines);
  return { all: given.map((texts) => filledWith(groups, start, asTyped(texts))), open: 0 };
}

/** With texts in the open line, beside what stands there. */
export function withTexts(groups: LineGroups, lines: OrderLines, given: LineTexts): OrderLines {
  return withOpen(lines, filledWith(groups, openLineOf(lines), asTyped(given)));
}

/** The first line that nobody has touched. */
export function untouchedLine(groups: LineGroups, { all }: OrderLines): number | undefined {
  // Units say nothing of their own.
  const { lengthUnit, linksPerUnit } = freshEntries(groups).texts;
  const found = all.findIndex(({ texts, blurred }) =>
    isUntouched(groups, { texts: { ...texts, lengthUnit, linksPerUnit }, blurred }),
  );
  return found < 0 ? undefined : found;
}

export function typedLines(groups: LineGroups, { all }: OrderLines): readonly TypedLine[] {
  return all.map((entries) => countedTexts(groups, entries));
}

export function misreadLines(groups: LineGroups, { all }: OrderLines): readonly Fault[] {
  return all.flatMap((entries, line) => misread(groups, LINE_LABELS, entries).map((fault) => ({ ...fault, line })));
}

/** With everything asked for, also what is still empty. */
export function allAsked(groups: LineGroups, { all, open }: OrderLines): OrderLines {
  return { all: all.map((entries) => allGoneFrom(groups, entries)), open };
}

/** A count of links with stones says which links, where nothing else does; a unit that is not given stays as it was. */
function asTyped(given: LineTexts): LineTexts {
  const said = (key: LineKey) => (given[key] ?? "").trim() !== "";
  const typed: Partial<Record<LineKey, string>> = { ...given };
  if (!said("stonesOn") && said("stoneCount")) typed.stonesOn = "a number of links";
  for (const key of ["lengthUnit", "linksPerUnit"] as const) if (!said(key)) delete typed[key];
  return typed;
}

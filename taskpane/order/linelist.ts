import { type CostSheet, type Fault, LINE_LABELS, type LineKey, MOST_LINES, type Rates } from "../../src/index";
import { type Form, plannedForm } from "../controls/form";
import type { PlannedGroup } from "../controls/formplan";
import { undoNotice } from "../controls/undo";
import { TEXTS } from "../wording/texts";
import { lineGroups } from "./linefields";
import { type LineListView, lineListView } from "./linelistview";
import { lineStanding, lineTitle } from "./linetitle";
import {
  allAsked,
  blankLine,
  isFull,
  type LineEntries,
  type LineTexts,
  linesOf,
  type OrderLines,
  opened,
  openLineOf,
  type TakenLine,
  typedLines,
  untouchedLine,
  withLine,
  withOpen,
  withoutOpen,
  withTaken,
  withTexts,
} from "./orderlines";
import { isMissingIn } from "./reckoning";

const { form: texts } = TEXTS;

export interface LineList {
  readonly root: HTMLElement;
  readonly groups: readonly PlannedGroup<LineKey>[];
  /** The lines as they stand now. */
  readonly lines: OrderLines;
  /** Puts these lines in place of all that stand there. */
  fill(lines: readonly LineTexts[]): void;
  /** Puts texts into the open line, or into another. */
  take(texts: LineTexts, line?: number): void;
  /** Puts texts into a line of their own; false where there are as many as an order holds. */
  add(texts: LineTexts): boolean;
  /** What gives back all that stands here now. */
  snapshot(): () => void;
  adapt(rates: Rates): void;
  /** Keeps the faults, and shows what each line comes to. */
  judge(faults: readonly Fault[], sheets: readonly CostSheet[] | undefined): void;
  /** Shows every fault, also of fields that nobody has gone on from yet. */
  askAll(): void;
  goTo(line: number, key: LineKey): void;
}

export interface LineListEvents {
  /** Something was typed, or there are other lines. */
  readonly changed: () => void;
  /** Another line was opened. */
  readonly opened: () => void;
  readonly leftFaulty: (sentence: string) => void;
  readonly say: (sentence: string) => void;
}

/** The lines of an order in a list, the open one unfolded. @param more further actions beside those of a line */
export function lineList(on: LineListEvents, more: HTMLElement): LineList {
  const groups = lineGroups();
  const form = plannedForm({ name: "order", groups, labels: LINE_LABELS }, on);
  const removal = undoNotice<TakenLine>((taken) => {
    change(withTaken(shown.lines, taken));
    on.say(texts.back(shown.lines.open + 1));
    form.goTo("design");
  });
  const add = () => begin(blankLine(groups, shown.lines));
  const copy = () => begin(openLineOf(shown.lines));
  const presses = { open: openLine, add, copy, remove: removeOpen };
  const view = lineListView(form.groups, presses, removal.root, more);
  const shown = shownLines(groups, form, view);

  function change(lines: OrderLines): void {
    shown.show(lines, "anew");
    on.changed();
  }

  function openLine(line: number): void {
    if (line === shown.lines.open) return;
    view.goTo(line, () => {
      shown.show(opened(shown.lines, line));
      on.opened();
    });
  }

  function begin(entries: LineEntries): boolean {
    const { lines } = shown;
    view.sayFull(isFull(lines) ? texts.mostLines(MOST_LINES) : "");
    if (isFull(lines)) return false;
    change(withLine(lines, entries));
    form.goTo("design");
    on.say(texts.added(shown.lines.open + 1));
    return true;
  }

  function removeOpen(): void {
    const title = lineTitle(shown.lines.open + 1, form.counted());
    const without = withoutOpen(shown.lines);
    if (!without) return;
    change(without.lines);
    removal.offer(without.taken, texts.removed(title));
  }

  return {
    root: view.root,
    groups,
    get lines() {
      return shown.lines;
    },
    fill(given) {
      shown.show(linesOf(groups, shown.lines, given), "anew");
      removal.clear();
    },
    take(given, line = shown.lines.open) {
      const { open } = shown.lines;
      shown.show(opened(withTexts(groups, opened(shown.lines, line), given), open));
    },
    add(given) {
      // A line nobody has touched is the place for it.
      const untouched = untouchedLine(groups, shown.lines);
      if (untouched === undefined && !add()) return false;
      const lines = untouched === undefined ? shown.lines : opened(shown.lines, untouched);
      shown.show(withTexts(groups, lines, given));
      return true;
    },
    snapshot() {
      const back = [removal.snapshot(), shown.snapshot()];
      return () => {
        for (const each of back) each();
      };
    },
    adapt: form.adapt,
    judge: shown.judge,
    askAll: () => shown.show(allAsked(groups, shown.lines)),
    goTo(line, key) {
      if (line < shown.lines.all.length) openLine(line);
      form.goTo(key);
    },
  };
}

interface ShownLines {
  /** With what is typed in the open one by now. */
  readonly lines: OrderLines;
  /** @param how `anew`: there are other lines, and what was wrong with them is to be found out again */
  show(lines: OrderLines, how?: "anew"): void;
  snapshot(): () => void;
  judge(faults: readonly Fault[], sheets: readonly CostSheet[] | undefined): void;
}

/** The lines as they are shown: the open one in the form, and each in the list with what it comes to. */
function shownLines(groups: readonly PlannedGroup<LineKey>[], form: Form<LineKey>, view: LineListView): ShownLines {
  let lines: OrderLines = { all: [form.entries], open: 0 };
  let faults: readonly Fault[] = [];
  const now = () => withOpen(lines, form.entries);
  const faultsOf = (line: number) => faults.filter((fault) => fault.line === line);
  const retitle = (sheets?: readonly CostSheet[]) => {
    for (const [line, typed] of typedLines(groups, now()).entries()) {
      const { said, faulty } = lineStanding(sheets?.[line], faultsOf(line), (fault) => isMissingIn(fault, typed));
      view.title(line, { title: lineTitle(line + 1, typed), standing: said, isFaulty: faulty });
    }
  };
  const show = (next: OrderLines, how?: "anew") => {
    lines = next;
    if (how === "anew") faults = [];
    form.hold(openLineOf(lines));
    form.judge(faultsOf(lines.open));
    view.show(lines);
    retitle();
  };
  show(lines);
  return {
    get lines() {
      return now();
    },
    show,
    snapshot() {
      const kept = now();
      return () => show(kept, "anew");
    },
    judge(found, sheets) {
      faults = found;
      form.judge(faultsOf(lines.open));
      retitle(sheets);
    },
  };
}

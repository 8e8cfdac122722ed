import {
  type CostSheet,
  type Fault,
  LINE_LABELS,
  type LineKey,
  MOST_LINES,
  type Rates,
  type TypedLine,
} from "../src/index";
import { button } from "./button";
import { element, setText } from "./element";
import { copyOf, countedTexts, type Entries, fillEntries, freshEntries, isUntouched, misread } from "./entries";
import { fieldPart } from "./fieldpart";
import { keysOf } from "./formplan";
import { lineGroups } from "./linefields";
import { lineStanding, lineTitle } from "./linetitle";
import { isMissingIn } from "./reckoning";
import { steady } from "./steady";
import { TEXTS } from "./texts";
import { undoNotice } from "./undo";

const { form: texts } = TEXTS;

export interface LineList {
  readonly root: HTMLElement;
  /** The line one works in, counted from 0. */
  readonly open: number;
  readonly count: number;
  typed(): readonly TypedLine[];
  misread(): readonly Fault[];
  /** Puts these lines in place of all that stand there. */
  fill(lines: readonly Readonly<Partial<Record<LineKey, string>>>[]): void;
  /** Puts texts into the open line. */
  take(texts: Readonly<Partial<Record<LineKey, string>>>): void;
  /** Puts texts into a line of their own; false where there are as many as an order holds. */
  add(texts: Readonly<Partial<Record<LineKey, string>>>): boolean;
  /** What gives back all that stands here now. */
  keep(): () => void;
  adapt(rates: Rates): void;
  /** Keeps the faults, and shows what each line comes to. */
  judge(faults: readonly Fault[], sheets: readonly CostSheet[] | undefined): void;
  /** Shows every fault, also in fields that nobody has left yet. */
  leaveAll(): void;
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

/** The lines of an order, one of them open to work in. @param more further actions beside those of a line */
export function lineList(on: LineListEvents, more: HTMLElement): LineList {
  const groups = lineGroups();
  const keys = keysOf(groups);
  const part = fieldPart(groups, LINE_LABELS, "order", on);
  let lines: Entries<LineKey>[] = [part.entries];
  let open = 0;
  let faults: readonly Fault[] = [];
  const heads = new WeakMap<Entries<LineKey>, LineHead>();
  const headOf = (entries: Entries<LineKey>): LineHead => {
    const made = heads.get(entries) ?? lineHead(() => openLine(lines.indexOf(entries)));
    heads.set(entries, made);
    return made;
  };

  const removal = undoNotice<{ readonly entries: Entries<LineKey>; readonly at: number }>(({ entries, at }) => {
    lines.splice(Math.min(at, lines.length), 0, entries);
    go(lines.indexOf(entries));
    on.changed();
    on.say(texts.back(open + 1));
    focusOpen();
  });
  const copy = button(texts.copyLine, "outline", () => begin(copyOf(openEntries())), "small");
  const remove = button(texts.removeLine, "outline", removeOpen, "small");
  const body = element(
    "div",
    { id: "order-line", class: "linebody", role: "group" },
    ...part.groups,
    element("div", { class: "actions" }, remove.root),
  );
  const list = element("ol", { class: "linelist", "aria-label": texts.lines });
  const note = element("p", { class: "help", role: "status" });
  const add = button(texts.addLine, "outline", () => begin(newLine()), "small");
  const root = element(
    "div",
    { class: "lines" },
    list,
    removal.root,
    note,
    element("div", { class: "actions" }, add.root, copy.root, more),
  );
  note.hidden = true;

  function openEntries(): Entries<LineKey> {
    const entries = lines[open];
    if (!entries) throw new Error("The order has no open line");
    return entries;
  }

  /** Opens a line and shows the list as it is now. */
  function go(line: number): void {
    open = Math.max(0, Math.min(line, lines.length - 1));
    part.hold(openEntries());
    part.judge(faultsOf(open));
    const several = lines.length > 1;
    const items = lines.map((entries, index) => {
      const head = headOf(entries);
      head.show(index === open);
      head.root.hidden = !several;
      if (index === open) head.item.append(body);
      return head.item;
    });
    list.replaceChildren(...items);
    list.classList.toggle("several", several);
    body.setAttribute("aria-label", texts.line(open + 1));
    remove.root.hidden = !several;
    retitle();
  }

  function retitle(sheets?: readonly CostSheet[]): void {
    lines.forEach((entries, index) => {
      const typed = countedTexts(groups, entries);
      const standing = lineStanding(sheets?.[index], faultsOf(index), (fault) => isMissingIn(fault, typed));
      headOf(entries).say(lineTitle(index + 1, typed), standing.said, standing.faulty);
    });
  }

  function faultsOf(line: number): readonly Fault[] {
    return faults.filter((fault) => fault.line === line);
  }

  function openLine(line: number): void {
    if (line === open) return;
    const entries = lines[line];
    if (!entries) return;
    const stay = steady(headOf(entries).root);
    go(line);
    on.opened();
    stay();
    headOf(entries).root.focus({ preventScroll: true });
  }

  /** A line with the units of the one before it: an order is measured in one. */
  function newLine(): Entries<LineKey> {
    const entries = freshEntries(groups);
    const { lengthUnit, linksPerUnit } = openEntries().texts;
    Object.assign(entries.texts, { lengthUnit, linksPerUnit });
    return entries;
  }

  function begin(entries: Entries<LineKey>): boolean {
    const full = lines.length >= MOST_LINES;
    setText(note, full ? texts.mostLines(MOST_LINES) : "");
    note.hidden = !full;
    if (full) return false;
    faults = [];
    lines.splice(open + 1, 0, entries);
    go(open + 1);
    on.changed();
    focusOpen();
    on.say(texts.added(open + 1));
    return true;
  }

  function removeOpen(): void {
    if (lines.length < 2) return;
    const entries = openEntries();
    const at = open;
    const title = lineTitle(at + 1, countedTexts(groups, entries));
    faults = [];
    lines.splice(at, 1);
    go(at);
    on.changed();
    removal.offer({ entries, at }, texts.removed(title));
  }

  function focusOpen(): void {
    part.goTo("design");
  }

  go(0);
  return {
    root,
    get open() {
      return open;
    },
    get count() {
      return lines.length;
    },
    typed: () => lines.map((entries) => countedTexts(groups, entries)),
    misread: () =>
      lines.flatMap((entries, line) => misread(groups, LINE_LABELS, entries).map((fault) => ({ ...fault, line }))),
    fill(given) {
      const units = newLine();
      lines = given.map((each) => {
        const entries = copyOf(units);
        fillEntries(groups, entries, asTyped(each));
        return entries;
      });
      faults = [];
      removal.clear();
      go(0);
    },
    take(given) {
      fillEntries(groups, openEntries(), asTyped(given));
      go(open);
    },
    add(given) {
      // A line nobody has touched is the place for it.
      const unused = lines.findIndex((entries) => isUntouched(groups, { ...entries, texts: unitless(entries.texts) }));
      if (unused >= 0) {
        const entries = lines[unused];
        if (entries) fillEntries(groups, entries, asTyped(given));
        go(unused);
        return true;
      }
      const entries = newLine();
      fillEntries(groups, entries, asTyped(given));
      return begin(entries);
    },
    keep() {
      const kept = lines.map(copyOf);
      const at = open;
      const back = removal.keep();
      return () => {
        lines = kept;
        faults = [];
        go(at);
        back();
      };
    },
    adapt: part.adapt,
    judge(found, sheets) {
      faults = found;
      part.judge(faultsOf(open));
      retitle(sheets);
    },
    leaveAll() {
      for (const { left } of lines) for (const key of keys) left.add(key);
      part.judge(faultsOf(open));
    },
    goTo(line, key) {
      if (line !== open) openLine(line);
      part.goTo(key);
    },
  };

  /** Units say nothing of their own. */
  function unitless(texts: Record<LineKey, string>): Record<LineKey, string> {
    const { lengthUnit, linksPerUnit } = freshEntries(groups).texts;
    return { ...texts, lengthUnit, linksPerUnit };
  }
}

/** A count of links with stones says which links, where nothing else does; a unit that is not given stays as it was. */
function asTyped(given: Readonly<Partial<Record<LineKey, string>>>): Partial<Record<LineKey, string>> {
  const said = (key: LineKey) => (given[key] ?? "").trim() !== "";
  const typed = { ...given };
  if (!said("stonesOn") && said("stoneCount")) typed.stonesOn = "a number of links";
  for (const key of ["lengthUnit", "linksPerUnit"] as const) if (!said(key)) delete typed[key];
  return typed;
}

interface LineHead {
  readonly item: HTMLElement;
  readonly root: HTMLButtonElement;
  show(open: boolean): void;
  say(title: string, standing: string, faulty: boolean): void;
}

function lineHead(pressed: () => void): LineHead {
  const title = element("span", { class: "linetitle" });
  const standing = element("span", { class: "linesum" });
  const root = element("button", { type: "button", class: "linehead" }, title, " ", standing);
  root.addEventListener("click", pressed);
  return {
    item: element("li", {}, root),
    root,
    show(open) {
      root.setAttribute("aria-expanded", String(open));
      // One line is always open: the open one has nothing to press.
      if (open) {
        root.setAttribute("aria-disabled", "true");
        root.setAttribute("aria-controls", "order-line");
      } else {
        root.removeAttribute("aria-disabled");
        root.removeAttribute("aria-controls");
      }
    },
    say(said, sum, faulty) {
      setText(title, said);
      setText(standing, sum);
      standing.classList.toggle("fault", faulty);
    },
  };
}

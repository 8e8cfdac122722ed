import { type CostSheet, type Fault, LINE_LABELS, type LineKey, MOST_LINES, type Rates } from "../../src/index";
import { button } from "../controls/button";
import { element, setText } from "../controls/element";
import { steady } from "../controls/keepplace";
import { undoNotice } from "../controls/undo";
import { TEXTS } from "../wording/texts";
import { copyOf } from "./entries";
import { fieldPart } from "./fieldpart";
import { lineGroups } from "./linefields";
import { type LineHead, lineHead } from "./linehead";
import { lineStanding, lineTitle } from "./linetitle";
import { type LineEntries, type LineTexts, type OrderLines, orderLines, type TakenLine } from "./orderlines";
import { isMissingIn } from "./reckoning";

const { form: texts } = TEXTS;
const BODY = "order-line";

export interface LineList {
  readonly root: HTMLElement;
  readonly lines: Pick<OrderLines, "all" | "open" | "typed" | "misread">;
  /** Puts these lines in place of all that stand there. */
  fill(lines: readonly LineTexts[]): void;
  /** Puts texts into the open line. */
  take(texts: LineTexts): void;
  /** Puts texts into a line of their own; false where there are as many as an order holds. */
  add(texts: LineTexts): boolean;
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

/** The lines of an order in a list, the open one unfolded. @param more further actions beside those of a line */
export function lineList(on: LineListEvents, more: HTMLElement): LineList {
  const groups = lineGroups();
  const part = fieldPart(groups, LINE_LABELS, "order", on);
  const lines = orderLines(groups, part.entries);
  const heads = new WeakMap<LineEntries, LineHead>();
  let faults: readonly Fault[] = [];
  const headOf = (entries: LineEntries): LineHead => {
    const head = heads.get(entries) ?? lineHead(BODY, () => openLine(lines.all.indexOf(entries)));
    heads.set(entries, head);
    return head;
  };
  const faultsOf = (line: number) => faults.filter((fault) => fault.line === line);

  const removal = undoNotice<TakenLine>((taken) => {
    lines.putBack(taken);
    changed();
    on.say(texts.back(lines.open + 1));
    part.goTo("design");
  });
  const add = button(texts.addLine, "outline", () => begin(lines.blank()), "small");
  const copy = button(texts.copyLine, "outline", () => begin(copyOf(lines.current)), "small");
  const remove = button(texts.removeLine, "outline", removeOpen, "small");
  const body = element(
    "div",
    { id: BODY, class: "linebody", role: "group" },
    ...part.groups,
    element("div", { class: "actions" }, remove.root),
  );
  const list = element("ol", { class: "linelist", "aria-label": texts.lines });
  const full = element("p", { class: "help", role: "status" });
  full.hidden = true;
  const root = element(
    "div",
    { class: "lines" },
    list,
    removal.root,
    full,
    element("div", { class: "actions" }, add.root, copy.root, more),
  );

  /** Shows the list as it is now, with the open line's fields. */
  function render(): void {
    const several = lines.all.length > 1;
    part.hold(lines.current);
    part.judge(faultsOf(lines.open));
    const items = lines.all.map((entries, index) => {
      const head = headOf(entries);
      head.show(index === lines.open);
      head.root.hidden = !several;
      if (index === lines.open) head.item.append(body);
      return head.item;
    });
    list.replaceChildren(...items);
    list.classList.toggle("several", several);
    body.setAttribute("aria-label", texts.line(lines.open + 1));
    remove.root.hidden = !several;
    retitle();
  }

  function retitle(sheets?: readonly CostSheet[]): void {
    lines.typed().forEach((typed, index) => {
      const entries = lines.all[index];
      const standing = lineStanding(sheets?.[index], faultsOf(index), (fault) => isMissingIn(fault, typed));
      if (entries) headOf(entries).say(lineTitle(index + 1, typed), standing.said, standing.faulty);
    });
  }

  /** There are other lines: what was wrong with them is to be found out anew. */
  function changed(): void {
    faults = [];
    render();
    on.changed();
  }

  function openLine(line: number): void {
    const entries = lines.all[line];
    if (!entries || line === lines.open) return;
    const { root: head } = headOf(entries);
    const stay = steady(head);
    lines.go(line);
    render();
    on.opened();
    stay();
    head.focus({ preventScroll: true });
  }

  function begin(entries: LineEntries): boolean {
    setText(full, lines.isFull ? texts.mostLines(MOST_LINES) : "");
    full.hidden = !lines.isFull;
    if (lines.isFull) return false;
    lines.insert(entries);
    changed();
    part.goTo("design");
    on.say(texts.added(lines.open + 1));
    return true;
  }

  function removeOpen(): void {
    const title = lineTitle(lines.open + 1, part.counted());
    const taken = lines.takeOut();
    if (!taken) return;
    changed();
    removal.offer(taken, texts.removed(title));
  }

  render();
  return {
    root,
    lines,
    fill(given) {
      lines.fill(given);
      faults = [];
      removal.clear();
      render();
    },
    take(given) {
      lines.fillOpen(given);
      render();
    },
    add(given) {
      // A line nobody has touched is the place for it.
      const untouched = lines.untouched();
      if (untouched === undefined && !begin(lines.blank())) return false;
      if (untouched !== undefined) lines.go(untouched);
      lines.fillOpen(given);
      render();
      return true;
    },
    keep() {
      const back = [lines.keep(), removal.keep()];
      return () => {
        for (const each of back) each();
        faults = [];
        render();
      };
    },
    adapt: part.adapt,
    judge(found, sheets) {
      faults = found;
      part.judge(faultsOf(lines.open));
      retitle(sheets);
    },
    leaveAll() {
      lines.leaveAll();
      part.judge(faultsOf(lines.open));
    },
    goTo(line, key) {
      openLine(line);
      part.goTo(key);
    },
  };
}

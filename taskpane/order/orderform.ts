import {
  type CostSheet,
  type Fault,
  LINE_KEYS,
  type LineKey,
  ORDER_KEYS,
  ORDER_LABELS,
  type Rates,
  ROW_KEYS,
  type TypedLine,
} from "../../src/index";
import { type Button, button } from "../controls/button";
import { element } from "../controls/element";
import { decimalMark } from "../wording/decimalmark";
import { countOf, lineTexts, orderTexts, type RowTaken, type RowTexts, saysSomething } from "../wording/rowtexts";
import { TEXTS } from "../wording/texts";
import { copyOf, fillEntries, misread } from "./entries";
import { fromTop, placeOf } from "./faultplace";
import { fieldPart } from "./fieldpart";
import { keysOf } from "./formplan";
import { freeLines } from "./freelines";
import { lineList } from "./linelist";
import { ORDER_GROUPS } from "./orderfields";
import type { Typed } from "./reckoning";

export interface OrderForm {
  readonly root: HTMLElement;
  readonly takeRow: Button;
  readonly addRow: Button;
  /** The line one works in, counted from 0. */
  readonly line: number;
  /** What counts, as the costing library reads it. */
  typed(): Typed;
  /** Faults of what can be read in two ways here. */
  misread(): readonly Fault[];
  /** Puts an order in place of all that stands there, as if a person had typed it and gone on. */
  fill(order: Typed): void;
  /** Puts texts into the open line, beside what stands there. */
  fillLine(texts: Partial<TypedLine>): void;
  /** Goes to a field of a line, counted from 0, or of the open one. */
  goTo(key: LineKey, line?: number): void;
  /** Puts a row into the order, or into its open line where there are several. */
  take(row: RowTexts): RowTaken;
  /** Puts a row into a line of its own. */
  add(row: RowTexts): RowTaken;
  /** What gives back all that stands here now, half typed or not. */
  keep(): () => void;
  /** Shows the currency and what an empty field takes from Rates. */
  adapt(rates: Rates): void;
  /** Keeps the faults and shows those of fields that were left; and what each line comes to. */
  judge(faults: readonly Fault[], sheets?: readonly CostSheet[]): void;
  /** Shows every fault and goes to the first. */
  demand(faults: readonly Fault[]): void;
}

export interface OrderFormEvents {
  /** Something was typed, or there are other lines. */
  readonly changed: () => void;
  /** Another line was opened. */
  readonly opened: () => void;
  /** A field was left with a fault in it. */
  readonly leftFaulty: (sentence: string) => void;
  readonly say: (sentence: string) => void;
  readonly takeRow: () => void;
  readonly addRow: () => void;
}

/** The order form. It never drops what was typed. */
export function orderForm(on: OrderFormEvents): OrderForm {
  const takeRow = button(TEXTS.form.takeRow, "outline", on.takeRow, "small");
  const addRow = button(TEXTS.form.addRow, "outline", on.addRow, "small");
  const order = fieldPart(ORDER_GROUPS, ORDER_LABELS, "order", on);
  const lines = lineList(on, addRow.root);
  const extras = freeLines(on);
  const [who, ...terms] = order.groups;
  const root = element(
    "form",
    { class: "order", novalidate: true, "aria-labelledby": "order-title" },
    element("div", { class: "formhead" }, element("h2", { id: "order-title" }, TEXTS.form.title), takeRow.root),
    element("p", { class: "help" }, TEXTS.form.intro(`24${decimalMark()}5`)),
    who,
    lines.root,
    extras.root,
    ...terms,
  );
  root.addEventListener("submit", (event) => event.preventDefault());
  root.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" || event.isComposing || event.ctrlKey || event.metaKey) return;
    if (!(event.target instanceof HTMLInputElement)) return;
    event.preventDefault();
    next(root, event.target)?.focus();
  });

  const judge = (faults: readonly Fault[], sheets?: readonly CostSheet[]) => {
    order.judge(faults.filter(({ line, extra }) => line === undefined && extra === undefined));
    lines.judge(faults, sheets);
    extras.judge(faults);
  };
  /** Into the order's own part, where nothing stands yet. */
  const fillBlanks = (row: RowTexts): RowTaken => {
    const entries = copyOf(order.entries);
    const before = order.counted();
    const blanks = ORDER_KEYS.filter((key) => before[key].trim() === "" && saysSomething(row, key));
    fillEntries(ORDER_GROUPS, entries, Object.fromEntries(blanks.map((key) => [key, row[key]])));
    order.hold(entries);
    const customer = (row.customer ?? "").trim();
    return {
      fields: countOf(row, LINE_KEYS) + blanks.length,
      otherCustomer: customer === "" || customer === entries.texts.customer.trim() ? undefined : customer,
    };
  };

  return {
    root,
    takeRow,
    addRow,
    get line() {
      return lines.lines.open;
    },
    typed: () => ({
      order: order.counted(),
      lines: lines.lines.typed(),
      extras: extras.typed(),
    }),
    misread: () => [
      ...misread(ORDER_GROUPS, ORDER_LABELS, order.entries),
      ...lines.lines.misread(),
      ...extras.misread(),
    ],
    fill(typed) {
      const entries = copyOf(order.entries);
      fillEntries(ORDER_GROUPS, entries, typed.order);
      order.hold(entries);
      lines.fill(typed.lines);
      extras.fill(typed.extras);
    },
    fillLine: (texts) => lines.take(texts),
    goTo: (key, line = lines.lines.open) => lines.goTo(line, key),
    take(row) {
      lines.take(lineTexts(row, true));
      if (lines.lines.all.length > 1) return fillBlanks(row);
      const entries = copyOf(order.entries);
      fillEntries(ORDER_GROUPS, entries, orderTexts(row));
      order.hold(entries);
      // What stood beside an order before is none of this one's.
      extras.setAside();
      return { fields: countOf(row, ROW_KEYS), otherCustomer: undefined };
    },
    add(row) {
      if (countOf(row, LINE_KEYS) === 0 || !lines.add(lineTexts(row, false))) {
        return { fields: 0, otherCustomer: undefined };
      }
      return fillBlanks(row);
    },
    keep() {
      const kept = copyOf(order.entries);
      const back = [lines.keep(), extras.keep()];
      return () => {
        order.hold(kept);
        for (const each of back) each();
      };
    },
    adapt(rates) {
      for (const part of [order, lines, extras]) part.adapt(rates);
    },
    judge,
    demand(faults) {
      for (const key of keysOf(ORDER_GROUPS)) order.entries.left.add(key);
      lines.leaveAll();
      extras.leaveAll();
      judge(faults);
      const [first] = fromTop(faults);
      const place = first && placeOf(first);
      if (place?.part === "order") order.goTo(place.key);
      if (place?.part === "line") lines.goTo(place.line, place.key);
      if (place?.part === "extra") extras.goTo(place.extra, place.key);
    },
  };
}

/** The next field that is not folded away. */
function next(root: HTMLElement, control: HTMLElement): HTMLElement | undefined {
  const controls = [...root.querySelectorAll<HTMLElement>("input, select")].filter(
    (each) => each === control || (each.closest("details:not([open])") === null && each.getClientRects().length > 0),
  );
  return controls[controls.indexOf(control) + 1];
}

import {
  type CostSheet,
  type Fault,
  LINE_KEYS,
  type LineKey,
  ORDER_KEYS,
  ORDER_LABELS,
  type OrderKey,
  type Rates,
} from "../src/index";
import { type Button, button } from "./button";
import { decimalMark } from "./decimalmark";
import { element } from "./element";
import { copyOf, countedTexts, fillEntries, misread } from "./entries";
import { fromTop, placeOf } from "./faultplace";
import { fieldPart } from "./fieldpart";
import { keysOf } from "./formplan";
import { freeLines } from "./freelines";
import { lineList } from "./linelist";
import { ORDER_GROUPS } from "./orderfields";
import type { Typed } from "./reckoning";
import { TEXTS } from "./texts";

/** A row of a sheet: what it says of the order and of one line; keys that it has no column for are not there. */
export type RowTexts = Readonly<Partial<Record<OrderKey | LineKey, string>>>;

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

export interface RowTaken {
  /** How many fields got a text. */
  readonly fields: number;
  /** The row's customer where the order has another one. */
  readonly otherCustomer: string | undefined;
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

  const holdOrder = (entries = copyOf(order.entries)) => order.hold(entries);
  const judge = (faults: readonly Fault[], sheets?: readonly CostSheet[]) => {
    order.judge(faults.filter(({ line, extra }) => line === undefined && extra === undefined));
    lines.judge(faults, sheets);
    extras.judge(faults);
  };
  /** Into the order's own part, where nothing stands yet. */
  const fillBlanks = (row: RowTexts): number => {
    const entries = copyOf(order.entries);
    const before = countedTexts(ORDER_GROUPS, entries);
    const blanks = ORDER_KEYS.filter((key) => before[key].trim() === "" && said(row, key));
    fillEntries(ORDER_GROUPS, entries, Object.fromEntries(blanks.map((key) => [key, row[key]])));
    holdOrder(entries);
    return blanks.length;
  };
  const otherCustomer = ({ customer = "" }: RowTexts) => {
    const kept = order.entries.texts.customer.trim();
    return customer.trim() !== "" && customer.trim() !== kept ? customer.trim() : undefined;
  };

  return {
    root,
    takeRow,
    addRow,
    get line() {
      return lines.open;
    },
    typed: () => ({
      order: countedTexts(ORDER_GROUPS, order.entries),
      lines: lines.typed(),
      extras: extras.typed(),
    }),
    misread: () => [...misread(ORDER_GROUPS, ORDER_LABELS, order.entries), ...lines.misread(), ...extras.misread()],
    fill(typed) {
      const entries = copyOf(order.entries);
      fillEntries(ORDER_GROUPS, entries, typed.order);
      holdOrder(entries);
      lines.fill(typed.lines);
      extras.fill(typed.extras);
    },
    take(row) {
      const ofLine = onlyLine(row);
      if (lines.count > 1) {
        lines.take({ ...BLANK_LINE, ...ofLine });
        const fields = countOf(ofLine) + fillBlanks(row);
        return { fields, otherCustomer: otherCustomer(row) };
      }
      const entries = copyOf(order.entries);
      fillEntries(ORDER_GROUPS, entries, { ...BLANK_ORDER, ...onlyOrder(row) });
      holdOrder(entries);
      lines.take({ ...BLANK_LINE, ...ofLine });
      return { fields: countOf(row), otherCustomer: undefined };
    },
    add(row) {
      const ofLine = onlyLine(row);
      const added = countOf(ofLine) > 0 && lines.add(ofLine);
      const fields = added ? countOf(ofLine) + fillBlanks(row) : 0;
      return { fields, otherCustomer: added ? otherCustomer(row) : undefined };
    },
    keep() {
      const kept = copyOf(order.entries);
      const back = [lines.keep(), extras.keep()];
      return () => {
        holdOrder(kept);
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

/** What a row that has no column for it keeps from the form: the words every order has. Of anything else it has none. */
const KEPT: readonly string[] = [
  "customer",
  "design",
  "mark",
  "colour",
  "quantity",
  "length",
  "lengthUnit",
  "linksPer",
  "linksPerUnit",
  "linkWeight",
];
const blanks = <K extends string>(keys: readonly K[]) =>
  Object.fromEntries(keys.filter((key) => !KEPT.includes(key)).map((key) => [key, ""])) as Partial<Record<K, string>>;
const BLANK_ORDER = blanks(ORDER_KEYS);
const BLANK_LINE = blanks(LINE_KEYS);

function onlyLine(row: RowTexts): Partial<Record<LineKey, string>> {
  return Object.fromEntries(LINE_KEYS.flatMap((key) => (row[key] === undefined ? [] : [[key, row[key]]])));
}

function onlyOrder(row: RowTexts): Partial<Record<OrderKey, string>> {
  return Object.fromEntries(ORDER_KEYS.flatMap((key) => (row[key] === undefined ? [] : [[key, row[key]]])));
}

function said(row: RowTexts, key: OrderKey | LineKey): boolean {
  return (row[key] ?? "").trim() !== "";
}

function countOf(row: RowTexts): number {
  return Object.values(row).filter((text) => text.trim() !== "").length;
}

/** The next field that is not folded away. */
function next(root: HTMLElement, control: HTMLElement): HTMLElement | undefined {
  const controls = [...root.querySelectorAll<HTMLElement>("input, select")].filter(
    (each) => each === control || (each.closest("details:not([open])") === null && each.getClientRects().length > 0),
  );
  return controls[controls.indexOf(control) + 1];
}

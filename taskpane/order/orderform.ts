import {
  type Fault,
  isCashReported,
  LINE_KEYS,
  type LineKey,
  ORDER_KEYS,
  ORDER_LABELS,
  type OrderKey,
  type Rates,
  ROW_KEYS,
  type TypedLine,
} from "../../src/index";
import { type Button, button } from "../controls/button";
import { element } from "../controls/element";
import { allGoneFrom } from "../controls/entries";
import { type Form, formElement, plannedForm } from "../controls/form";
import { cautionsAt } from "../wording/cautions";
import { decimalMark } from "../wording/decimalmark";
import { countOf, lineTexts, orderTexts, type RowTaken, type RowTexts, saysSomething } from "../wording/rowtexts";
import { TEXTS } from "../wording/texts";
import { fromTop, placeOf } from "./faultplace";
import { type FreeLines, freeLines } from "./freelines";
import { type LineList, lineList } from "./linelist";
import { ORDER_GROUPS } from "./orderfields";
import { misreadLines, typedLines } from "./orderlines";
import type { Costed, Typed } from "./reckoning";
import { settlingCaution } from "./settlingcaution";

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
  /** Types what answers a question about these lines, counted from 0. */
  answer(texts: Partial<TypedLine>, lines: readonly number[]): void;
  /** Goes to a field of a line, counted from 0, or of the open one. */
  goTo(key: LineKey, line?: number): void;
  /** Goes to a field that an order says once. */
  goToTerm(key: OrderKey): void;
  /** Puts a row into the order, or into its open line where there are several. */
  take(row: RowTexts): RowTaken;
  /** Puts a row into a line of its own. */
  add(row: RowTexts): RowTaken;
  /** What gives back all that stands here now, half typed or not. */
  snapshot(): () => void;
  /** Shows the currency and what an empty field takes from Rates. */
  adapt(rates: Rates): void;
  /** Keeps the faults and shows those of fields that were left; and what each line comes to. */
  judge(faults: readonly Fault[], costed?: Costed): void;
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

/** The order's own fields, its lines and its free lines. */
interface OrderParts {
  readonly order: Form<OrderKey>;
  readonly lines: LineList;
  readonly extras: FreeLines;
  /** Under the terms, where so much may be paid in cash that it has to be reported. */
  readonly cash: HTMLElement;
}

/** The order form. It never drops what was typed. */
export function orderForm(on: OrderFormEvents): OrderForm {
  const takeRow = button(TEXTS.form.takeRow, "outline", on.takeRow, "small");
  const addRow = button(TEXTS.form.addRow, "outline", on.addRow, "small");
  const parts: OrderParts = {
    order: plannedForm({ name: "order", groups: ORDER_GROUPS, labels: ORDER_LABELS }, on),
    lines: lineList(on, addRow.root),
    extras: freeLines(on),
    cash: element("p", { class: "caution" }, ...cautionsAt("terms", ["cash"])),
  };
  const { order, lines, extras } = parts;
  return {
    root: orderElement(parts, takeRow.root),
    takeRow,
    addRow,
    get line() {
      return lines.lines.open;
    },
    typed: () => ({
      order: order.counted(),
      lines: typedLines(lines.groups, lines.lines),
      extras: extras.typed(),
    }),
    misread: () => [...order.misread(), ...misreadLines(lines.groups, lines.lines), ...extras.misread()],
    fill(typed) {
      order.fill(typed.order);
      lines.fill(typed.lines);
      extras.fill(typed.extras);
    },
    fillLine: (texts) => lines.take(texts),
    answer(texts, asked) {
      for (const line of asked) lines.take(texts, line);
    },
    goTo: (key, line = lines.lines.open) => lines.goTo(line, key),
    goToTerm: order.goTo,
    take(row) {
      lines.take(lineTexts(row, true));
      if (lines.lines.all.length > 1) return fillBlanks(order, row);
      order.fill(orderTexts(row));
      // What stood beside an order before is none of this one's.
      extras.setAside();
      return { fields: countOf(row, ROW_KEYS), otherCustomer: undefined };
    },
    add(row) {
      if (countOf(row, LINE_KEYS) === 0 || !lines.add(lineTexts(row, false))) {
        return { fields: 0, otherCustomer: undefined };
      }
      return fillBlanks(order, row);
    },
    snapshot() {
      const { entries } = order;
      const back = [lines.snapshot(), extras.snapshot()];
      return () => {
        order.hold(entries);
        for (const each of back) each();
      };
    },
    adapt(rates) {
      for (const part of [order, lines, extras]) part.adapt(rates);
    },
    judge(faults, costed) {
      judgeIn(parts, faults, costed);
      order.field("settled").setCaution(settlingCaution(order.counted().settled, costed));
    },
    demand: (faults) => demandIn(parts, faults),
  };
}

function orderElement({ order, lines, extras, cash }: OrderParts, takeRow: HTMLElement): HTMLElement {
  const [who, terms, ...others] = order.groups;
  const root = formElement(
    { class: "order", "aria-labelledby": "order-title" },
    (from) => next(root, from)?.focus(),
    element("div", { class: "formhead" }, element("h2", { id: "order-title" }, TEXTS.form.title), takeRow),
    element("p", { class: "help" }, TEXTS.form.intro(`24${decimalMark()}5`)),
    ...(who ? [who] : []),
    lines.root,
    extras.root,
    ...(terms ? [terms] : []),
    cash,
    ...others,
  );
  return root;
}

/** Puts a row's texts into the order's own part, where nothing stands yet. */
function fillBlanks(order: Form<OrderKey>, row: RowTexts): RowTaken {
  const before = order.counted();
  const blanks = ORDER_KEYS.filter((key) => before[key].trim() === "" && saysSomething(row, key));
  order.fill(Object.fromEntries(blanks.map((key) => [key, row[key]])));
  const customer = (row.customer ?? "").trim();
  return {
    fields: countOf(row, LINE_KEYS) + blanks.length,
    otherCustomer: customer === "" || customer === order.entries.texts.customer.trim() ? undefined : customer,
  };
}

function judgeIn({ order, lines, extras, cash }: OrderParts, faults: readonly Fault[], costed?: Costed): void {
  order.judge(faults.filter(({ line, extra }) => line === undefined && extra === undefined));
  lines.judge(faults, costed?.sheets);
  cash.hidden = !costed || !isCashReported([costed.quote.total]);
  extras.judge(faults);
}

function demandIn(parts: OrderParts, faults: readonly Fault[]): void {
  const { order, lines, extras } = parts;
  order.hold(allGoneFrom(ORDER_GROUPS, order.entries));
  lines.askAll();
  extras.askAll();
  judgeIn(parts, faults);
  const [first] = fromTop(faults);
  const place = first && placeOf(first);
  if (place?.part === "order") order.goTo(place.key);
  if (place?.part === "line") lines.goTo(place.line, place.key);
  if (place?.part === "extra") extras.goTo(place.extra, place.key);
}

/** The next field that is not folded away. */
function next(root: HTMLElement, control: HTMLElement): HTMLElement | undefined {
  const controls = [...root.querySelectorAll<HTMLElement>("input, select")].filter(
    (each) => each === control || (each.closest("details:not([open])") === null && each.getClientRects().length > 0),
  );
  return controls[controls.indexOf(control) + 1];
}

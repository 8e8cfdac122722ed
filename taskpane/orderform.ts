import { blankOrder, type Fault, LINE_KEYS, ORDER_KEYS, type Rates } from "../src/index";
import { type Button, button } from "./button";
import { element } from "./element";
import { type Field, field } from "./field";
import { FIELD_GROUPS, type FieldGroup, FORM_LABELS, type FormKey, MONEY_FIELDS } from "./orderfields";
import type { Typed } from "./reckoning";
import { TEXTS } from "./texts";

export interface OrderForm {
  readonly root: HTMLElement;
  readonly takeRow: Button;
  typed(): Typed;
  /** Puts texts in, as if a person had typed them and gone on. */
  fill(texts: Partial<Record<FormKey, string>>): void;
  /** Shows the currency and what an empty field takes from Rates. */
  adapt(rates: Rates): void;
  /** Keeps the faults and shows those of fields that were left. */
  judge(faults: readonly Fault[]): void;
  /** Shows every fault and goes to the first. */
  demand(faults: readonly Fault[]): void;
}

export interface OrderFormEvents {
  readonly changed: () => void;
  /** A field was left with a fault in it. */
  readonly leftFaulty: (sentence: string) => void;
  readonly takeRow: () => void;
}

/** The order form. It never drops what was typed. */
export function orderForm(on: OrderFormEvents): OrderForm {
  const fields = new Map(ORDER_FIELDS.map(({ key, plan }) => [key, field(plan)]));
  const of = (key: FormKey): Field => {
    const made = fields.get(key);
    if (!made) throw new Error(`${key} has no field`);
    return made;
  };
  const left = new Set<FormKey>();
  let faults: readonly Fault[] = [];
  const takeRow = button(TEXTS.form.takeRow, "outline", on.takeRow, "small");
  const root = element(
    "form",
    { class: "order", novalidate: true, "aria-labelledby": "order-title" },
    element("div", { class: "formhead" }, element("h2", { id: "order-title" }, TEXTS.form.title), takeRow.root),
    element("p", { class: "help" }, TEXTS.form.intro),
    ...FIELD_GROUPS.map((group) => groupElement(group, of)),
  );
  const sentenceFor = (key: FormKey) => faults.find((fault) => fault.field === key)?.sentence ?? "";
  const showFaults = () => {
    for (const key of FORM_KEYS) {
      // A choice is never half typed, and what is wrong with it may come from another field: no need to wait.
      const seen = left.has(key) || of(key).control instanceof HTMLSelectElement;
      of(key).setFault(seen ? sentenceFor(key) : "");
    }
  };
  const adaptUnits = () => {
    of("claspLength").setUnit(of("lengthUnit").control.value);
    of("colour").setCaution(of("colour").control.value === "white" ? TEXTS.cautions.nickel : "");
  };

  for (const key of FORM_KEYS) {
    of(key).control.addEventListener("blur", () => {
      // Going over to the sheet takes the focus from the pane too, but leaves no field behind.
      if (!document.hasFocus() || left.has(key)) return;
      left.add(key);
      showFaults();
      if (sentenceFor(key) !== "") on.leftFaulty(sentenceFor(key));
    });
  }
  root.addEventListener("input", () => {
    adaptUnits();
    on.changed();
  });
  root.addEventListener("submit", (event) => event.preventDefault());
  root.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" || event.isComposing || event.ctrlKey || event.metaKey) return;
    if (!(event.target instanceof HTMLInputElement)) return;
    event.preventDefault();
    next(event.target)?.focus();
  });
  const next = (control: HTMLElement) => {
    const controls: readonly HTMLElement[] = ORDER_FIELDS.map(({ key }) => of(key).control);
    return controls[controls.indexOf(control) + 1];
  };
  adaptUnits();

  return {
    root,
    takeRow,
    typed() {
      const blank = blankOrder();
      const texts = new Map(FORM_KEYS.map((key) => [key, of(key).control.value] as const));
      const filled = <K extends FormKey>(record: Readonly<Record<K, string>>, keys: readonly K[]) => ({
        ...record,
        ...Object.fromEntries(keys.flatMap((key) => (texts.has(key) ? [[key, texts.get(key)]] : []))),
      });
      return {
        order: filled(blank.order, ORDER_KEYS),
        lines: blank.lines.map((line) => filled(line, LINE_KEYS)),
        extras: [],
      };
    },
    fill(texts) {
      for (const key of FORM_KEYS) {
        const text = texts[key];
        if (text === undefined) continue;
        of(key).fill(text);
        // A field emptied by a fill is one that nobody has left yet.
        if (text.trim() === "") left.delete(key);
        else left.add(key);
      }
      adaptUnits();
    },
    adapt(rates) {
      for (const key of MONEY_FIELDS) of(key).setUnit(rates.currency);
      of("spot").setPlaceholder(rates.spot.amount.rounded(6).toFixed());
      of("settingFee").setPlaceholder(rates.settingFee.amount.rounded(6).toFixed());
    },
    judge(found) {
      faults = found;
      showFaults();
    },
    demand(found) {
      faults = found;
      for (const key of FORM_KEYS) left.add(key);
      showFaults();
      const first = ORDER_FIELDS.find(({ key }) => sentenceFor(key) !== "");
      if (first) of(first.key).control.focus();
    },
  };
}

/** The fields' words, for a sentence that lists them. */
export function labelsOf(faults: readonly Fault[]): readonly string[] {
  return FORM_KEYS.filter((key) => faults.some((fault) => fault.field === key)).map((key) => FORM_LABELS[key]);
}

/** The fields in the order in which the form shows them. */
const ORDER_FIELDS = FIELD_GROUPS.flatMap((group) => group.fields);
const FORM_KEYS = ORDER_FIELDS.map(({ key }) => key);

function groupElement(group: FieldGroup, of: (key: FormKey) => Field): HTMLElement {
  const children = group.fields.flatMap(({ key, width, cautions = [] }) => {
    of(key).root.classList.add(width);
    return [of(key).root, ...cautions.map((about) => of(about).caution)];
  });
  return element("fieldset", {}, element("legend", {}, group.title), element("div", { class: "fields" }, ...children));
}

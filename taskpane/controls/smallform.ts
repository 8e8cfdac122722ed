import type { Fault } from "../../src/index";
import { showList } from "../wording/display";
import { SCALE_TEXTS } from "../wording/scaletexts";
import { element, setText } from "./element";
import { type Field, type FieldPlan, field } from "./field";

export type FieldWidth = "third" | "half" | "whole";

/** A field of a small form, without its id. */
export interface SmallField {
  readonly plan: Omit<FieldPlan, "id">;
  readonly width: FieldWidth;
}

/** A form of a few fields: Enter submits it, faults show where a field was left. */
export interface SmallForm<K extends string> {
  readonly root: HTMLFormElement;
  readonly fields: Readonly<Record<K, Field>>;
  typed(): Record<K, string>;
  fill(texts: Readonly<Partial<Record<K, string>>>): void;
  /** Keeps the faults and shows those of fields that were left. */
  judge(faults: readonly Fault[]): void;
  /** Shows every fault and goes to the first. */
  demand(faults: readonly Fault[]): void;
  /** Forgets that fields were left: no fault shows until they are again. */
  calm(): void;
}

export interface SmallFormEvents {
  readonly changed: () => void;
  readonly submitted: () => void;
}

/** @param name begins the fields' ids, so that they are the page's own */
export function smallForm<K extends string>(
  name: string,
  label: string,
  plans: Readonly<Record<K, SmallField>>,
  on: SmallFormEvents,
): SmallForm<K> {
  const keys = Object.keys(plans) as K[];
  const fields = Object.fromEntries(
    keys.map((key) => [key, field({ ...plans[key].plan, id: `${name}-${key}` })]),
  ) as Record<K, Field>;
  const left = new Set<K>();
  let faults: readonly Fault[] = [];
  const sentenceFor = (key: K) => faults.find((fault) => fault.field === key)?.sentence ?? "";
  const showFaults = () => {
    for (const key of keys) {
      const seen = left.has(key) || fields[key].control instanceof HTMLSelectElement;
      fields[key].setFault(seen ? sentenceFor(key) : "");
    }
  };
  for (const key of keys) {
    fields[key].root.classList.add(plans[key].width);
    fields[key].control.addEventListener("blur", () => {
      // Going over to the sheet takes the focus from the pane too, and a field passed over empty is not wrong yet.
      if (!document.hasFocus() || fields[key].control.value.trim() === "") return;
      left.add(key);
      showFaults();
    });
  }
  const root = element(
    "form",
    { class: "fields", novalidate: true, "aria-label": label },
    ...keys.map((key) => fields[key].root),
  );
  root.addEventListener("input", on.changed);
  root.addEventListener("submit", (event) => event.preventDefault());
  root.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" || event.isComposing || event.ctrlKey || event.metaKey) return;
    if (!(event.target instanceof HTMLInputElement)) return;
    event.preventDefault();
    on.submitted();
  });
  return {
    root,
    fields,
    typed: () => Object.fromEntries(keys.map((key) => [key, fields[key].control.value])) as Record<K, string>,
    fill(texts) {
      for (const key of keys) {
        const text = texts[key];
        if (text !== undefined) fields[key].fill(text);
      }
    },
    judge(found) {
      faults = found;
      showFaults();
    },
    demand(found) {
      faults = found;
      for (const key of keys) left.add(key);
      showFaults();
      const first = keys.find((key) => sentenceFor(key) !== "");
      if (first) fields[first].control.focus();
    },
    calm() {
      left.clear();
      showFaults();
    },
  };
}

/**
 * What a part says: a live region that shows one sentence, fault or not. A fault of reading goes with the next reading
 * that succeeds, and leaves anything else that is said in its place.
 */
export function spokenNote() {
  let unread = "";
  const root = element("p", { class: "help", role: "status", "aria-live": "polite" });
  root.hidden = true;
  const show = (sentence: string, isFault: boolean) => {
    setText(root, sentence);
    root.hidden = sentence === "";
    root.classList.toggle("fault", isFault);
  };
  return {
    root,
    say: (sentence: string) => show(sentence, false),
    failed: (sentence: string) => show(sentence, true),
    /** @param sentence why the workbook could not be read; "" where it was */
    read(sentence: string) {
      if (sentence !== "") show(sentence, true);
      else if (unread !== "" && root.textContent === unread) show("", false);
      unread = sentence;
    },
  };
}

/** "Still to fill: …" for the faults of fields that are blank. */
export function stillToFill<K extends string>(
  faults: readonly Fault[],
  typed: Readonly<Record<K, string>>,
  labels: Readonly<Record<K, string>>,
): string {
  const blank = (Object.keys(labels) as K[]).filter(
    (key) => typed[key].trim() === "" && faults.some((fault) => fault.field === key),
  );
  return blank.length > 0 ? SCALE_TEXTS.toFill(showList(blank.map((key) => labels[key]))) : "";
}

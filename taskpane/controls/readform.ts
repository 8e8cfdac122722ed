import type { Fault, Parsed, Rates } from "../../src/index";
import { showList } from "../wording/display";
import { KIT_TEXTS } from "../wording/kittexts";
import { blankLabels } from "./entries";
import { type Form, type FormPlan, formElement, plannedForm } from "./form";

/** A form that one parser reads. */
export interface ReadFormPlan<K extends string, T> extends FormPlan<K> {
  /** What the form is for, to whoever listens. */
  readonly title: string;
  /** Undefined where nothing can be read yet, such as without rates. */
  readonly parse: (typed: Record<K, string>) => Parsed<T> | undefined;
}

export interface ReadForm<K extends string, T> extends Form<K> {
  readonly root: HTMLFormElement;
  /** What was typed comes to; undefined where it cannot be read, which is shown beside its fields. */
  read(): T | undefined;
  /** The same, asked for: every fault is shown, the first is gone to, and what is still to fill is told. */
  ask(): T | undefined;
}

export interface ReadFormEvents {
  readonly changed: () => void;
  /** Enter was pressed. */
  readonly submitted: () => void;
  /** "Still to fill: …"; "" where nothing is blank. */
  readonly lacking: (sentence: string) => void;
}

/** A small form on its own: judged as it is typed, asked for when Enter is pressed. */
export function readForm<K extends string, T>(plan: ReadFormPlan<K, T>, on: ReadFormEvents): ReadForm<K, T> {
  const form = plannedForm(plan, on);
  const take = (tell: (faults: readonly Fault[]) => void): T | undefined => {
    const parsed = plan.parse(form.counted());
    const misread = form.misread();
    tell([...misread, ...(!parsed || parsed.ok ? [] : parsed.faults)]);
    return parsed?.ok && misread.length === 0 ? parsed.value : undefined;
  };
  return {
    ...form,
    get entries() {
      return form.entries;
    },
    root: formElement({ class: "form", "aria-label": plan.title }, on.submitted, ...form.groups),
    read: () => take(form.judge),
    ask: () =>
      take((faults) => {
        if (faults.length === 0) return form.judge(faults);
        form.demand(faults);
        const blank = blankLabels(plan.groups, plan.labels, form.entries, faults);
        on.lacking(blank.length > 0 ? KIT_TEXTS.toFill(showList(blank)) : "");
      }),
  };
}

/** A parser that needs rates, and reads nothing while there are none. */
export function atRates<K extends string, T>(
  now: () => { readonly rates: Rates | undefined },
  parse: (typed: Record<K, string>, rates: Rates) => Parsed<T>,
): ReadFormPlan<K, T>["parse"] {
  return (typed) => {
    const { rates } = now();
    return rates && parse(typed, rates);
  };
}

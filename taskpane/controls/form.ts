import type { Fault, Rates } from "../../src/index";
import { withLocalMark } from "../wording/decimalmark";
import { afterPress } from "./afterpress";
import { element } from "./element";
import {
  allGoneFrom,
  countedTexts,
  type Entries,
  faultBeside,
  filledWith,
  freshEntries,
  goneFrom,
  isAsked,
  misread,
  readAt,
  typedIn,
} from "./entries";
import { type Field, field } from "./field";
import { groupFrame } from "./formgroup";
import { fieldsOf, type PlannedField, type PlannedGroup } from "./formplan";

/** A form as data: its fields in their groups, and how each is called. */
export interface FormPlan<K extends string> {
  /** Begins the ids of its fields, so that they are the page's own. */
  readonly name: string;
  readonly groups: readonly PlannedGroup<K>[];
  readonly labels: Readonly<Record<K, string>>;
}

/** The fields of a form, drawn from what stands in them. It never drops what was typed. */
export interface Form<K extends string> {
  /** One element a group, in the order of the plan. */
  readonly groups: readonly HTMLElement[];
  /** What stands in it now. */
  readonly entries: Entries<K>;
  readonly labels: Readonly<Record<K, string>>;
  field(key: K): Field;
  /** What counts of it, as the costing library reads it. */
  counted(): Record<K, string>;
  /** Faults of figures that two people would read as two numbers: nothing may be worked out with them. */
  misread(): readonly Fault[];
  /** Works on these from now on. */
  hold(entries: Entries<K>): void;
  /** Puts the library's texts in, as if a person had typed them and gone on. */
  fill(texts: Readonly<Partial<Record<K, string>>>): void;
  /** Shows the currency and what an empty field takes from Rates. */
  adapt(rates: Rates): void;
  /** Keeps the faults and shows those of fields that a person has gone on from. */
  judge(faults: readonly Fault[]): void;
  /** Shows every fault and goes to the first. */
  demand(faults: readonly Fault[]): void;
  /** Goes to a field, unfolding what hides it. */
  goTo(key: K): void;
}

export interface FormEvents {
  readonly changed: () => void;
  /** A field was left with a fault in it. */
  readonly leftFaulty?: (sentence: string) => void;
}

interface Place<K extends string> {
  readonly group: PlannedGroup<K>;
  readonly planned: PlannedField<K>;
  readonly shown: Field;
}

export function plannedForm<K extends string>(plan: FormPlan<K>, on: FormEvents): Form<K> {
  const { groups, labels } = plan;
  const places = placesOf(plan);
  const frames = groups.map((group) => ({ group, ...groupFrame(group, (key) => fieldAt(places, key)) }));
  let entries = freshEntries(groups);
  let faults: readonly Fault[] = [];
  let currency = "";

  const showFaults = () => {
    for (const { planned, shown } of places) shown.setFault(faultBeside(planned, entries, faults));
    for (const { group, say } of frames) {
      const seen = group.fields.filter((planned) => faultBeside(planned, entries, faults) !== "").length;
      say(group.holds?.(readAt(entries.texts)) ?? "", seen);
    }
  };
  const arrange = () => {
    const at = readAt(entries.texts);
    for (const { group, root } of frames) root.hidden = !group.isAsked(at);
    for (const { group, planned, shown } of places) {
      const asked = isAsked(group, planned, at);
      shown.root.hidden = !asked;
      shown.setUnit(planned.unit(at, currency));
      shown.setCaution(asked ? planned.caution(at) : "");
    }
  };
  for (const { planned, shown } of places) {
    shown.control.addEventListener("input", () => {
      entries = typedIn(entries, planned.key, shown.control.value);
      arrange();
      on.changed();
    });
    shown.control.addEventListener("blur", () => {
      // Going over to the sheet takes the focus from the pane too, but leaves no field behind.
      if (!document.hasFocus() || entries.blurred.has(planned.key)) return;
      entries = goneFrom(entries, planned.key);
      const sentence = faultBeside(planned, entries, faults);
      if (sentence !== "") on.leftFaulty?.(sentence);
      // What was pressed to leave the field would otherwise slip away under the pointer.
      afterPress(showFaults);
    });
  }
  const hold = (held: Entries<K>) => {
    entries = held;
    faults = [];
    for (const { planned, shown } of places) shown.fill(entries.texts[planned.key]);
    arrange();
    showFaults();
  };
  const judge = (found: readonly Fault[]) => {
    faults = found;
    showFaults();
  };
  hold(entries);
  return {
    groups: frames.map(({ root }) => root),
    labels,
    get entries() {
      return entries;
    },
    field: (key) => fieldAt(places, key),
    counted: () => countedTexts(groups, entries),
    misread: () => misread(groups, labels, entries),
    hold,
    fill: (texts) => hold(filledWith(groups, entries, texts)),
    adapt(rates) {
      currency = rates.currency;
      for (const place of places) offerUsual(place, rates);
      arrange();
    },
    judge,
    demand(found) {
      entries = allGoneFrom(groups, entries);
      judge(found);
      const first = places.find(({ planned }) => faultBeside(planned, entries, faults) !== "");
      if (first) goTo(first.shown);
    },
    goTo: (key) => goTo(fieldAt(places, key)),
  };
}

/**
 * The element around the fields: nothing is ever sent anywhere by it.
 * @param entered Enter was pressed in an input
 */
export function formElement(
  attributes: Parameters<typeof element>[1],
  entered: (from: HTMLInputElement) => void,
  ...children: readonly HTMLElement[]
): HTMLFormElement {
  const root = element("form", { novalidate: true, ...attributes }, ...children);
  root.addEventListener("submit", (event) => event.preventDefault());
  root.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" || event.isComposing || event.ctrlKey || event.metaKey) return;
    if (!(event.target instanceof HTMLInputElement)) return;
    event.preventDefault();
    entered(event.target);
  });
  return root;
}

function placesOf<K extends string>({ name, groups, labels }: FormPlan<K>): readonly Place<K>[] {
  return groups.flatMap((group) =>
    fieldsOf([group]).map((planned) => {
      const { key, plan, width } = planned;
      const shown = field({ ...plan, id: `${name}-${key}`, label: labels[key] });
      shown.root.classList.add(width);
      return { group, planned, shown };
    }),
  );
}

function fieldAt<K extends string>(places: readonly Place<K>[], key: K): Field {
  const place = places.find(({ planned }) => planned.key === key);
  if (!place) throw new Error(`${key} has no field`);
  return place.shown;
}

function offerUsual<K extends string>({ planned, shown }: Place<K>, rates: Rates): void {
  const usual = planned.usual?.(rates);
  if (usual === undefined) return;
  shown.setPlaceholder(typeof usual === "string" ? usual : withLocalMark(usual.rounded(6).toFixed(), "figure"));
}

function goTo({ root, control }: Field): void {
  const folded = root.closest("details");
  if (folded) folded.open = true;
  control.focus();
}

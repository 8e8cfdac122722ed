import type { Fault, Rates } from "../../src/index";
import { afterPress } from "../controls/afterpress";
import { element, setText } from "../controls/element";
import { type Field, field } from "../controls/field";
import { faultWithLocalMark, withLocalMark, withPoint } from "../wording/decimalmark";
import { TEXTS } from "../wording/texts";
import { countedTexts, type Entries, freshEntries, isAsked, readAt } from "./entries";
import type { PlannedField, PlannedGroup } from "./formplan";

/** One part of the order form: its fields in their groups, over what stands in them. */
export interface FieldPart<K extends string> {
  /** One element a group, in the order of the plan. */
  readonly groups: readonly HTMLElement[];
  /** What stands in it; typing changes it. */
  readonly entries: Entries<K>;
  /** What counts of it. */
  counted(): Record<K, string>;
  /** Works on these from now on. */
  hold(entries: Entries<K>): void;
  /** Shows the currency and what an empty field takes from Rates. */
  adapt(rates: Rates): void;
  /** Keeps the faults and shows those of fields that were left. */
  judge(faults: readonly Fault[]): void;
  /** Goes to a field, unfolding what hides it. */
  goTo(key: K): void;
}

export interface FieldPartEvents {
  readonly changed: () => void;
  /** A field was left with a fault in it. */
  readonly leftFaulty: (sentence: string) => void;
}

/** @param prefix of the ids of its elements */
export function fieldPart<K extends string>(
  groups: readonly PlannedGroup<K>[],
  labels: Readonly<Record<K, string>>,
  prefix: string,
  on: FieldPartEvents,
): FieldPart<K> {
  const places = groups.flatMap((group) =>
    group.fields.map((planned) => ({ group, planned, shown: fieldOf(planned, labels, prefix) })),
  );
  const shownOf = (key: K): Field => {
    const place = places.find(({ planned }) => planned.key === key);
    if (!place) throw new Error(`${key} has no field`);
    return place.shown;
  };
  const frames = groups.map((group) => groupFrame(group, shownOf));
  let entries = freshEntries(groups);
  let faults: readonly Fault[] = [];
  let currency = "";

  const sentenceOf = ({ key, reads }: PlannedField<K>): string => {
    const typed = entries.texts[key];
    const sentence = faults.find((fault) => fault.field === key)?.sentence ?? "";
    return faultWithLocalMark(sentence, withPoint(typed, reads), typed);
  };
  const isSeen = ({ key, plan }: PlannedField<K>) =>
    // A choice is never half typed, and what is wrong with it may come from another field: no need to wait.
    entries.left.has(key) || plan.choices !== undefined;
  const showFaults = () => {
    for (const { planned, shown } of places) shown.setFault(isSeen(planned) ? sentenceOf(planned) : "");
    groups.forEach((group, index) => {
      const seen = group.fields.filter((planned) => isSeen(planned) && sentenceOf(planned) !== "").length;
      frames[index]?.say(group.holds?.(readAt(entries.texts)) ?? "", seen);
    });
  };
  const arrange = () => {
    const at = readAt(entries.texts);
    groups.forEach((group, index) => {
      const frame = frames[index];
      if (frame) frame.root.hidden = !group.isAsked(at);
    });
    for (const { group, planned, shown } of places) {
      const asked = isAsked(group, planned, at);
      shown.root.hidden = !asked;
      shown.setUnit(planned.unit(at, currency));
      shown.setCaution(asked ? planned.caution(at) : "");
    }
  };

  for (const { planned, shown } of places) {
    const { key } = planned;
    shown.control.addEventListener("input", () => {
      entries.texts[key] = shown.control.value;
      arrange();
      on.changed();
    });
    shown.control.addEventListener("blur", () => {
      // Going over to the sheet takes the focus from the pane too, but leaves no field behind.
      if (!document.hasFocus() || entries.left.has(key)) return;
      entries.left.add(key);
      if (sentenceOf(planned) !== "") on.leftFaulty(sentenceOf(planned));
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
  hold(entries);
  return {
    groups: frames.map(({ root }) => root),
    get entries() {
      return entries;
    },
    counted: () => countedTexts(groups, entries),
    hold,
    adapt(rates) {
      currency = rates.currency;
      for (const { planned, shown } of places) {
        const usual = planned.usual?.(rates);
        if (typeof usual === "string") shown.setPlaceholder(usual);
        else if (usual) shown.setPlaceholder(withLocalMark(usual.rounded(6).toFixed(), "figure"));
      }
      arrange();
    },
    judge(found) {
      faults = found;
      showFaults();
    },
    goTo(key) {
      const { root, control } = shownOf(key);
      const folded = root.closest("details");
      if (folded) folded.open = true;
      control.focus();
    },
  };
}

function fieldOf<K extends string>(
  { key, plan, width }: PlannedField<K>,
  labels: Readonly<Record<K, string>>,
  prefix: string,
): Field {
  const made = field({ ...plan, id: `${prefix}-${key}`, label: labels[key] });
  made.root.classList.add(width);
  return made;
}

interface GroupFrame {
  readonly root: HTMLElement;
  /** What it holds, for when it is folded, and how many faults are shown in it. */
  say(holds: string, faults: number): void;
}

function groupFrame<K extends string>(group: PlannedGroup<K>, shownOf: (key: K) => Field): GroupFrame {
  const fields = element(
    "div",
    { class: "fields" },
    ...group.fields.flatMap(({ key, cautions }) => [
      shownOf(key).root,
      ...cautions.map((about) => shownOf(about).caution),
    ]),
  );
  if (!group.holds) {
    const legend = group.title === "" ? [] : [element("legend", {}, group.title)];
    return { root: element("fieldset", {}, ...legend, fields), say: () => undefined };
  }
  const what = element("span", { class: "holds" });
  return {
    root: element(
      "details",
      { class: "group" },
      element("summary", {}, element("span", {}, group.title), " ", what),
      element("fieldset", {}, element("legend", { class: "unseen" }, group.title), fields),
    ),
    say(holds, faults) {
      setText(what, faults > 0 ? TEXTS.form.holds.faults(faults) : holds);
      what.classList.toggle("fault", faults > 0);
    },
  };
}

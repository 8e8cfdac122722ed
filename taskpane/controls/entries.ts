import type { Fault } from "../../src/index";
import { faultWithLocalMark, twoReadings, withLocalMark, withPoint } from "../wording/decimalmark";
import { TEXTS } from "../wording/texts";
import { type At, fieldsOf, keysOf, type PlannedField, type PlannedGroup } from "./formplan";

/** What stands in the fields of a form, as typed, and which of them a person has gone on from. Every change makes new ones. */
export interface Entries<K extends string> {
  readonly texts: Readonly<Record<K, string>>;
  readonly blurred: ReadonlySet<K>;
}

/** Fields that nobody has touched. */
export function freshEntries<K extends string>(groups: readonly PlannedGroup<K>[]): Entries<K> {
  const starts = fieldsOf(groups).map((field) => [field.key, startOf(field)] as const);
  return { texts: Object.fromEntries(starts) as Record<K, string>, blurred: new Set() };
}

/** A person typed in a field, or chose a word. */
export function typedIn<K extends string>({ texts, blurred }: Entries<K>, key: K, text: string): Entries<K> {
  return { texts: { ...texts, [key]: text }, blurred };
}

/** A person went on from a field; one that is passed over empty is not wrong yet. */
export function goneFrom<K extends string>(entries: Entries<K>, key: K): Entries<K> {
  if (entries.texts[key].trim() === "") return entries;
  return { ...entries, blurred: new Set([...entries.blurred, key]) };
}

/** Everything is asked for now, also what is still empty. */
export function allGoneFrom<K extends string>(groups: readonly PlannedGroup<K>[], { texts }: Entries<K>): Entries<K> {
  return { texts, blurred: new Set(keysOf(groups)) };
}

/** With the library's texts, as if a person had typed them and gone on. A choice without a word goes back to its start. */
export function filledWith<K extends string>(
  groups: readonly PlannedGroup<K>[],
  { texts, blurred }: Entries<K>,
  given: Readonly<Partial<Record<K, string>>>,
): Entries<K> {
  const now: Record<K, string> = { ...texts };
  const gone = new Set(blurred);
  for (const field of fieldsOf(groups)) {
    const { key, plan, reads } = field;
    const text = given[key];
    if (text === undefined) continue;
    now[key] = plan.choices ? wordOf(field, text) : withLocalMark(text, reads);
    // A field emptied by a fill is one that nobody has gone on from yet.
    if (text.trim() === "") gone.delete(key);
    else gone.add(key);
  }
  return { texts: now, blurred: gone };
}

/** What counts, as the costing library reads it: nothing of a hidden field, and figures with a point. */
export function countedTexts<K extends string>(
  groups: readonly PlannedGroup<K>[],
  { texts }: Entries<K>,
): Record<K, string> {
  const at = readAt(texts);
  const counted = groups.flatMap((group) =>
    group.fields.map((field) => [field.key, isAsked(group, field, at) ? withPoint(texts[field.key], field.reads) : ""]),
  );
  return Object.fromEntries(counted) as Record<K, string>;
}

/** Faults of figures that two people would read as two numbers. */
export function misread<K extends string>(
  groups: readonly PlannedGroup<K>[],
  labels: Readonly<Record<K, string>>,
  { texts }: Entries<K>,
): readonly Fault[] {
  const at = readAt(texts);
  return groups.flatMap((group) =>
    group.fields.flatMap((field): readonly Fault[] => {
      const text = texts[field.key];
      const readings = isAsked(group, field, at) ? twoReadings(text, field.reads) : undefined;
      if (!readings) return [];
      const sentence = TEXTS.form.ambiguous(labels[field.key], text.trim(), readings.fraction, readings.whole);
      return [{ field: field.key, code: "notANumber", sentence }];
    }),
  );
}

/** What is shown beside a field of what is wrong with it, in the figures of the place; "" until the person has gone on. */
export function faultBeside<K extends string>(
  { key, plan, reads }: PlannedField<K>,
  { texts, blurred }: Entries<K>,
  faults: readonly Fault[],
): string {
  // A choice is never half typed, and what is wrong with it may come from another field: no need to wait.
  if (!blurred.has(key) && plan.choices === undefined) return "";
  const sentence = faults.find((fault) => fault.field === key)?.sentence ?? "";
  return faultWithLocalMark(sentence, withPoint(texts[key], reads), texts[key]);
}

/** The labels of fields that are blank and must not be. */
export function blankLabels<K extends string>(
  groups: readonly PlannedGroup<K>[],
  labels: Readonly<Record<K, string>>,
  { texts }: Entries<K>,
  faults: readonly Fault[],
): readonly string[] {
  return keysOf(groups)
    .filter((key) => texts[key].trim() === "" && faults.some((fault) => fault.field === key))
    .map((key) => labels[key]);
}

/** Whether nothing was typed or chosen that is not there from the start. */
export function isUntouched<K extends string>(groups: readonly PlannedGroup<K>[], { texts }: Entries<K>): boolean {
  const start = freshEntries(groups).texts;
  return keysOf(groups).every((key) => texts[key].trim() === start[key]);
}

export function isAsked<K extends string>(group: PlannedGroup<K>, field: PlannedField<K>, at: At<K>): boolean {
  return group.isAsked(at) && field.isAsked(at);
}

export function readAt<K extends string>(texts: Readonly<Record<K, string>>): At<K> {
  return (key) => texts[key];
}

function startOf<K extends string>({ plan }: PlannedField<K>): string {
  return plan.start ?? plan.choices?.[0]?.value ?? "";
}

/** A choice's own word whatever its case; a word that is no choice is kept, for its fault to name. */
function wordOf<K extends string>(field: PlannedField<K>, text: string): string {
  const wanted = text.trim().toLowerCase();
  if (wanted === "") return startOf(field);
  return field.plan.choices?.find(({ value }) => value.toLowerCase() === wanted)?.value ?? text;
}

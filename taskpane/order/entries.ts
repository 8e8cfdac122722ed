import type { Fault } from "../../src/index";
import { twoReadings, withLocalMark, withPoint } from "../wording/decimalmark";
import { TEXTS } from "../wording/texts";
import { type At, keysOf, type PlannedField, type PlannedGroup } from "./formplan";

/** What stands in the fields of one part of the order, as typed, and which of them a person has left. */
export interface Entries<K extends string> {
  readonly texts: Record<K, string>;
  readonly left: Set<K>;
}

/** Fields that nobody has touched. */
export function freshEntries<K extends string>(groups: readonly PlannedGroup<K>[]): Entries<K> {
  const starts = fieldsOf(groups).map((field) => [field.key, startOf(field)] as const);
  return { texts: Object.fromEntries(starts) as Record<K, string>, left: new Set() };
}

export function copyOf<K extends string>({ texts, left }: Entries<K>): Entries<K> {
  return { texts: { ...texts }, left: new Set(left) };
}

/** Puts the library's texts in, as if a person had typed them and gone on. A choice without a word goes back to its start. */
export function fillEntries<K extends string>(
  groups: readonly PlannedGroup<K>[],
  { texts, left }: Entries<K>,
  given: Readonly<Partial<Record<K, string>>>,
): void {
  for (const field of fieldsOf(groups)) {
    const { key, plan, reads } = field;
    const text = given[key];
    if (text === undefined) continue;
    texts[key] = plan.choices ? wordOf(field, text) : withLocalMark(text, reads);
    // A field emptied by a fill is one that nobody has left yet.
    if (text.trim() === "") left.delete(key);
    else left.add(key);
  }
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

/** Whether anything was typed or chosen that is not there from the start. */
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

function fieldsOf<K extends string>(groups: readonly PlannedGroup<K>[]): readonly PlannedField<K>[] {
  return groups.flatMap(({ fields }) => fields);
}

import type { Quotient, Rates } from "../../src/index";
import type { Choice, FieldPlan } from "../controls/field";
import type { Reads } from "../wording/decimalmark";
import { TEXTS } from "../wording/texts";

/** What stands in another field of the same part. */
export type At<K extends string> = (key: K) => string;

/** A field of one part of the order: the order's own part, a line, a free line. */
export interface PlannedField<K extends string> {
  readonly key: K;
  readonly plan: Omit<FieldPlan, "id" | "label">;
  /** In the two columns of a narrow pane, and the six of a wide one. */
  readonly width: Width;
  readonly reads: Reads;
  /** Whether another choice asks for it; one that is hidden does not count. */
  readonly isAsked: (at: At<K>) => boolean;
  readonly unit: (at: At<K>, currency: string) => string;
  readonly caution: (at: At<K>) => string;
  /** What Rates give where it is left empty. */
  readonly usual: ((rates: Rates) => Quotient | string | undefined) | undefined;
  /** Fields whose cautions stand after this one. */
  readonly cautions: readonly K[];
}

export interface PlannedGroup<K extends string> {
  readonly id: string;
  /** None for a group without a heading. */
  readonly title: string;
  readonly fields: readonly PlannedField<K>[];
  readonly isAsked: (at: At<K>) => boolean;
  /** What it holds, in a few words; undefined for a group that is never folded. */
  readonly holds: ((at: At<K>) => string) | undefined;
}

/** Of a wide pane; of a narrow one a third is a half too. */
export type Width = "third" | "half" | "whole";

interface More<K extends string> {
  readonly isAsked?: (at: At<K>) => boolean;
  readonly unit?: (at: At<K>, currency: string) => string;
  readonly caution?: (at: At<K>) => string;
  readonly usual?: (rates: Rates) => Quotient | string | undefined;
  readonly cautions?: readonly K[];
  readonly required?: boolean;
  readonly start?: string;
  readonly help?: string;
}

const ALWAYS = () => true;
const NOTHING = () => "";

/** The kinds of fields a part is made of. @param helps a quiet word under a field */
export function planOf<K extends string>(helps: Readonly<Partial<Record<K, string>>>) {
  const planned = (
    key: K,
    width: Width,
    reads: Reads,
    more: More<K>,
    plan: PlannedField<K>["plan"],
  ): PlannedField<K> => {
    const help = more.help ?? helps[key];
    return {
      key,
      width,
      reads,
      plan: {
        ...plan,
        ...(more.required ? { required: true } : {}),
        ...(more.start === undefined ? {} : { start: more.start }),
        ...(help === undefined ? {} : { help }),
      },
      isAsked: more.isAsked ?? ALWAYS,
      unit: more.unit ?? NOTHING,
      caution: more.caution ?? NOTHING,
      usual: more.usual,
      cautions: more.cautions ?? [],
    };
  };
  return {
    words: (key: K, width: Width, more: More<K> = {}) => planned(key, width, "words", more, {}),
    figure: (key: K, width: Width, more: More<K> = {}) => planned(key, width, "figure", more, { numeric: true }),
    /** A figure of the trade that is no plain number, such as 14K. */
    mark: (key: K, width: Width, more: More<K> = {}) => planned(key, width, "figure", more, {}),
    /** Words with figures among them. */
    figures: (key: K, width: Width, more: More<K> = {}) => planned(key, width, "figures", more, {}),
    money: (key: K, width: Width, more: More<K> = {}) =>
      planned(key, width, "figure", { unit: (_, currency) => currency, ...more }, { numeric: true }),
    choice: (key: K, width: Width, words: readonly Word[], more: More<K> = {}) =>
      planned(key, width, "words", more, { choices: words.map(choiceOf) }),
    group: (
      id: string,
      title: string,
      fields: readonly PlannedField<K>[],
      holds?: (at: At<K>) => string,
      isAsked: (at: At<K>) => boolean = ALWAYS,
    ): PlannedGroup<K> => ({ id, title, fields, holds, isAsked }),
  };
}

export type Word = keyof typeof TEXTS.form.choices;

/** How a word of an order is shown; a person's own stands as it is. */
export function shownWord(word: string): string {
  const shown: Readonly<Record<string, string>> = TEXTS.form.choices;
  return shown[word] ?? word;
}

function choiceOf(value: Word): Choice {
  return { value, shown: TEXTS.form.choices[value] };
}

/** The keys of a part in the order in which the form shows them. */
export function keysOf<K extends string>(groups: readonly PlannedGroup<K>[]): readonly K[] {
  return groups.flatMap(({ fields }) => fields.map(({ key }) => key));
}

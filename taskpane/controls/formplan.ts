import type { Quotient, Rates } from "../../src/index";
import type { Reads } from "../wording/decimalmark";
import type { Choice, FieldPlan } from "./field";

/** What stands in another field of the same form. */
export type At<K extends string> = (key: K) => string;

/** A field of a form: what is typed in it, how it is read, when it is asked for. */
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
  /** What Rates give where it is left empty: a figure, or words for it. */
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

/** What a field may say of itself beside its kind. */
export interface More<K extends string> {
  readonly isAsked?: (at: At<K>) => boolean;
  readonly unit?: string | ((at: At<K>, currency: string) => string);
  readonly caution?: (at: At<K>) => string;
  /** Folds that caution away behind these words. */
  readonly cautionFold?: string;
  readonly usual?: (rates: Rates) => Quotient | string | undefined;
  readonly cautions?: readonly K[];
  readonly required?: boolean;
  readonly start?: string;
  readonly help?: string;
}

const ALWAYS = () => true;
const NOTHING = () => "";

/** The kinds of fields a form is made of. @param helps a quiet word under a field */
export function formPlan<K extends string>(helps?: Readonly<Partial<Record<K, string>>>) {
  const planned = (
    key: K,
    width: Width,
    reads: Reads,
    more: More<K>,
    plan: PlannedField<K>["plan"],
  ): PlannedField<K> => {
    const help = more.help ?? helps?.[key];
    const { unit = NOTHING } = more;
    return {
      key,
      width,
      reads,
      plan: {
        ...plan,
        ...(more.required ? { required: true } : {}),
        ...(more.start === undefined ? {} : { start: more.start }),
        ...(help === undefined ? {} : { help }),
        ...(more.cautionFold === undefined ? {} : { cautionFold: more.cautionFold }),
      },
      isAsked: more.isAsked ?? ALWAYS,
      unit: typeof unit === "string" ? () => unit : unit,
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
    choice: (key: K, width: Width, choices: readonly Choice[], more: More<K> = {}) =>
      planned(key, width, "words", more, { choices }),
    group: (
      id: string,
      title: string,
      fields: readonly PlannedField<K>[],
      holds?: (at: At<K>) => string,
      isAsked: (at: At<K>) => boolean = ALWAYS,
    ): PlannedGroup<K> => ({ id, title, fields, holds, isAsked }),
  };
}

/** The choices of a field, each shown by its own words. */
export function choicesOf<V extends string>(
  values: readonly V[],
  shown: Readonly<Record<V, string>>,
): readonly Choice[] {
  return values.map((value) => ({ value, shown: shown[value] }));
}

/** The fields of a form in the order in which it shows them. */
export function fieldsOf<K extends string>(groups: readonly PlannedGroup<K>[]): readonly PlannedField<K>[] {
  return groups.flatMap(({ fields }) => fields);
}

export function keysOf<K extends string>(groups: readonly PlannedGroup<K>[]): readonly K[] {
  return fieldsOf(groups).map(({ key }) => key);
}

import type { NumberRule } from "../exact/numberrule";
import type { Quotient } from "../exact/quotient";
import { isBlank, readNumber } from "./number";
import { field } from "./parse";
import { readOptionalText, readText, readWord } from "./words";

/** The kinds of fields a form is made of, each named in its faults by the label of its key. */
export function fieldsNamed<K extends string>(labels: Readonly<Record<K, string>>) {
  return {
    number: (key: K, rule: NumberRule) => field((value) => readNumber(value, labels[key], rule)),
    /** Undefined where nothing is given. */
    optional: (key: K, rule: NumberRule) =>
      field((value) => (isBlank(value) ? undefined : readNumber(value, labels[key], rule))),
    numberOr: (key: K, rule: NumberRule, otherwise: Quotient) =>
      field((value) => (isBlank(value) ? otherwise : readNumber(value, labels[key], rule))),
    word: <W extends string>(key: K, words: readonly W[]) => field((value) => readWord(value, labels[key], words)),
    wordOr: <W extends string>(key: K, words: readonly W[], otherwise: W) =>
      field((value) => (isBlank(value) ? otherwise : readWord(value, labels[key], words))),
    optionalWord: <W extends string>(key: K, words: readonly W[]) =>
      field((value) => (isBlank(value) ? undefined : readWord(value, labels[key], words))),
    text: (key: K, right: string) => field((value) => readText(value, labels[key], right)),
    optionalText: (key: K) => field((value) => readOptionalText(value, labels[key])),
  };
}

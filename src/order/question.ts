import type { RateKey } from "../rates/raterows";
import type { LineKey, OrderKey } from "./fields";

/** Where a figure is typed. */
export type Place =
  | { readonly on: "line"; readonly field: LineKey }
  | { readonly on: "order"; readonly field: OrderKey }
  | { readonly on: "Rates"; readonly field: RateKey };

/** What a person may answer. It is only said here; who asks does it. */
export type Answer = {
  /** On the answer's button. */
  readonly words: string;
} & (
  | { /** It stands as it is typed, and is not asked again. */ readonly does: "keep" }
  | { /** Goes to where it is typed. */ readonly does: "go"; readonly to: Place }
  | {
      /** Types a text into a field of the lines asked about. */ readonly does: "put";
      readonly field: LineKey;
      readonly text: string;
    }
);

/** One thing that is only doubtful: it is asked before a quote is made, never refused. */
export interface Question {
  /** The field and the figures it is about: where these are equal it is the same question, and is asked once. */
  readonly key: string;
  /** What was found, and what is asked. */
  readonly sentence: string;
  readonly answers: readonly Answer[];
}

/** @param about the field, and every figure that makes it another question once it changes */
export function question(
  about: readonly [field: string, ...figures: readonly string[]],
  sentence: string,
  ...answers: readonly Answer[]
): Question {
  return Object.freeze({ key: JSON.stringify(about), sentence, answers: Object.freeze(answers) });
}

export const keep = (words: string): Answer => ({ words, does: "keep" });

export const goTo = (words: string, to: Place): Answer => ({ words, does: "go", to });

export const put = (words: string, field: LineKey, text: string): Answer => ({ words, does: "put", field, text });

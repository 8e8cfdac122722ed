import type { RateKey } from "../rates/raterows";
import type { Money } from "../units/money";
import type { LineKey, OrderKey } from "./fields";
import type { OrderLine } from "./orderline";

/** A line that may be doubtful. */
export interface AskedLine {
  readonly line: OrderLine;
  /** What it was read from: only this tells a blank from a 0. */
  readonly typed: Readonly<Partial<Record<LineKey, unknown>>>;
  readonly spot: Money;
}

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
  | {
      /** It stands as it is typed, and is not asked again. */
      readonly does: "keep";
    }
  | {
      /** Goes to where it is typed. */
      readonly does: "go";
      readonly to: Place;
    }
  | {
      /** Types these texts into the lines asked about. */
      readonly does: "put";
      readonly texts: Readonly<Partial<Record<LineKey, string>>>;
    }
);

/** One thing that is only doubtful: it is asked before a quote is made, never refused. */
export interface Question {
  /** The field and the figures it is about: where these are equal it is the same question, and is asked once. */
  readonly key: string;
  /** What was found, and what is asked. */
  readonly sentence: string;
  /** What corrects it first, what leaves it last. */
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

export const goToField = (words: string, field: LineKey): Answer => goTo(words, { on: "line", field });

export const put = (words: string, texts: Readonly<Partial<Record<LineKey, string>>>): Answer => ({
  words,
  does: "put",
  texts,
});

import { formPlan, type More, type Width } from "../controls/formplan";
import { TEXTS } from "../wording/texts";

export type Word = keyof typeof TEXTS.form.choices;

/** How a word of an order is shown; a person's own stands as it is. */
export function shownWord(word: string): string {
  const shown: Readonly<Record<string, string>> = TEXTS.form.choices;
  return shown[word] ?? word;
}

/** The kinds of fields of an order, whose choices are the order's own words. */
export function planOf<K extends string>(helps: Readonly<Partial<Record<K, string>>>) {
  const kinds = formPlan<K>(helps);
  return {
    ...kinds,
    choice: (key: K, width: Width, words: readonly Word[], more: More<K> = {}) =>
      kinds.choice(
        key,
        width,
        words.map((value) => ({ value, shown: TEXTS.form.choices[value] })),
        more,
      ),
  };
}

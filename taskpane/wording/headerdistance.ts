import { distance } from "fastest-levenshtein";

/** The share of a header's letters that may differ from a field's words. */
export const MOST_OTHER_LETTERS = 0.34;
/** The distance of a header that holds all words of a field and others too, such as "Chain length". */
const HOLDS_THE_WORDS = 0.3;

/** How far a header is from a field's words, both in plain words: the share of different letters, or of additional words. */
export function wordsApart(header: string, words: string): number {
  const [own, wanted] = [header.split(" "), words.split(" ")];
  // Word by word: "chain length" is not a misspelt "clasp length".
  const letters =
    own.length === wanted.length ? Math.max(...wanted.map((word, index) => otherLetters(word, own[index] ?? ""))) : 1;
  // Of several fields whose words are all there, the one with the most letters is meant.
  const holds = wanted.every((word) => own.includes(word)) ? HOLDS_THE_WORDS - words.length / 1000 : 1;
  return Math.min(letters, holds);
}

/** The share of letters by which two words differ. */
function otherLetters(one: string, other: string): number {
  return distance(one, other) / Math.max(one.length, other.length);
}

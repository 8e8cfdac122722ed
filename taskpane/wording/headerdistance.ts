import { distance } from "fastest-levenshtein";

/** Of so many letters of a header, this share may be other ones. */
export const MOST_OTHER_LETTERS = 0.34;
/** A header that holds all words of a field beside others, such as "Chain length", is this near to it. */
const HOLDS_THE_WORDS = 0.3;

/** How far a header is from a field's words, both in plain words: the share of other letters, or of words it has beside them. */
export function wordsApart(header: string, words: string): number {
  const [own, wanted] = [header.split(" "), words.split(" ")];
  // Word by word: "chain length" is not a misspelt "clasp length".
  const letters =
    own.length === wanted.length ? Math.max(...wanted.map((word, index) => otherLetters(word, own[index] ?? ""))) : 1;
  // Of fields whose words are all there the one with the most letters is meant.
  const holds = wanted.every((word) => own.includes(word)) ? HOLDS_THE_WORDS - words.length / 1000 : 1;
  return Math.min(letters, holds);
}

/** The share of letters by which two words differ. */
function otherLetters(one: string, other: string): number {
  return distance(one, other) / Math.max(one.length, other.length);
}

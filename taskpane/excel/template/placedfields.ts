import { BETWEEN_WORDS, type Fields, type FieldValue } from "./fields";

/** A field as it is written in a template: {{line.colour|yellow=Gelb|white=Weiß}}. */
export interface Placed {
  /** With its braces, as typed. */
  readonly braces: string;
  readonly name: string;
  /** The template's own words for ours, ours in small letters; undefined where they cannot be read. */
  readonly words: ReadonlyMap<string, string> | undefined;
}

const BRACES = /\{\{([^{}]*)\}\}/g;
const OPTIONAL = /\[\[((?:(?!\]\]).)*)\]\]/gs;

/** The fields of a text from left to right. */
export function fieldsIn(text: string): readonly Placed[] {
  return [...text.matchAll(BRACES)].map(([braces, inside = ""]) => {
    const [name = "", ...pairs] = inside.split("|").map((part) => part.trim());
    return { braces, name, words: wordsIn(pairs) };
  });
}

/** What a field is filled with, in the template's own words where it has them; undefined for a field that does not exist. */
export function fieldIn({ name, words }: Placed, fields: Fields): FieldValue | undefined {
  const value = fields.get(name);
  if (!words) return undefined;
  if (!value || words.size === 0 || typeof value.value === "number") return value;
  // The template may have a word for the whole value, or for each of its words, such as the colours of a line.
  const ownText =
    words.get(folded(value.text)) ??
    value.inWords?.((word) => words.get(folded(word))) ??
    value.text
      .split(BETWEEN_WORDS)
      .map((word) => words.get(folded(word)) ?? withinFigures(word, words))
      .join(BETWEEN_WORDS);
  return { value: ownText, text: ownText };
}

/** Replaces words between figures, such as those of "20 sapphire (2 mm round)", one by one. */
function withinFigures(text: string, words: ReadonlyMap<string, string>): string {
  if (!/\d/.test(text)) return text;
  return text.replace(/\p{L}+/gu, (word) => words.get(folded(word)) ?? word);
}

/** A text with its fields filled; a phrase in [[…]] goes when a field in it is empty, and a field that does not exist stays. */
export function fillText(text: string, fields: Fields): string {
  const kept = text.replace(OPTIONAL, (_, phrase: string) =>
    fieldsIn(phrase).every((placed) => fieldIn(placed, fields)?.text !== "") ? phrase : "",
  );
  return kept.replace(BRACES, (braces) => {
    const [placed] = fieldsIn(braces);
    return (placed && fieldIn(placed, fields)?.text) ?? braces;
  });
}

/** Reads pairs "word=text"; undefined where one has no "=" or no word, or a word comes twice. */
function wordsIn(pairs: readonly string[]): ReadonlyMap<string, string> | undefined {
  const words = new Map<string, string>();
  for (const pair of pairs) {
    const at = pair.indexOf("=");
    const word = folded(pair.slice(0, at));
    if (at < 1 || word === "" || words.has(word)) return undefined;
    words.set(word, pair.slice(at + 1).trim());
  }
  return words;
}

function folded(word: string): string {
  return word.normalize("NFC").trim().toLowerCase();
}

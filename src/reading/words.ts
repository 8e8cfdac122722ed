import { CostingError, found, UnreadableCell } from "../exact/errors";
import { isBlank } from "./number";

const LONGEST = 200;

/** What a cell says, without the spaces around it; "" for nothing. */
export function wordsOf(cell: unknown): string {
  return isBlank(cell) ? "" : String(cell).trim();
}

/** A person's own words, kept as typed but for the spaces around them. Errors: blank, tooLarge, unknownWord. */
export function readText(value: unknown, field: string, right: string): string {
  if (isBlank(value)) throw new CostingError("blank", field, `found nothing; give ${right}`);
  return readWords(value, field, right);
}

/** As readText, of words that may be left out. */
export function readOptionalText(value: unknown, field: string): string {
  return readWords(value, field, "words, or leave it empty");
}

function readWords(value: unknown, field: string, right: string): string {
  if (value instanceof UnreadableCell) throw new CostingError("unknownWord", field, `${found(value)}; give ${right}`);
  const text = wordsOf(value);
  if (text.length > LONGEST)
    throw new CostingError("tooLarge", field, `${found(text)} of ${text.length} characters; give at most ${LONGEST}`);
  return text;
}

/** Reads one of a few words, whatever its case. Errors: blank, unknownWord. */
export function readWord<W extends string>(value: unknown, field: string, words: readonly W[]): W {
  const right = `give one of ${words.map((word) => `"${word}"`).join(", ")}`;
  if (isBlank(value)) throw new CostingError("blank", field, `found nothing; ${right}`);
  const said = typeof value === "string" ? value.trim().toLowerCase() : undefined;
  const word = words.find((candidate) => candidate.toLowerCase() === said);
  if (word === undefined) throw new CostingError("unknownWord", field, `${found(value)}; ${right}`);
  return word;
}

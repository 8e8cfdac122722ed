import Papa from "papaparse";

/** Comma-separated values, or with another separator. */
export interface CsvText {
  readonly rows: readonly (readonly string[])[];
  readonly separator: string;
}

/** Semicolons first: a line "Bid;2650,5" has a decimal comma. */
const SEPARATORS = [";", "\t", ",", "|"];

/**
 * The rows of a CSV text: its separator is found out, unless its first line names it as Excel does ("sep=;"). Empty lines stay
 * rows, so that rows can be counted as the person does. Source of the format: RFC 4180; papaparse reads it.
 */
export function readCsv(text: string): CsvText {
  const [, named, body] = /^\uFEFF?sep=(.)\r?\n([\s\S]*)$/i.exec(text) ?? [];
  const source = body ?? text;
  const separator = named ?? separatorOf(source);
  return { rows: Papa.parse<string[]>(source, { delimiter: separator }).data, separator };
}

function separatorOf(text: string): string {
  // Empty lines have no separator, so they must not count.
  const { meta } = Papa.parse(text, { delimitersToGuess: SEPARATORS, skipEmptyLines: "greedy", preview: 10 });
  return meta.delimiter;
}

/** The text of a file: UTF-8, or UTF-16 where it begins with that mark, or else Windows-1252, which older programs write. */
export function decodeText(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder("utf-16be").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

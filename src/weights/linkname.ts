import { parseMark, showMark } from "../gold/mark";
import { isBlank } from "../reading/number";
import { wordsOf } from "../reading/words";

/** What identifies a link: the model, its width, and the alloy it is made in, as the cells of a table have them. */
export interface LinkName {
  readonly model: unknown;
  readonly width: unknown;
  readonly mark: unknown;
  readonly colour: unknown;
}

/** Whether two rows are about the same link. Case and extra spaces do not count, as in the formulas of the tables. */
export function sameLink(one: LinkName, other: LinkName): boolean {
  return (["model", "width", "mark", "colour"] as const).every((key) => sameText(one[key], other[key]));
}

/** Whether two cells hold the same text. Case and extra spaces do not count. */
export function sameText(one: unknown, other: unknown): boolean {
  return textKey(one) === textKey(other);
}

/**
 * A mark in its usual form where that is exactly the same share, so that "14 kt" and "14K" are one alloy; otherwise as typed.
 * Errors: blank unless optional, unknownMark, ambiguousMark.
 */
export function markAsWritten(value: unknown, field: string, optional = false): string {
  if (optional && isBlank(value)) return "";
  const mark = parseMark(value, field);
  const shown = showMark(mark);
  return parseMark(shown, field).share.equals(mark.share) ? shown : String(value).trim();
}

/** A cell's text, alike for cells that differ by case and extra spaces alone. */
export function textKey(cell: unknown): string {
  return wordsOf(cell).replace(/ +/g, " ").toLowerCase();
}

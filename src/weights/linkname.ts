import { parseMark, showMark } from "../gold/mark";
import { isBlank } from "../reading/number";
import { wordsOf } from "../reading/words";

/** What tells links apart: the model, its width, and the alloy it is made in, as the cells of a table have them. */
export interface LinkName {
  readonly model: unknown;
  readonly width: unknown;
  readonly mark: unknown;
  readonly colour: unknown;
}

/** Whether two rows speak of the same link: letters' case and spaces apart, as the formulas of the tables compare them. */
export function sameLink(one: LinkName, other: LinkName): boolean {
  return (["model", "width", "mark", "colour"] as const).every((key) => sameText(one[key], other[key]));
}

/** Whether two cells say the same, letters' case and spaces apart. */
export function sameText(one: unknown, other: unknown): boolean {
  return folded(one) === folded(other);
}

/**
 * A mark in one manner of writing where that says exactly the same, so that "14 kt" and "14K" are one alloy; else as typed.
 * Errors: blank unless optional, unknownMark, ambiguousMark.
 */
export function markAsWritten(value: unknown, field: string, optional = false): string {
  if (optional && isBlank(value)) return "";
  const mark = parseMark(value, field);
  const shown = showMark(mark);
  return parseMark(shown, field).share.equals(mark.share) ? shown : String(value).trim();
}

function folded(cell: unknown): string {
  return wordsOf(cell).replace(/ +/g, " ").toLowerCase();
}

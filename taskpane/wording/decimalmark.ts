import { locale } from "./language";

/**
 * How a field's text is read: as words; as one figure, perhaps with a sign such as % or K behind it; or as words with figures in
 * them.
 */
export type Reads = "words" | "figure" | "figures";

/** Kept by language: every field that is read asks for it, and Intl is slow to make a format. */
const MARKS = new Map<string, "," | ".">();

/** The decimal sign of the workbook's language. */
export function decimalMark(): "," | "." {
  const language = locale();
  const known = MARKS.get(language);
  if (known) return known;
  const parts = new Intl.NumberFormat(language).formatToParts(1.5);
  const mark = parts.find(({ type }) => type === "decimal")?.value === "," ? "," : ".";
  MARKS.set(language, mark);
  return mark;
}

/** What may be before a figure (a currency or its sign) and behind it (a share's sign, a currency, a unit of one or two words). */
const BEFORE = "(?:[a-z]{3}\\s*|[€£$¥₹₺]\\s*)?";
const BEHIND = "(?:%|‰|[€£$¥₹₺]|[a-z]+(?: [a-z]+)?)?";
const figureWith = (mark: string) => new RegExp(`^\\s*${BEFORE}[+-]?\\d*${mark}\\d+\\s*${BEHIND}\\s*$`, "i");
const WITH_COMMA = figureWith(",");
const WITH_POINT = figureWith("\\.");
const TWO_READINGS = new RegExp(`^\\s*(${BEFORE})([+-]?)([1-9]\\d{0,2})\\.(\\d{3})(\\s*${BEHIND})\\s*$`, "i");

/** A text as the costing library reads it, with a point; anything else stays as typed. */
export function withPoint(text: string, reads: Reads): string {
  if (decimalMark() === "." || reads === "words") return text;
  if (reads === "figures") return text.replace(/(\d),(?=\d)/g, "$1.");
  return WITH_COMMA.test(text) ? text.replace(",", ".") : text;
}

/** The library's text as it is written in the workbook's language. */
export function withLocalMark(text: string, reads: Reads): string {
  if (decimalMark() === "." || reads === "words") return text;
  if (reads === "figures") return text.replace(/(\d)\.(?=\d)/g, "$1,");
  return WITH_POINT.test(text) ? text.replace(".", ",") : text;
}

/**
 * What a figure may be where a point groups thousands: "1.500" is one and a half for one person and fifteen hundred for
 * another. Undefined for anything that can be read in one way only: "24.5", "0.125".
 */
export function twoReadings(
  text: string,
  reads: Reads,
): { readonly fraction: string; readonly whole: string } | undefined {
  if (decimalMark() === "." || reads !== "figure") return undefined;
  const [, before, sign, whole, thousandths, behind] = TWO_READINGS.exec(text) ?? [];
  if (whole === undefined || thousandths === undefined) return undefined;
  const fraction = thousandths.replace(/0+$/, "");
  const around = (figure: string) => `${before}${sign}${figure}${behind}`;
  return {
    fraction: around(`${whole}${fraction === "" ? "" : `,${fraction}`}`),
    whole: around(`${whole}${thousandths}`),
  };
}

/** A fault's sentence with figures in the workbook's language, and with what was found as it was typed. */
export function faultWithLocalMark(sentence: string, read: string, typed: string): string {
  if (decimalMark() === ".") return sentence;
  return sentence
    .split(/("[^"]*")/)
    .map((part) =>
      part === `"${read.trim()}"` || part === `"${read}"` ? `"${typed}"` : part.replace(/(\d)\.(?=\d)/g, "$1,"),
    )
    .join("");
}

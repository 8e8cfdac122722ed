import { CellValueType, type ICellData, numfmt } from "@univerjs/core";
import { invalid } from "./failure";

/** What is to be written into a cell; `format` only where Excel sets a format on its own. */
export interface Entry {
  readonly cell: ICellData;
  readonly format?: string;
}

/** Excel's errors by their names. A text that is one of them becomes that error. */
export const ERRORS: readonly string[] = [
  "#VALUE!",
  "#N/A",
  "#NUM!",
  "#DIV/0!",
  "#REF!",
  "#NAME?",
  "#NULL!",
  "#SPILL!",
  "#CALC!",
  "#BUSY!",
  "#GETTING_DATA",
  "#CYCLE!",
  "#ERROR!",
];

const BLANK: ICellData = { v: null, f: null, si: null, p: null };

/**
 * How Excel takes one element of range.values or range.formulas: null leaves the cell alone, "" empties it, an
 * apostrophe keeps a text as it is, "=" begins a formula, and a text that reads as a number becomes that number,
 * unless the cell has the text format.
 */
export function enter(value: unknown, format: string): Entry | undefined {
  if (value === null || value === undefined) return undefined;
  if (value === "") return { cell: BLANK };
  if (typeof value === "boolean") return { cell: { ...BLANK, v: value ? 1 : 0, t: CellValueType.BOOLEAN } };
  if (typeof value === "number") {
    if (!Number.isFinite(value)) throw invalid();
    return { cell: { ...BLANK, v: value, t: CellValueType.NUMBER } };
  }
  if (typeof value !== "string") throw invalid();
  if (value.startsWith("'")) return { cell: { ...BLANK, v: value.slice(1), t: CellValueType.FORCE_STRING } };
  if (isTextFormat(format)) return { cell: { ...BLANK, v: value, t: CellValueType.STRING } };
  if (value.startsWith("=") && value.length > 1) return { cell: { ...BLANK, f: value } };
  return read(value, format);
}

function read(text: string, format: string): Entry {
  const upper = text.toUpperCase();
  if (upper === "TRUE" || upper === "FALSE")
    return { cell: { ...BLANK, v: upper === "TRUE" ? 1 : 0, t: CellValueType.BOOLEAN } };
  const parsed = numfmt.parseValue(text);
  if (parsed && typeof parsed.v === "number") {
    const cell = { ...BLANK, v: parsed.v, t: CellValueType.NUMBER };
    return parsed.z && isGeneral(format) ? { cell, format: parsed.z } : { cell };
  }
  return { cell: { ...BLANK, v: text, t: CellValueType.STRING } };
}

export function isTextFormat(format: string): boolean {
  return format === "@" || format === "@@@";
}

export function isGeneral(format: string): boolean {
  return format === "" || format === "General";
}

/** How a value looks under a number format; Excel's words for TRUE and FALSE. */
export function display(value: string | number | boolean, format: string): string {
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (value === "") return "";
  if (typeof value === "string") return isGeneral(format) || isTextFormat(format) ? value : formatted(value, format);
  return formatted(value, isGeneral(format) ? "General" : format);
}

function formatted(value: string | number, format: string): string {
  try {
    return String(numfmt.format(format, value, { throws: true }));
  } catch {
    return String(value);
  }
}

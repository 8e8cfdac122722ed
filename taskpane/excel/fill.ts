import type { Fields, FieldValue } from "./fields";
import { asText } from "./paper";

/** One cell to write on a copy of the template. */
export interface Write {
  readonly row: number;
  readonly column: number;
  readonly content: string | number;
  readonly format?: string;
}

/** What is to be done to a copy of the template: rows added under the repeated ones, cells written, rows hidden. */
export interface FillPlan {
  /** The rows that repeat per line; undefined where the template has none. */
  readonly repeated: { readonly row: number; readonly height: number; readonly times: number } | undefined;
  readonly writes: readonly Write[];
  readonly hidden: readonly number[];
  /** Fields nobody knows, left in sight, as "{{color}} in B7". */
  readonly unknown: readonly string[];
  /** The template computes something; the copy must end with values only. */
  readonly hasFormulas: boolean;
}

/** Rows of cells. */
export type Block = readonly (readonly unknown[])[];

const FIELD = /\{\{\s*([^{}]*?)\s*\}\}/g;
const OPTIONAL = /\[\[((?:(?!\]\]).)*)\]\]/g;

/**
 * Plans how a template is filled. Pure: it reads the template's cells and says what to write.
 * @param template the template's cells from A1, formulas included
 * @param formats number formats of those cells; a format of the user's own is kept
 * @param quote fields that stand once
 * @param lines fields of each line, for the rows with "line." fields
 */
export function planFill(template: Block, formats: Block, quote: Fields, lines: readonly Fields[]): FillPlan {
  const first = template.findIndex(hasLineField);
  const last = template.findLastIndex(hasLineField);
  const height = first < 0 ? 0 : last - first + 1;
  const added = height * Math.max(0, lines.length - 1);
  const rows = template.flatMap((_, row) => {
    if (first < 0 || row < first || row > last)
      return [{ from: row, row: row > last && first >= 0 ? row + added : row, fields: quote }];
    return lines.map((line, index) => ({ from: row, row: row + index * height, fields: new Map([...quote, ...line]) }));
  });
  const filled = rows.map(({ from, row, fields }) => ({
    row,
    ...fillRow(template[from] ?? [], formats[from] ?? [], row, fields),
  }));
  return {
    repeated: first < 0 ? undefined : { row: first, height, times: lines.length },
    writes: filled.flatMap(({ writes }) => writes),
    hidden: filled.filter(({ emptied }) => emptied).map(({ row }) => row),
    unknown: filled.flatMap(({ unknown }) => unknown),
    hasFormulas: template.some((cells) => cells.some((cell) => typeof cell === "string" && cell.startsWith("="))),
  };
}

function hasLineField(cells: readonly unknown[]): boolean {
  return cells.some((cell) => typeof cell === "string" && /\{\{\s*line\./.test(cell));
}

function fillRow(
  cells: readonly unknown[],
  formats: readonly unknown[],
  row: number,
  fields: Fields,
): { writes: Write[]; unknown: string[]; emptied: boolean } {
  const unknown: string[] = [];
  const writes = cells.flatMap((cell, column): Write[] => {
    if (typeof cell !== "string" || !(cell.match(FIELD) || cell.match(OPTIONAL))) return [];
    const names = [...cell.matchAll(FIELD)].map((match) => match[1] ?? "");
    unknown.push(
      ...names.filter((name) => !fields.has(name)).map((name) => `{{${name}}} in ${addressOf(row, column)}`),
    );
    const { content, format } = fillCell(cell, fields);
    return [format && isOpen(formats[column]) ? { row, column, content, format } : { row, column, content }];
  });
  const named = cells.flatMap((cell) =>
    typeof cell === "string" ? [...cell.matchAll(FIELD)].map((match) => match[1] ?? "") : [],
  );
  return { writes, unknown, emptied: named.length > 0 && named.every((name) => fields.get(name)?.text === "") };
}

function fillCell(cell: string, fields: Fields): { content: string | number; format?: string } {
  const alone = /^\s*\{\{\s*([^{}]*?)\s*\}\}\s*$/.exec(cell)?.[1];
  const value = alone === undefined ? undefined : fields.get(alone);
  if (value) return contentOf(value);
  const kept = cell.replace(OPTIONAL, (_, phrase: string) => (isComplete(phrase, fields) ? phrase : ""));
  return { content: asText(kept.replace(FIELD, (braces, name: string) => fields.get(name)?.text ?? braces)) };
}

function contentOf({ value, format }: FieldValue): { content: string | number; format?: string } {
  if (typeof value === "string") return { content: asText(value) };
  return format ? { content: value, format } : { content: value };
}

/** Whether every field of an optional phrase has something to say; one nobody knows stays in sight. */
function isComplete(phrase: string, fields: Fields): boolean {
  return [...phrase.matchAll(FIELD)].every((match) => fields.get(match[1] ?? "")?.text !== "");
}

function addressOf(row: number, column: number): string {
  const letters = (index: number): string =>
    (index < 26 ? "" : letters(Math.floor(index / 26) - 1)) + String.fromCharCode(65 + (index % 26));
  return `${letters(column)}${row + 1}`;
}

/** Whether a cell has no number format of the user's own. */
function isOpen(format: unknown): boolean {
  return format === undefined || format === "" || format === "General" || format === "@";
}

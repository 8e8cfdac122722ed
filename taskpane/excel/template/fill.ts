import { addressOf } from "../address";
import { asText } from "../paper";
import type { Fields, FieldValue } from "./fields";
import { fieldIn, fieldsIn, fillText, type Placed } from "./placedfields";

/** One cell to write on a copy of the template. */
export interface Write {
  readonly row: number;
  readonly column: number;
  readonly content: string | number;
  readonly format?: string;
}

/** Rows of the template that are repeated. */
export interface Repeated {
  /** The first of them, as the template has it. */
  readonly row: number;
  readonly height: number;
  readonly times: number;
}

/** What is to be done to a copy of the template: rows added under the repeated ones, cells written, rows hidden. */
export interface FillPlan {
  /** The rows that repeat per line; undefined where the template has none. */
  readonly repeated: Repeated | undefined;
  /** The rows that repeat per free line, once and hidden where the quote has none. */
  readonly repeatedExtras: Repeated | undefined;
  readonly writes: readonly Write[];
  readonly hidden: readonly number[];
  /** Fields that do not exist, left as they are, as "{{color}} in B7". */
  readonly unknown: readonly string[];
  /** Fields inside formulas, left as they are, as "{{customer}} in B7". */
  readonly inFormulas: readonly string[];
  /** Fields that change the total and are missing on the template: "discount", "extra.amount", "line.amount". */
  readonly unplaced: readonly string[];
  /** Whether the template asks for anything at all. */
  readonly hasFields: boolean;
  /** The template computes something; the copy must end with values only. */
  readonly hasFormulas: boolean;
}

/** The fields of the free line's row where a quote has no free lines. */
const NO_EXTRA: Fields = new Map(["extra.text", "extra.amount"].map((name) => [name, { value: "", text: "" }]));

/** Rows of cells. */
export type Block = readonly (readonly unknown[])[];

/**
 * Plans how a template is filled. Pure: it reads the template's cells and says what to write.
 * @param template the template's cells from A1, formulas included
 * @param formats number formats of those cells; a format of the user's own is kept
 * @param quote fields of the whole quote
 * @param lines fields of each line, for the rows with "line." fields
 * @param extras fields of each free line, for the rows with "extra." fields
 */
export function planFill(
  template: Block,
  formats: Block,
  quote: Fields,
  lines: readonly Fields[],
  extras: readonly Fields[] = [],
): FillPlan {
  const repeated = rowsWith("line.", template, 0, lines.length);
  const repeatedExtras = extraRows(template, repeated, extras.length);
  const items = (row: number): readonly Fields[] | undefined => {
    if (holds(repeated, row)) return lines;
    return holds(repeatedExtras, row) ? (extras.length > 0 ? extras : [NO_EXTRA]) : undefined;
  };
  const blocks = [repeated, repeatedExtras].filter((block) => block !== undefined);
  const moved = (row: number) =>
    blocks.reduce((to, block) => (row >= block.row + block.height ? to + addedRows(block) : to), row);
  const rows = template.flatMap((_, row) => {
    const height = blocks.find((block) => holds(block, row))?.height ?? 0;
    const own = items(row);
    if (!own) return [{ from: row, row: moved(row), fields: quote }];
    return own.map((fields, index) => ({
      from: row,
      row: moved(row) + index * height,
      fields: new Map([...quote, ...fields]),
    }));
  });
  const filled = rows.map(({ from, row, fields }) => ({
    row,
    ...fillRow(template[from] ?? [], formats[from] ?? [], row, fields),
  }));
  return {
    repeated,
    repeatedExtras,
    writes: filled.flatMap(({ writes }) => writes),
    hidden: filled.filter(({ emptied }) => emptied).map(({ row }) => row),
    unknown: filled.flatMap(({ unknown }) => unknown),
    inFormulas: filled.flatMap(({ inFormulas }) => inFormulas),
    unplaced: unplacedIn(template, quote, lines.length, extras.length),
    hasFields: template.some((cells) => cells.some((cell) => typeof cell === "string" && fieldsIn(cell).length > 0)),
    hasFormulas: template.some((cells) => cells.some(isFormula)),
  };
}

/** Amounts besides those of the lines; each that is not empty needs a place on the template. */
const AMOUNTS = ["discount", "shipping", "tax", "ownGoldCredit"];

function unplacedIn(template: Block, quote: Fields, lines: number, extras: number): readonly string[] {
  const named = new Set(
    template.flatMap((cells) =>
      cells.flatMap((cell) => (typeof cell === "string" ? fieldsIn(cell).map(({ name }) => name) : [])),
    ),
  );
  if (!named.has("total") && !named.has("toPay")) return [];
  const amounts = AMOUNTS.filter((name) => (quote.get(name)?.text ?? "") !== "" && !named.has(name));
  const hasLines = [...named].some((name) => name.startsWith("line."));
  return [
    ...(lines > 1 && !hasLines ? ["line.amount"] : []),
    ...(extras > 0 && !named.has("extra.amount") ? ["extra.amount"] : []),
    ...amounts,
  ];
}

/** How many rows a block adds to the template's own. */
export function addedRows({ height, times }: Repeated): number {
  return height * Math.max(0, times - 1);
}

/** From the first to the last row with such fields, at or below a row. */
function rowsWith(prefix: string, template: Block, from: number, times: number): Repeated | undefined {
  const rows = template.flatMap((cells, row) => (row >= from && hasField(prefix, cells) ? [row] : []));
  const [first] = rows;
  const last = rows.at(-1);
  return first === undefined || last === undefined ? undefined : { row: first, height: last - first + 1, times };
}

/** The rows of free lines: those below the lines' own rows, or above them. */
function extraRows(template: Block, lines: Repeated | undefined, count: number): Repeated | undefined {
  const times = Math.max(1, count);
  const below = rowsWith("extra.", template, lines ? lines.row + lines.height : 0, times);
  return below ?? rowsWith("extra.", template.slice(0, lines?.row ?? 0), 0, times);
}

function holds(block: Repeated | undefined, row: number): boolean {
  return block !== undefined && row >= block.row && row < block.row + block.height;
}

function hasField(prefix: string, cells: readonly unknown[]): boolean {
  return fillable(cells).some(({ text }) => fieldsIn(text).some(({ name }) => name.startsWith(prefix)));
}

function fillRow(
  cells: readonly unknown[],
  formats: readonly unknown[],
  row: number,
  fields: Fields,
): { writes: Write[]; unknown: string[]; inFormulas: string[]; emptied: boolean } {
  const inCells = (placed: readonly Placed[], column: number) =>
    placed.map(({ braces }) => `${braces} in ${addressOf(row, column)}`);
  const texts = fillable(cells).filter(({ text }) => fieldsIn(text).length > 0 || text !== fillText(text, fields));
  const values = texts.flatMap(({ text }) => fieldsIn(text).map((placed) => fieldIn(placed, fields)));
  return {
    writes: texts.map(({ text, column }): Write => {
      const { content, format } = fillCell(text, fields, formats[column]);
      return format === undefined ? { row, column, content } : { row, column, content, format };
    }),
    unknown: texts.flatMap(({ text, column }) =>
      inCells(
        fieldsIn(text).filter((placed) => !fieldIn(placed, fields)),
        column,
      ),
    ),
    inFormulas: cells.flatMap((cell, column) => (isFormula(cell) ? inCells(fieldsIn(cell), column) : [])),
    // Also where only optional phrases were there, and all of them went.
    emptied:
      values.length > 0 &&
      (values.every((value) => value?.text === "") || texts.every(({ text }) => fillText(text, fields).trim() === "")),
  };
}

/** The cells that hold a text; a formula stays what it is. */
function fillable(cells: readonly unknown[]): { text: string; column: number }[] {
  return cells.flatMap((cell, column) =>
    typeof cell === "string" && !isFormula(cell) ? [{ text: cell, column }] : [],
  );
}

function isFormula(cell: unknown): cell is string {
  return typeof cell === "string" && cell.startsWith("=");
}

function fillCell(text: string, fields: Fields, format: unknown): { content: string | number; format?: string } {
  const [placed, ...more] = fieldsIn(text);
  const alone = placed && more.length === 0 && text.trim() === placed.braces;
  const value: FieldValue = (alone && fieldIn(placed, fields)) || wordsOf(fillText(text, fields));
  const content = typeof value.value === "string" ? asText(value.value) : value.value;
  if (value.format !== undefined && isOpen(format)) return { content, format: value.format };
  // In a cell of the text format a number or a date would become text, and an apostrophe might be shown.
  return format === "@" ? { content, format: "General" } : { content };
}

function wordsOf(text: string): FieldValue {
  return { value: text, text };
}

/** Whether a cell has no number format of the user's own. */
function isOpen(format: unknown): boolean {
  return format === undefined || format === "" || format === "General" || format === "@";
}

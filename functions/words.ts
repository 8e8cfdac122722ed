import { CostingError, UNREAD } from "../src/index";
import type { Choice } from "./readers";

/** Most choices of one argument that are numbered; rows with further ones are computed one by one. */
export const MOST_WORDS = 1000;

/** Gives each choice a number by its meaning, so that rows of the same choice can be computed together. */
export class Words {
  private readonly byCell = new Map<unknown, number>();
  private readonly byValue = new Map<unknown, number>();
  /** A copy of the list that was read last: most calls give the same list again, in a new array. */
  private last: { readonly cells: unknown; readonly number: number } | undefined;

  constructor(private readonly reader: Choice<unknown>) {}

  /** The number of a cell's or a list's choice; UNREAD where it cannot be read. */
  of(cells: unknown): number {
    return this.reader.isList ? this.ofList(cells) : this.ofCell(cells, cells);
  }

  private ofList(cells: unknown): number {
    if (this.last && isSame(this.last.cells, cells)) return this.last.number;
    const number = this.ofCell(cells, textOf(cells));
    this.last = { cells: copyOf(cells), number };
    return number;
  }

  private ofCell(cells: unknown, cell: unknown): number {
    const known = this.byCell.get(cell);
    if (known !== undefined) return known;
    if (typeof cell === "object" && cell !== null) return UNREAD;
    if (this.byCell.size >= MOST_WORDS) this.byCell.clear();
    const number = this.read(cells, cell);
    this.byCell.set(cell, number);
    return number;
  }

  private read(cells: unknown, cell: unknown): number {
    try {
      const value = this.reader.read(cells, "");
      const meaning = this.reader.isList || typeof value === "object" ? cell : value;
      const number = this.byValue.get(meaning) ?? this.byValue.size;
      if (number >= MOST_WORDS) return UNREAD;
      this.byValue.set(meaning, number);
      return number;
    } catch (error) {
      if (error instanceof CostingError) return UNREAD;
      throw error;
    }
  }
}

/** Whether two lists have the same cells in the same rows. */
function isSame(a: unknown, b: unknown): boolean {
  if (!Array.isArray(a) || !Array.isArray(b)) return a === b;
  if (a.length !== b.length) return false;
  for (let at = 0; at < a.length; at += 1) if (!isSame(a[at], b[at])) return false;
  return true;
}

function copyOf(cells: unknown): unknown {
  return Array.isArray(cells) ? cells.map(copyOf) : cells;
}

const CELL = "\u0000";
const ROW = "\u0001";

/** A list as one text, different for every different list. */
function textOf(cells: unknown): string {
  if (!Array.isArray(cells)) return textOfCell(cells);
  let text = "";
  for (const row of cells as readonly unknown[]) {
    for (const cell of Array.isArray(row) ? (row as readonly unknown[]) : [row]) text += textOfCell(cell) + CELL;
    text += ROW;
  }
  return text;
}

/**
 * An apostrophe before a word keeps it different from a number with the same text. A text that holds a separator is written as
 * JSON.
 */
function textOfCell(cell: unknown): string {
  if (typeof cell === "number") return String(cell);
  if (typeof cell !== "string") return JSON.stringify(cell) ?? "";
  return cell.includes(CELL) || cell.includes(ROW) ? JSON.stringify(cell) : `'${cell}`;
}

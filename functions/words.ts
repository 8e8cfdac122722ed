import { CostingError } from "../src/index";
import type { Choice } from "./readers";

/** Number of choices of one argument told apart; more go to the exact reading. */
export const MOST_WORDS = 1000;
/** Not a choice that can be read. */
export const UNREAD = -1;

/** Numbers for what the cells of a choice say, so that rows of one choice can be computed together. */
export class Words {
  private readonly byCell = new Map<unknown, number>();
  private readonly byValue = new Map<unknown, number>();

  constructor(private readonly reader: Choice<unknown>) {}

  /** The number of what a cell says, or a list's; UNREAD where it says nothing readable. */
  of(cells: unknown): number {
    const cell = this.reader.isList ? JSON.stringify(cells) : cells;
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
      const said = this.reader.isList ? cell : value;
      const number = this.byValue.get(said) ?? this.byValue.size;
      if (number >= MOST_WORDS) return UNREAD;
      this.byValue.set(said, number);
      return number;
    } catch (error) {
      if (error instanceof CostingError) return UNREAD;
      throw error;
    }
  }
}

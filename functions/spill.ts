import { ALL_DECIDED, CostingError, type Line, type Output, type Rows } from "../src/index";
import type { Cell } from "./cell";
import type { Grid } from "./grid";

/** A value of a column's output as a cell; minus zero becomes zero. */
export function cellIn(output: Output, row: number): Cell {
  return typeof output === "object" ? (output[row] ?? 0) + 0 : output;
}

/** Collects the answers for the cells of ranges as they come: one or several cells for each. */
export class Spill {
  private readonly width: number;
  private readonly answers: Cell[][];
  private several = 1;

  constructor(private readonly lead: Grid) {
    this.width = lead[0]?.length ?? 0;
    this.answers = new Array<Cell[]>(lead.length * this.width);
  }

  put(at: number, cells: Cell[]): void {
    if (cells.length > this.several) this.several = cells.length;
    this.answers[at] = cells;
  }

  /** Receives what columns gave for rows counted from `start`; open[k] is 0 where row k is decided. */
  take(start: number, rows: Rows, open: Uint8Array, outputs: readonly Output[]): void {
    const only = outputs.length === 1 ? outputs[0] : undefined;
    if (typeof only === "object") {
      this.takeLine(start, rows, open, only);
      return;
    }
    if (outputs.length > this.several) this.several = outputs.length;
    for (let k = 0; k < rows.count; k += 1) {
      if (open[k] !== 0) continue;
      this.answers[start + (rows.at?.[k] ?? k)] = outputs.map((output) => cellIn(output, k));
    }
  }

  /** For one number per row, by far the most common case, with the least work. */
  private takeLine(start: number, { at, count }: Rows, open: Uint8Array, line: Line): void {
    const { answers } = this;
    if (at) {
      for (let k = 0; k < count; k += 1) if (open[k] === 0) answers[start + (at[k] ?? 0)] = [(line[k] ?? 0) + 0];
      return;
    }
    if (open === ALL_DECIDED) for (let k = 0; k < count; k += 1) answers[start + k] = [(line[k] ?? 0) + 0];
    else for (let k = 0; k < count; k += 1) if (open[k] === 0) answers[start + k] = [(line[k] ?? 0) + 0];
  }

  /** The cells in the shape of the ranges. Several cells per row need ranges of one column. Errors: wrongShape. */
  cells(): Cell[][] {
    const { answers, width, several, lead } = this;
    if (width === 1 && several === 1) return answers;
    if (width === 1) return answers.map((row) => (row.length > 1 ? row : Array<Cell>(several).fill(row[0] ?? "")));
    if (several > 1) {
      throw new CostingError(
        "wrongShape",
        "ranges",
        `found ranges of ${lead.length} x ${width} cells; this function gives ${several} columns a row, so give ranges of one column`,
      );
    }
    return lead.map((_, i) => answers.slice(i * width, (i + 1) * width).map(([cell]) => cell ?? ""));
  }
}

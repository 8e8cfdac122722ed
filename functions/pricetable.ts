import { CostingError, type Line, type LineTaker, type Output, type Rows, type Value, wordsOf } from "../src/index";
import { type Cell, toCellError, toCellOrError } from "./cell";
import type { Grid } from "./grid";

/** Collects a price list row by row: the designs' names in some of its columns, figures in the others. */
export class PriceTable implements LineTaker {
  readonly rows: Cell[][];
  private readonly called: readonly string[];

  /**
   * @param designs the table's rows, without their headers
   * @param nameAt the place of a design's name in its row
   * @param names the columns of names, and of each figure
   */
  constructor(
    designs: Grid,
    nameAt: number,
    private readonly names: readonly number[],
    private readonly figures: readonly number[],
  ) {
    this.rows = new Array<Cell[]>(designs.length);
    // Names are read now, row after row. Results come group by group, and reading names then would jump about in memory.
    this.called = designs.map((row) => wordsOf(row[nameAt]));
  }

  take(first: number, { at, count }: Rows, open: Uint8Array, outputs: readonly Output[]): void {
    const row = this.empty();
    const lines: Line[] = [];
    const to: number[] = [];
    outputs.forEach((output, figure) => {
      const place = this.figures[figure] ?? 0;
      if (typeof output === "object") {
        lines.push(output);
        to.push(place);
      } else row[place] = output;
    });
    for (let k = 0; k < count; k += 1) {
      if (open[k] !== 0) continue;
      const cells = row.slice();
      // A counting loop, since an iterator would make two objects for each cell. Minus zero becomes zero.
      for (let each = 0; each < lines.length; each += 1) cells[to[each] ?? 0] = (lines[each]?.[k] ?? 0) + 0;
      this.put(first + (at ? (at[k] ?? 0) : k), cells);
    }
  }

  exact(at: number, answer: readonly Value[] | CostingError): void {
    const cells = this.empty();
    this.figures.forEach((place, figure) => {
      cells[place] = answer instanceof CostingError ? toCellError(answer) : toCellOrError(answer[figure] ?? "");
    });
    this.put(at, cells);
  }

  /** Filled with texts, since an array of numbers alone would be copied when a name is put into it. */
  private empty(): Cell[] {
    return Array.from({ length: this.names.length + this.figures.length }, () => "");
  }

  private put(at: number, cells: Cell[]): void {
    for (const place of this.names) cells[place] = this.called[at] ?? "";
    this.rows[at] = cells;
  }
}

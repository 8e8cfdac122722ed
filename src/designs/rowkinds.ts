/** Stand for cells of which it only matters whether they are there. */
export const BLANK = Symbol("blank");
export const GIVEN = Symbol("given");

/**
 * The choice keys of rows: rows have one key where all cells that take a formula another way are the same. A tree with one level
 * for each column; each of its ends has a key of its own.
 */
export class LineChoices {
  private readonly root: Branch = branch();
  private count = 0;

  /** @param most kinds of rows that are told apart */
  constructor(private readonly most: number) {}

  /** The choice key of a row with these cells; undefined where rows are of too many kinds. */
  keyOf(cells: readonly unknown[]): number | undefined {
    let at = this.root;
    for (let column = 0; column < cells.length; column += 1) {
      const cell = cells[column];
      if (cell === at.lastCell && at.last) {
        at = at.last;
        continue;
      }
      const next = at.next.get(cell) ?? this.grown(at, cell);
      if (!next) return undefined;
      // Rows often say what the one before said.
      at.lastCell = cell;
      at.last = next;
      at = next;
    }
    at.key ??= this.count++;
    return at.key;
  }

  private grown(at: Branch, cell: unknown): Branch | undefined {
    if (this.count >= this.most) return undefined;
    const next = branch();
    at.next.set(cell, next);
    return next;
  }
}

interface Branch {
  readonly next: Map<unknown, Branch>;
  lastCell: unknown;
  last: Branch | undefined;
  key: number | undefined;
}

function branch(): Branch {
  return { next: new Map(), lastCell: undefined, last: undefined, key: undefined };
}

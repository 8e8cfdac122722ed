/** Rows that are alike but for their figures. */
export interface Alike {
  readonly place: number;
  /** Which of a row's columns have something in them. */
  readonly given: readonly boolean[];
}

/** Keys of cells of which it only matters whether they are there. */
export const BLANK = Symbol("blank");
export const GIVEN = Symbol("given");

/** A tree of cells: one branch a column, and at its ends the rows that are alike. */
export class LineChoices {
  private readonly root: Branch = branch();
  private count = 0;

  /** @param most kinds of rows that are told apart */
  constructor(private readonly most: number) {}

  /** The rows that are alike with one of these keys, a column each; undefined where rows are of too many kinds. */
  of(keys: readonly unknown[]): Alike | undefined {
    let at = this.root;
    for (let column = 0; column < keys.length; column += 1) {
      const key = keys[column];
      if (key === at.lastKey && at.last) {
        at = at.last;
        continue;
      }
      const next = at.next.get(key) ?? this.grown(at, key);
      if (!next) return undefined;
      // Rows often say what the one before said.
      at.lastKey = key;
      at.last = next;
      at = next;
    }
    at.end ??= { place: this.count++, given: keys.map((key) => key !== BLANK) };
    return at.end;
  }

  private grown(at: Branch, key: unknown): Branch | undefined {
    if (this.count >= this.most) return undefined;
    const next = branch();
    at.next.set(key, next);
    return next;
  }
}

interface Branch {
  readonly next: Map<unknown, Branch>;
  lastKey: unknown;
  last: Branch | undefined;
  end: Alike | undefined;
}

function branch(): Branch {
  return { next: new Map(), lastKey: undefined, last: undefined, end: undefined };
}

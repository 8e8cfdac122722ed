import { parseReference } from "../address";
import type { Book } from "../book";
import { invalid, notFound } from "../failure";
import { type Arguments, type Calls, Entity, type Reads } from "./entity";
import { RangeEntity } from "./range";

/** The rows of a sheet that begin a printed page. */
export class HorizontalPageBreaks extends Entity {
  readonly type = "PageBreakCollection";

  constructor(
    book: Book,
    private readonly sheetId: string,
  ) {
    super(book);
  }

  override readonly calls: Calls = {
    add: (given) => {
      const row = this.rowOf(given);
      // Excel sets no break above the first row.
      if (row === 0) throw invalid();
      const { page } = this.book.extrasOf(this.sheetId);
      page.pageStarts = [...new Set([...page.pageStarts, row])].sort((a, b) => a - b);
      return new PageBreak(this.book, this.sheetId, row);
    },
    getCount: () => this.items().length,
    removePageBreaks: () => {
      this.book.extrasOf(this.sheetId).page.pageStarts = [];
    },
  };

  override item(given: Arguments): Entity {
    const found = this.items()[given.whole(0)];
    if (!found) throw notFound();
    return found;
  }

  override items(): Entity[] {
    return this.book.extrasOf(this.sheetId).page.pageStarts.map((row) => new PageBreak(this.book, this.sheetId, row));
  }

  private rowOf(given: Arguments): number {
    const value = given.raw(0);
    if (value instanceof RangeEntity) return value.rect.row;
    const reference = parseReference(given.text(0));
    if (!reference) throw invalid();
    return reference.rect.row;
  }
}

class PageBreak extends Entity {
  readonly type = "PageBreak";

  constructor(
    book: Book,
    private readonly sheetId: string,
    private readonly row: number,
  ) {
    super(book);
  }

  override readonly reads: Reads = { rowIndex: () => this.row, columnIndex: () => 0 };

  override readonly calls: Calls = {
    delete: () => {
      const { page } = this.book.extrasOf(this.sheetId);
      page.pageStarts = page.pageStarts.filter((row) => row !== this.row);
    },
    getCellAfterBreak: () =>
      new RangeEntity(this.book, this.sheetId, { row: this.row, column: 0, rows: 1, columns: 1 }),
  };
}

import { MAX_COLUMNS, MAX_ROWS, parseReference } from "../address";
import type { Book } from "../book";
import { denied, invalid, notFound } from "../failure";
import { type Calls, Entity, NOTHING, type Reads, record } from "./entity";
import { RangeEntity } from "./range";

export class FreezePanes extends Entity {
  readonly type = "WorksheetFreezePanes";

  constructor(
    book: Book,
    private readonly sheetId: string,
  ) {
    super(book);
  }

  override readonly calls: Calls = {
    freezeRows: (given) => this.freeze(given.whole(0, 1), 0),
    freezeColumns: (given) => this.freeze(0, given.whole(0, 1)),
    freezeAt: (given) => {
      const range = given.raw(0);
      const rect = range instanceof RangeEntity ? range.rect : parseReference(given.text(0))?.rect;
      if (!rect) throw invalid();
      this.freeze(
        rect.rows === MAX_ROWS ? 0 : rect.row + rect.rows,
        rect.columns === MAX_COLUMNS ? 0 : rect.column + rect.columns,
      );
    },
    unfreeze: () => {
      this.book.sheet(this.sheetId).cancelFreeze();
    },
    getLocationOrNullObject: () => {
      const { xSplit, ySplit } = this.book.sheet(this.sheetId).getFreeze();
      if (xSplit === 0 && ySplit === 0) return NOTHING;
      const rect = { row: 0, column: 0, rows: ySplit || MAX_ROWS, columns: xSplit || MAX_COLUMNS };
      return new RangeEntity(this.book, this.sheetId, rect);
    },
  };

  private freeze(rows: number, columns: number): void {
    if (rows < 0 || columns < 0) throw invalid();
    const startRow = rows > 0 ? rows : -1;
    const startColumn = columns > 0 ? columns : -1;
    this.book.sheet(this.sheetId).setFreeze({ startRow, startColumn, ySplit: rows, xSplit: columns });
  }
}

export class Protection extends Entity {
  readonly type = "WorksheetProtection";

  constructor(
    book: Book,
    private readonly sheetId: string,
  ) {
    super(book);
  }

  override readonly reads: Reads = {
    protected: () => this.state.on,
    options: () => (this.state.on ? this.state.options : null),
  };

  override readonly calls: Calls = {
    protect: (given) => {
      if (this.state.on) throw denied();
      const options = given.has(0) ? record(given.raw(0)) : {};
      const password = given.optionalText(1);
      this.book.extrasOf(this.sheetId).protection = {
        on: true,
        options,
        ...(password === undefined ? {} : { password }),
      };
    },
    unprotect: (given) => {
      if (this.state.on && this.state.password !== undefined && this.state.password !== given.optionalText(0))
        throw denied();
      this.book.extrasOf(this.sheetId).protection = { on: false, options: {} };
    },
  };

  private get state() {
    if (!this.book.find(this.sheetId)) throw notFound();
    return this.book.extrasOf(this.sheetId).protection;
  }
}

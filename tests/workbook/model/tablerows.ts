import type { Rect } from "../address";
import type { Book } from "../book";
import { writeCells } from "../cells";
import { invalid, notFound } from "../failure";
import { deleteCells, insertCells } from "../moves";
import type { Table } from "../tables";
import { type Arguments, type Calls, Entity, NOTHING, type Reads, type Writes } from "./entity";
import { RangeEntity } from "./range";

/** The cells below the header row. */
export function bodyOf({ rect }: Table): Rect {
  return { ...rect, row: rect.row + 1, rows: Math.max(1, rect.rows - 1) };
}

export class TableRows extends Entity {
  readonly type = "TableRowCollection";

  constructor(
    book: Book,
    private readonly tableId: string,
  ) {
    super(book);
  }

  override readonly reads: Reads = { count: () => this.table.rect.rows - 1 };
  override readonly movingCalls = ["add"];

  override readonly calls: Calls = {
    getCount: () => this.table.rect.rows - 1,
    add: (given) => {
      const { sheetId, rect } = this.table;
      // Without values Excel adds one blank row.
      const rows = given.has(1) ? given.raw(1) : [Array<null>(rect.columns).fill(null)];
      if (!Array.isArray(rows) || rows.length === 0) throw invalid();
      const index = given.has(0) && given.raw(0) !== -1 ? given.whole(0) : rect.rows - 1;
      if (index < 0 || index > rect.rows - 1) throw invalid();
      const added = { ...rect, row: rect.row + 1 + index, rows: rows.length };
      if (index < rect.rows - 1) insertCells(this.book, sheetId, added, "Down");
      this.book.tables.resize(this.table, { ...rect, rows: rect.rows + rows.length });
      writeCells(this.book, sheetId, added, rows, "Values");
      return new TableRow(this.book, this.tableId, index);
    },
    getItemAt: (given) => new TableRow(this.book, this.tableId, given.whole(0)),
  };

  override items(): Entity[] {
    return Array.from({ length: this.table.rect.rows - 1 }, (_, index) => new TableRow(this.book, this.tableId, index));
  }

  private get table(): Table {
    return this.book.tables.find(this.tableId) ?? fail();
  }
}

class TableRow extends Entity {
  readonly type = "TableRow";

  constructor(
    book: Book,
    private readonly tableId: string,
    private readonly index: number,
  ) {
    super(book);
  }

  override readonly reads: Reads = {
    index: () => this.index,
    values: () => this.range.reads.values?.(),
  };
  override readonly writes: Writes = { values: (value) => this.range.writes.values?.(value) };
  override readonly movingCalls = ["delete"];
  override readonly calls: Calls = {
    getRange: () => this.range,
    delete: () => {
      const table = this.book.tables.find(this.tableId) ?? fail();
      const { rect } = this.range;
      // Excel leaves one blank row.
      if (table.rect.rows <= 2) throw invalid();
      this.book.tables.resize(table, { ...table.rect, rows: table.rect.rows - 1 });
      deleteCells(this.book, table.sheetId, rect, "Up");
    },
  };

  private get range(): RangeEntity {
    const table = this.book.tables.find(this.tableId) ?? fail();
    const body = bodyOf(table);
    if (this.index < 0 || this.index >= body.rows) throw invalid();
    return new RangeEntity(this.book, table.sheetId, { ...body, row: body.row + this.index, rows: 1 });
  }
}

export class TableColumns extends Entity {
  readonly type = "TableColumnCollection";

  constructor(
    book: Book,
    private readonly tableId: string,
  ) {
    super(book);
  }

  override readonly reads: Reads = { count: () => this.table.rect.columns };
  override readonly calls: Calls = {
    getCount: () => this.table.rect.columns,
    getItemAt: (given) => this.items()[given.whole(0)] ?? fail(),
    getItemOrNullObject: (given) => {
      const index = this.indexOf(given.raw(0));
      return index < 0 ? NOTHING : new TableColumn(this.book, this.tableId, index);
    },
  };

  override item(given: Arguments): Entity {
    const index = this.indexOf(given.raw(0));
    return index < 0 ? fail() : new TableColumn(this.book, this.tableId, index);
  }

  override items(): Entity[] {
    return this.book.tables.headers(this.table).map((_, index) => new TableColumn(this.book, this.tableId, index));
  }

  /** By title, or by the id this page gives: its number from 1. */
  private indexOf(key: unknown): number {
    const titles = this.book.tables.headers(this.table).map((title) => title.toLowerCase());
    const named = titles.indexOf(String(key).toLowerCase());
    return named >= 0 ? named : titles.findIndex((_, index) => index + 1 === Number(key));
  }

  private get table(): Table {
    return this.book.tables.find(this.tableId) ?? fail();
  }
}

class TableColumn extends Entity {
  readonly type = "TableColumn";

  constructor(
    book: Book,
    private readonly tableId: string,
    private readonly index: number,
  ) {
    super(book);
  }

  override get id(): string {
    return String(this.index + 1);
  }

  override readonly reads: Reads = {
    id: () => this.index + 1,
    index: () => this.index,
    name: () => this.book.tables.headers(this.table)[this.index] ?? "",
    values: () => this.range(this.table.rect).reads.values?.(),
  };

  override readonly calls: Calls = {
    getRange: () => this.range(this.table.rect),
    getHeaderRowRange: () => this.range({ ...this.table.rect, rows: 1 }),
    getDataBodyRange: () => this.range(bodyOf(this.table)),
  };

  private get table(): Table {
    return this.book.tables.find(this.tableId) ?? fail();
  }

  private range(rect: Rect): RangeEntity {
    return new RangeEntity(this.book, this.table.sheetId, { ...rect, column: rect.column + this.index, columns: 1 });
  }
}

function fail(): never {
  throw notFound();
}

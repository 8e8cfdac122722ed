import { parseReference, type Rect } from "../address";
import type { Book } from "../book";
import { gap, invalid, notFound } from "../failure";
import type { Table } from "../tables";
import { type Arguments, type Calls, Entity, flag, NOTHING, type Parts, type Reads, text, type Writes } from "./entity";
import { RangeEntity } from "./range";
import { bodyOf, TableColumns, TableRows } from "./tablerows";
import { WorksheetEntity } from "./worksheet";

export class TableCollection extends Entity {
  readonly type = "TableCollection";

  constructor(
    book: Book,
    private readonly sheetId?: string,
  ) {
    super(book);
  }

  override readonly reads: Reads = { count: () => this.items().length };

  override readonly calls: Calls = {
    add: (given) => {
      const place = this.place(given.raw(0));
      return new TableEntity(this.book, this.book.tables.add(place.sheetId, place.rect, given.flag(1)).id);
    },
    getItemOrNullObject: (given) => {
      const table = this.book.tables.find(given.text(0), this.sheetId);
      return table ? new TableEntity(this.book, table.id) : NOTHING;
    },
    getItemAt: (given) => this.items()[given.whole(0)] ?? fail(),
    getCount: () => this.items().length,
  };

  override item(given: Arguments): Entity {
    const table = this.book.tables.find(String(given.raw(0)), this.sheetId);
    return table ? new TableEntity(this.book, table.id) : fail();
  }

  override items(): Entity[] {
    return this.book.tables.all(this.sheetId).map((table) => new TableEntity(this.book, table.id));
  }

  private place(value: unknown): { sheetId: string; rect: Rect } {
    if (value instanceof RangeEntity) return value;
    const reference = parseReference(text(value));
    if (!reference) throw invalid();
    const sheet = reference.sheet === undefined ? (this.sheetId ?? this.book.active().getSheetId()) : reference.sheet;
    return { sheetId: this.book.sheet(sheet).getSheetId(), rect: reference.rect };
  }
}

function fail(): never {
  throw notFound();
}

class TableEntity extends Entity {
  readonly type = "Table";

  constructor(
    book: Book,
    private readonly tableId: string,
  ) {
    super(book);
  }

  override get id(): string {
    return this.tableId;
  }

  override readonly reads: Reads = {
    id: () => this.tableId,
    name: () => this.table.name,
    style: () => this.table.style,
    showHeaders: () => true,
    showTotals: () => this.table.showTotals,
    showBandedRows: () => this.table.showBandedRows,
    showFilterButton: () => this.table.showFilterButton,
  };

  override readonly writes: Writes = {
    name: (value) => this.book.tables.rename(this.table, text(value)),
    // Saved for reading and for the file; the grid draws tables in another way.
    style: (value) => {
      this.table.style = text(value);
    },
    showBandedRows: (value) => {
      this.table.showBandedRows = flag(value);
    },
    showFilterButton: (value) => {
      this.table.showFilterButton = flag(value);
    },
    showTotals: (value) => {
      if (flag(value)) throw gap("Table.showTotals");
    },
  };

  override readonly parts: Parts = {
    rows: () => new TableRows(this.book, this.tableId),
    columns: () => new TableColumns(this.book, this.tableId),
    worksheet: () => WorksheetEntity.of(this.book, this.table.sheetId),
  };

  override readonly calls: Calls = {
    getRange: () => this.range(this.table.rect),
    getHeaderRowRange: () => this.range({ ...this.table.rect, rows: 1 }),
    getDataBodyRange: () => this.range(bodyOf(this.table)),
    resize: (given) => {
      const value = given.raw(0);
      const rect = value instanceof RangeEntity ? value.rect : parseReference(given.text(0))?.rect;
      if (!rect) throw invalid();
      this.book.tables.resize(this.table, rect);
    },
    delete: () => this.book.tables.delete(this.table),
  };

  private get table(): Table {
    return this.book.tables.find(this.tableId) ?? fail();
  }

  private range(rect: Rect): RangeEntity {
    return new RangeEntity(this.book, this.table.sheetId, rect);
  }
}

import { intersect, type Rect } from "./address";
import type { Book } from "./book";
import { readCells, textOf, writeCells } from "./cells";
import { toRange } from "./extent";
import { shifted } from "./extras";
import { alreadyExists, invalid } from "./failure";

export interface Table {
  readonly id: string;
  readonly sheetId: string;
  name: string;
  /** With its header row. */
  rect: Rect;
  style: string;
  showTotals: boolean;
  showBandedRows: boolean;
  showFilterButton: boolean;
}

/**
 * Excel's tables over the grid's. The grid makes its tables a moment later than asked, so the tables are kept here and also given
 * to the grid, so that `Table[Column]` works in formulas.
 */
export class Tables {
  private tables: Table[] = [];
  private made = 0;
  private pending: Promise<unknown> = Promise.resolve();

  constructor(private readonly book: Book) {}

  watch(): void {
    this.book.changes.onShifted((sheetId, shift) => {
      this.tables = this.tables.flatMap((table) => {
        if (table.sheetId !== sheetId) return [table];
        const rect = shifted(table.rect, shift);
        if (rect) table.rect = rect;
        return rect ? [table] : [];
      });
    });
  }

  clear(): void {
    this.tables = [];
  }

  all(sheetId?: string): Table[] {
    return this.tables.filter((table) => sheetId === undefined || table.sheetId === sheetId);
  }

  find(nameOrId: string, sheetId?: string): Table | undefined {
    const wanted = nameOrId.toLowerCase();
    return this.all(sheetId).find((table) => table.name.toLowerCase() === wanted || table.id === nameOrId);
  }

  /** Resolves when the grid has made every table it was given. */
  settled(): Promise<unknown> {
    return this.pending;
  }

  add(sheetId: string, rect: Rect, hasHeaders: boolean): Table {
    if (!hasHeaders) throw invalid("The workbook page makes tables from ranges with a header row only.");
    if (this.all(sheetId).some((table) => intersect(table.rect, rect))) throw alreadyExists();
    this.made += 1;
    const table: Table = {
      id: String(this.made),
      sheetId,
      name: this.freeName(),
      rect,
      style: "TableStyleMedium2",
      showTotals: false,
      showBandedRows: true,
      showFilterButton: true,
    };
    this.fillHeaders(table);
    this.tables.push(table);
    const tableId = this.gridId(table);
    this.later(async () => {
      await this.book.sheet(sheetId).addTable(table.name, toRange(rect), tableId, { showHeader: true });
      this.forgetFormulas();
    });
    return table;
  }

  rename(table: Table, name: string): void {
    if (!/^[\p{L}_\\][\p{L}\p{N}_.]*$/u.test(name)) throw invalid();
    const other = this.find(name);
    if (other && other !== table) throw alreadyExists();
    table.name = name;
    this.later(async () => {
      await this.book.sheet(table.sheetId).setTableName(this.gridId(table), name);
      this.forgetFormulas();
    });
  }

  resize(table: Table, rect: Rect): void {
    table.rect = rect;
    this.later(() => this.book.sheet(table.sheetId).setTableRange(this.gridId(table), toRange(rect)));
  }

  delete(table: Table): void {
    this.tables = this.tables.filter((other) => other !== table);
    this.later(() => this.book.sheet(table.sheetId).removeTable(this.gridId(table)));
  }

  beforeDelete(sheetId: string): void {
    this.tables = this.tables.filter((table) => table.sheetId !== sheetId);
  }

  headers(table: Table): string[] {
    const [row = []] = readCells(this.book, table.sheetId, { ...table.rect, rows: 1 });
    return row.map(textOf);
  }

  /** Excel gives every column of a table a title. */
  private fillHeaders(table: Table): void {
    const titles = this.headers(table).map((title, index) => (title === "" ? `Column${index + 1}` : null));
    writeCells(this.book, table.sheetId, { ...table.rect, rows: 1 }, [titles], "Tables");
  }

  private gridId(table: Table): string {
    return `table-${this.book.id}-${table.id}`;
  }

  private freeName(): string {
    for (let number = this.tables.length + 1; ; number += 1) if (!this.find(`Table${number}`)) return `Table${number}`;
  }

  /**
   * The grid caches parsed formulas by their text, even where the table of that name has changed or did not exist then. Long texts
   * are cached by a number alone, so the whole cache is cleared.
   */
  private forgetFormulas(): void {
    this.book.engine.functions.deleteFormulaAstCacheKey("");
  }

  private later(act: () => Promise<unknown> | unknown): void {
    this.pending = this.pending.then(act);
  }
}

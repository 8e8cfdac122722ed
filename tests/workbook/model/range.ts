import { BooleanNumber } from "@univerjs/core";
import {
  SetColHiddenMutation,
  SetColVisibleMutation,
  SetRowHiddenMutation,
  SetRowVisibleMutation,
} from "@univerjs/preset-sheets-core";
import { intersect, MAX_COLUMNS, MAX_ROWS, printReference, type Rect } from "../address";
import type { Book } from "../book";
import { type Cell, checkUnlocked, clamp, readCells, textOf, writeCells } from "../cells";
import { fromRange, spills, toRange } from "../extent";
import { invalid, wrongSize } from "../failure";
import { type ClearWhat, clearCells, copyCells, deleteCells, insertCells, mergeCells, unmergeCells } from "../moves";
import { cornerOf } from "../pictures";
import { changeStyle } from "../styles";
import { RangeAreas } from "./areas";
import {
  type Arguments,
  type Calls,
  Entity,
  flag,
  NOTHING,
  oneOf,
  type Parts,
  type Reads,
  type Writes,
} from "./entity";
import { RangeFormat } from "./format";
import { placesOf } from "./places";
import { ValidationEntity } from "./validation";
import { WorksheetEntity } from "./worksheet";

const COPY_TYPES = ["All", "Formulas", "Values", "Formats"] as const;
const CLEAR_TYPES = ["All", "Formats", "Contents", "RemoveHyperlinks", "Hyperlinks"] as const;

export class RangeEntity extends Entity {
  readonly type = "Range";

  constructor(
    book: Book,
    readonly sheetId: string,
    /** Moves along when rows or columns before it are inserted or deleted. */
    public rect: Rect,
  ) {
    super(book);
  }

  override get isKept(): boolean {
    return true;
  }

  override readonly reads: Reads = {
    address: () => printReference(this.sheetName, this.rect),
    addressLocal: () => printReference(this.sheetName, this.rect),
    cellCount: () => this.rect.rows * this.rect.columns,
    rowIndex: () => this.rect.row,
    columnIndex: () => this.rect.column,
    left: () => cornerOf(this.book.worksheet(this.sheetId), this.rect).left,
    top: () => cornerOf(this.book.worksheet(this.sheetId), this.rect).top,
    rowCount: () => this.rect.rows,
    columnCount: () => this.rect.columns,
    isEntireRow: () => this.rect.columns === MAX_COLUMNS,
    isEntireColumn: () => this.rect.rows === MAX_ROWS,
    values: () => this.map((cell) => cell.value),
    formulas: () => this.map((cell) => cell.formula || cell.value),
    formulasLocal: () => this.map((cell) => cell.formula || cell.value),
    text: () => this.map(textOf),
    numberFormat: () => this.map((cell) => cell.format),
    valueTypes: () => this.map(typeOf),
    rowHidden: () => this.same(this.rowFlags()),
    columnHidden: () => this.same(this.columnFlags()),
    hidden: () => {
      const [rows, columns] = [this.same(this.rowFlags()), this.same(this.columnFlags())];
      return rows === true || columns === true ? true : rows === null || columns === null ? null : false;
    },
    hasSpill: () => this.spillsIn().length > 0,
  };

  override readonly writes: Writes = {
    values: (value) => writeCells(this.book, this.sheetId, this.rect, value, "Values"),
    formulas: (value) => writeCells(this.book, this.sheetId, this.rect, value, "Formulas"),
    formulasLocal: (value) => writeCells(this.book, this.sheetId, this.rect, value, "FormulasLocal"),
    numberFormat: (value) => this.setFormats(value),
    rowHidden: (value) => this.hide("row", flag(value)),
    columnHidden: (value) => this.hide("column", flag(value)),
  };

  override readonly parts: Parts = {
    format: () => new RangeFormat(this),
    dataValidation: () => new ValidationEntity(this),
    worksheet: () => WorksheetEntity.of(this.book, this.sheetId),
  };

  override readonly settledCalls = ["getUsedRange", "getUsedRangeOrNullObject", "copyFrom", "hasSpill"];
  override readonly movingCalls = ["insert", "delete"];

  override readonly calls: Calls = {
    ...placesOf(this),
    getMergedAreasOrNullObject: () => {
      const merges = this.book.worksheet(this.sheetId).getMergeData().map(fromRange);
      const areas = merges.filter((merge) => intersect(merge, this.rect));
      return areas.length > 0 ? new RangeAreas(this.book, this.sheetId, areas) : NOTHING;
    },
    getSpillingToRangeOrNullObject: () => {
      const spill = this.spillsIn().find((rect) => rect.row === this.rect.row && rect.column === this.rect.column);
      return spill ? this.at(spill) : NOTHING;
    },
    clear: (given) => this.clear(oneOf(given.raw(0) ?? "All", CLEAR_TYPES)),
    insert: (given) => {
      // This range moves along with its cells; the answer is the space that was made.
      const { rect } = this;
      insertCells(this.book, this.sheetId, rect, oneOf(given.raw(0), ["Down", "Right"]));
      return this.at(rect);
    },
    delete: (given) => deleteCells(this.book, this.sheetId, this.rect, oneOf(given.raw(0), ["Up", "Left"])),
    merge: (given) => mergeCells(this.book, this.sheetId, this.rect, given.flag(0)),
    unmerge: () => unmergeCells(this.book, this.sheetId, this.rect),
    copyFrom: (given) => this.copyFrom(given),
    select: () => {
      this.book.activate(this.sheetId);
      this.book
        .sheet(this.sheetId)
        .getRange(toRange(clamp(this.book.worksheet(this.sheetId), this.rect)))
        .activate();
    },
    // office.js calls this to have the size of a large array checked before it sends the array in parts.
    _ValidateArraySize: (given) => {
      if (given.whole(0) !== this.rect.rows || given.whole(1) !== this.rect.columns) throw wrongSize("Values");
    },
    calculate: () => this.book.calculation.recalculate(),
  };

  private get sheetName(): string {
    return this.book.sheet(this.sheetId).getSheetName();
  }

  at(rect: Rect): RangeEntity {
    const { row, column, rows, columns } = rect;
    const fits = row >= 0 && column >= 0 && rows > 0 && columns > 0;
    if (!fits || row + rows > MAX_ROWS || column + columns > MAX_COLUMNS) throw invalid();
    return new RangeEntity(this.book, this.sheetId, rect);
  }

  /** The range given as an argument, or by its address on the same sheet. */
  other(given: Arguments): RangeEntity {
    const value = given.raw(0);
    if (value instanceof RangeEntity) return value;
    return new RangeEntity(this.book, this.sheetId, WorksheetEntity.rectOf(this.book, this.sheetId, given.text(0)));
  }

  /** Excel gives null for the cells of whole rows and columns, which are too many to send. */
  private map<T>(look: (cell: Cell) => T): T[][] | null {
    if (this.rect.rows === MAX_ROWS || this.rect.columns === MAX_COLUMNS) return null;
    return readCells(this.book, this.sheetId, this.rect).map((row) => row.map(look));
  }

  private setFormats(value: unknown): void {
    const { row, column, rows, columns } = this.rect;
    const at = (i: number, j: number): unknown => {
      if (!Array.isArray(value)) return value;
      const line: unknown = value[i];
      return Array.isArray(line) ? line[j] : undefined;
    };
    const isGrid = Array.isArray(value);
    if (isGrid && (value.length !== rows || value.some((line) => !Array.isArray(line) || line.length !== columns)))
      throw wrongSize("NumberFormat");
    changeStyle(this.book, this.sheetId, this.rect, (i, j) => {
      const pattern = at(i - row, j - column);
      if (pattern === null || pattern === undefined) return undefined;
      if (typeof pattern !== "string") throw invalid();
      return { n: pattern === "General" || pattern === "" ? null : { pattern } };
    });
  }

  private clear(what: (typeof CLEAR_TYPES)[number]): void {
    if (what === "Hyperlinks" || what === "RemoveHyperlinks") return;
    clearCells(this.book, this.sheetId, this.rect, what satisfies ClearWhat);
  }

  private copyFrom(given: Arguments): void {
    const source = this.other(given);
    const type = oneOf(given.raw(1) ?? "All", COPY_TYPES);
    copyCells(this.book, source, this, type, given.flag(2), given.flag(3));
  }

  private spillsIn(): Rect[] {
    return spills(this.book, this.sheetId).filter((rect) => intersect(rect, this.rect));
  }

  private rowFlags(): boolean[] {
    const sheet = this.book.worksheet(this.sheetId);
    const { row, rows } = clamp(sheet, this.rect);
    const manager = sheet.getRowManager();
    return Array.from({ length: rows }, (_, i) => manager.getRow(row + i)?.hd === BooleanNumber.TRUE);
  }

  private columnFlags(): boolean[] {
    const sheet = this.book.worksheet(this.sheetId);
    const { column, columns } = clamp(sheet, this.rect);
    const manager = sheet.getColumnManager();
    return Array.from({ length: columns }, (_, i) => manager.getColumn(column + i)?.hd === BooleanNumber.TRUE);
  }

  private same<T>(all: T[]): T | null {
    return all.every((each) => each === all[0]) ? (all[0] ?? null) : null;
  }

  private hide(axis: "row" | "column", hidden: boolean): void {
    checkUnlocked(this.book, this.sheetId, this.rect);
    const ranges = [toRange(clamp(this.book.worksheet(this.sheetId), this.rect))];
    const params = { unitId: this.book.id, subUnitId: this.sheetId, ranges };
    const rows = hidden ? SetRowHiddenMutation.id : SetRowVisibleMutation.id;
    const columns = hidden ? SetColHiddenMutation.id : SetColVisibleMutation.id;
    this.book.engine.commands.syncExecuteCommand(axis === "row" ? rows : columns, params);
  }
}

function typeOf(cell: Cell): string {
  if (cell.isError) return "Error";
  if (cell.value === "" && !cell.formula) return "Empty";
  if (typeof cell.value === "boolean") return "Boolean";
  return typeof cell.value === "number" ? "Double" : "String";
}
